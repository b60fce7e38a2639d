package coatwright.mix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.RefusedInput;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DoseTest {
  /** From the definitions: 32 fl oz to a US quart, 40 to an imperial one. */
  @ParameterizedTest(name = "{0} is {1} %")
  @CsvSource({
    "3%, 3",
    "30mL/L, 3",
    "1floz/qt, 3.125",
    "2floz/gal, 1.5625",
    "1 floz/1qt, 3.125",
    "5mL/500mL, 1",
  })
  void readsADoseHoweverItIsWritten(String typed, double pct) {
    assertThat(Dose.parse("dose", typed).pct()).isCloseTo(pct, within(1e-9));
    assertThat(Dose.parse("dose", typed).inDrops()).isFalse();
  }

  @Property(tries = 100, seed = "20261125")
  void everyWayOfWritingADoseIsTheSameVolume(@ForAll @DoubleRange(min = 0, max = 50) double pct) {
    Dose dose = Dose.ofPct(pct);
    assertThat(dose.addMl(946.352946)).isCloseTo(9.46352946 * pct, within(1e-9));
    assertThat(dose.mlPerL()).isCloseTo(10 * pct, within(1e-9));
    assertThat(dose.flOzPerUsQuart() * 29.5735295625).isCloseTo(9.46352946 * pct, within(1e-9));
    assertThat(dose.flOzPerImpQuart() * 28.4130625).isCloseTo(11.365225 * pct, within(1e-9));
    assertThat(dose.pctOfWhole()).isLessThanOrEqualTo(pct);
  }

  /** 20 drops of water a millilitre: the old pharmacy convention, common practice, no source. */
  @Test
  void dropsAreKnownBetweenTwoEndsOnly() {
    Dose dose = Dose.parse("dose", "10drops/qt");
    assertThat(dose.inDrops()).isTrue();
    assertThat(dose.highFraction() * 946.352946).isCloseTo(0.5, within(1e-9));
    assertThat(dose.lowFraction() * 946.352946).isCloseTo(10.0 / 60, within(1e-9));
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"3", "3mL", "drops", "2L/L", "1floz/0qt", "x/L", "10drops", ""})
  void refusesADoseThatIsNone(String typed) {
    assertThatThrownBy(() -> Dose.parse("--dose", typed))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("--dose \"" + typed + "\"");
  }
}
