package coatwright.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StrictNumberTest {
  @ParameterizedTest
  @CsvSource({
    "21.5, 21.5",
    "-4, -4",
    "+7, 7",
    ".5, 0.5",
    "21., 21",
    "2.15e1, 21.5",
    "1E-03, 0.001"
  })
  void readsPlainNumbers(String text, double value) {
    assertThat(StrictNumber.parse(text, '.')).hasValue(value);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "", " ", "21.5f", "21.5d", "0x1.5p4", "NaN", "Infinity", "1,000", "21,5", "1e", "1e1234",
            "--1",
        "+-1", ".", "-", "e5", "1.2.3", " 21.5", "21.5 ", "21.5\u0000", "２１", "٢١", "1e999",
            "1_000",
        "unavailable", "21.5C"
      })
  void refusesWhatIsNotWhollyANumber(String text) {
    assertThat(StrictNumber.parse(text, '.')).isEmpty();
  }

  @Test
  void readsACommaOnlyWhereTheSourceWritesOne() {
    assertThat(StrictNumber.parse("21,5", ',')).hasValue(21.5);
    assertThat(StrictNumber.parse("21.5", ',')).isEmpty();
  }

  @Property(seed = "20261125")
  void readsBackEveryPlainNumberPrinted(@ForAll @DoubleRange(min = -1e6, max = 1e6) double value) {
    assertThat(StrictNumber.parse(Double.toString(value), '.')).hasValue(value);
  }

  @Property(seed = "20261125")
  void neverThrowsOnAnyText(@ForAll String text) {
    assertThat(StrictNumber.parse(text, '.').isPresent()).isIn(true, false);
  }
}
