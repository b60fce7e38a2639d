package coatwright.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Printed values of ASHRAE Handbook Fundamentals 2017, chapter 1. Its Table 2 is for real gases, so
 * the ideal-gas relations used here may differ by up to 1 %.
 */
class AshraeExamplesTest {
  private static final double SEA = MoistAir.SEA_LEVEL_PA;

  /** Table 2, humidity ratio at saturation over liquid water. */
  @ParameterizedTest(name = "{0} °C: {1} g/kg")
  @CsvSource({"5, 5.425, 0.027", "25, 20.173, 0.101", "50, 86.863, 0.87"})
  void saturatedHumidityRatioFollowsTableTwo(double tempC, double printed, double tolerance) {
    assertThat(1000 * MoistAir.of(tempC, 100).humidityRatio())
        .isCloseTo(printed, within(tolerance));
  }

  /** Table 2, humidity ratio at saturation over ice, so entered by the frost point. */
  @ParameterizedTest(name = "{0} °C: {1} g/kg")
  @CsvSource({"-20, 0.6373, 0.0064", "-5, 2.4863, 0.0124"})
  void frostyHumidityRatioFollowsTableTwo(double tempC, double printed, double tolerance) {
    MoistAir air = MoistAir.ofVapourPressure(tempC, SaturationPressure.overIcePa(tempC), SEA);
    assertThat(1000 * air.humidityRatio()).isCloseTo(printed, within(tolerance));
  }

  /** Table 2, enthalpy of saturated air. */
  @ParameterizedTest(name = "{0} °C: {1} kJ/kg")
  @CsvSource({"5, 18.639, 0.19", "25, 76.504, 0.77", "50, 275.353, 2.8"})
  void saturatedEnthalpyFollowsTableTwo(double tempC, double printed, double tolerance) {
    assertThat(MoistAir.of(tempC, 100).enthalpyKjKg()).isCloseTo(printed, within(tolerance));
  }

  /** Table 2, dry air at 25 °C; a millionth of a per cent of humidity stands for none. */
  @Test
  void dryAirFollowsTableTwo() {
    MoistAir dry = MoistAir.of(25, 1e-6);
    assertThat(dry.enthalpyKjKg()).isCloseTo(25.148, within(0.0075));
    assertThat(dry.specificVolumeM3Kg()).isCloseTo(0.8443, within(0.0009));
  }

  /** Example 1, dry bulb 40 °C, wet bulb 20 °C, read off a chart. */
  @Test
  void exampleOneIsFoundFromItsWetBulb() {
    MoistAir air = MoistAir.ofWetBulb(40, 20, SEA);
    assertThat(1000 * air.humidityRatio()).isCloseTo(6.5, within(0.1));
    assertThat(air.dewPointC()).isCloseTo(7, within(0.5));
    assertThat(air.rhPct()).isCloseTo(14, within(1.0));
    assertThat(air.enthalpyKjKg()).isCloseTo(56.7, within(0.1));
    assertThat(air.specificVolumeM3Kg()).isCloseTo(0.896, within(0.009));
  }

  /** Values of the PsychroLib test suite, wick above and below freezing. */
  @ParameterizedTest(name = "dry {0} °C, wet {1} °C: {2} g/kg")
  @CsvSource({"30, 25, 19.22813, 0.0058", "-1, -5, 1.203998, 0.00036"})
  void humidityRatioFromTheWetBulbOnBothSidesOfFreezing(
      double dryC, double wetC, double printed, double tolerance) {
    MoistAir air = MoistAir.ofWetBulb(dryC, wetC, 95_461);
    assertThat(1000 * air.humidityRatio()).isCloseTo(printed, within(tolerance));
  }

  /** A case of the PsychroLib test suite once known not to converge. */
  @Test
  void wetBulbConvergesWhereSimpleIterationsDidNot() {
    assertThat(new MoistAir(7, 61, 100_000).wetBulbC()).isCloseTo(3.92667, within(0.001));
  }
}
