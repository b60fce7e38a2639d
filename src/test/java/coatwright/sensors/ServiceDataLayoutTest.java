package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.sensors.ByteLayout.Decoded;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ServiceDataLayoutTest {
  private static final ServiceDataLayout LAYOUT = new ServiceDataLayout();

  private static Decoded read(String hex) {
    return LAYOUT.decode(HexForm.bytes(hex).orElseThrow());
  }

  private static Optional<Double> value(String hex, String place) {
    return read(hex) instanceof Decoded.Values values
            && values.cells().get(place) instanceof Cell.Figure figure
        ? Optional.of(figure.value())
        : Optional.empty();
  }

  /** Examples printed beside the objects in the open BTHome format's own table, version 2. */
  @ParameterizedTest
  @CsvSource({
    "02CA09, temperature, 25.06",
    "451101, temperature, 27.3",
    "57EA, temperature, -22",
    "03BF13, humidity, 50.55",
    "2E23, humidity, 35",
    "0161, battery, 97",
    "0C020C, voltage, 3.074",
    "4A020C, voltage, 307.4",
    "1501, battery-low, 1"
  })
  void readsTheExamplesOfItsTable(String object, String place, double printed) {
    assertThat(value("40" + object, place)).contains(printed);
  }

  @Test
  void stepsOverWhatItDoesNotReadByItsLength() {
    assertThat(
            value(
                "40 00 2a 04 13 8a 01 12 e2 04 53 03 41 42 43 f1 00 01 02 04 02 ca 09",
                "temperature"))
        .contains(25.06);
  }

  @Test
  void stopsAtAnObjectOfUnknownLengthAndKeepsWhatStoodBefore() {
    assertThat(value("40 02 ca 09 7e 03 bf 13", "temperature")).contains(25.06);
    assertThat(value("40 02 ca 09 7e 03 bf 13", "humidity")).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "41 02 ca 09, encrypted",
    "20 02 ca 09, not service data of version 2",
    "40 02 ca, ends in the middle of an object",
    "40 7e 01, object 0x7E is not known",
    "40 21 01, no temperature"
  })
  void saysWhyItReadsNothing(String hex, String said) {
    assertThat(read(hex))
        .isInstanceOfSatisfying(Decoded.No.class, no -> assertThat(no.reason()).contains(said));
  }

  @Test
  void doesNotChooseBetweenTwoTemperatures() {
    assertThat(value("40 02 ca 09 02 00 09", "temperature")).isEmpty();
  }

  @Property(tries = 2000, seed = "20261125")
  void neverThrowsWhateverTheBytes(@ForAll @Size(max = 64) byte[] noise) {
    List<Integer> bytes = new java.util.ArrayList<>();
    for (byte each : noise) {
      bytes.add(each & 0xFF);
    }
    List<ByteLayout> layouts =
        List.of(
            LAYOUT,
            TaggedLayout.parse("tag byte 0x0A = battery, 0x0D = T/RH little-endian tenths")
                .orElseThrow());

    assertThat(layouts).allSatisfy(layout -> assertThat(layout.decode(bytes)).isNotNull());
  }
}
