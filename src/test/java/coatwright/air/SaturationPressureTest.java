package coatwright.air;

import static coatwright.air.SaturationPressure.dewPointC;
import static coatwright.air.SaturationPressure.frostPointC;
import static coatwright.air.SaturationPressure.overIcePa;
import static coatwright.air.SaturationPressure.overWaterPa;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.OutOfRange;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SaturationPressureTest {
  /**
   * ASHRAE Handbook Fundamentals 2017, chapter 1, Table 3; 300 ppm is the handbook's own accuracy.
   */
  @ParameterizedTest(name = "{0} °C: {1} Pa")
  @CsvSource({"5, 872.6", "25, 3169.7", "50, 12351.3", "100, 101418"})
  void followsThePrintedAshraeTableOverWaterWithin300Ppm(double tempC, double printedPa) {
    assertThat(overWaterPa(tempC)).isCloseTo(printedPa, within(300e-6 * printedPa));
  }

  /** ASHRAE Handbook Fundamentals 2017, chapter 1, Table 3. */
  @ParameterizedTest(name = "{0} °C: {1} Pa")
  @CsvSource({"-60, 1.08, 0.01", "-20, 103.24, 0.031", "-5, 401.74, 0.12"})
  void followsThePrintedAshraeTableOverIce(double tempC, double printedPa, double tolerancePa) {
    assertThat(overIcePa(tempC)).isCloseTo(printedPa, within(tolerancePa));
  }

  /**
   * psychrolib 1.1.1, the same published equations typed by others; it switches to ice at 0.01 °C.
   */
  @Test
  void agreesWithPsychrolibOverWaterAndOverIceWithinOnePpm() {
    AirChecks.SATURATION_BY_PSYCHROLIB.holds();
  }

  /** IAPWS-IF97, an independent and newer formulation of water, 0 to 60 °C. */
  @Test
  void agreesWithIapwsIf97OverWaterWithin180Ppm() {
    AirChecks.WATER_BY_IF97.holds();
  }

  /** IAPWS R14-08(2011), sublimation pressure of ice. */
  @Test
  void agreesWithIapwsR14OverIceWithin330Ppm() {
    AirChecks.ICE_BY_R14.holds();
  }

  /**
   * Equation 6 carried below its printed range must be the supercooled branch typed by others too.
   */
  @Test
  void continuesEquationSixBelowFreezingAsAnIndependentCodeDoesWithinFivePpm() {
    AirChecks.SUPERCOOLED.holds();
  }

  /** WMO-No. 8 (2008), annex 4.B, the same numbers computed outside this project. */
  @Test
  void carriesTheMagnusFormOfTheWmoGuideAsPrintedWithinOnePpm() {
    AirChecks.MAGNUS.holds();
  }

  /** WMO-No. 8 (2008), annex 4.B, against the extrapolated equation 6, -40 to 0 °C. */
  @Test
  void supercooledDewPointStaysWithinFourHundredthsOfAKelvinOfTheWmoMagnusForm() {
    AirChecks.DEW_BY_MAGNUS.holds();
  }

  @Property(seed = "20261125")
  void dewPointUndoesSaturationOverWater(
      @ForAll @Scale(6) @DoubleRange(min = -90, max = 100) double tempC) {
    assertThat(dewPointC(overWaterPa(tempC))).isCloseTo(tempC, within(1e-9));
  }

  @Property(seed = "20261125")
  void frostPointUndoesSaturationOverIce(
      @ForAll @Scale(6) @DoubleRange(min = -99, max = -0.001) double tempC) {
    assertThat(frostPointC(overIcePa(tempC))).isCloseTo(tempC, within(1e-9));
  }

  @Property(seed = "20261125")
  void warmerAlwaysHoldsMore(
      @ForAll @Scale(6) @DoubleRange(min = -100, max = 199) double tempC,
      @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1) double stepK) {
    assertThat(overWaterPa(tempC + stepK)).isGreaterThan(overWaterPa(tempC));
  }

  @Property(seed = "20261125")
  void iceHoldsLessThanSupercooledWater(
      @ForAll @Scale(6) @DoubleRange(min = -100, max = -0.1) double tempC) {
    assertThat(overIcePa(tempC)).isLessThan(overWaterPa(tempC));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-100.5, 200.5, Double.NaN, Double.POSITIVE_INFINITY})
  void refusesTemperaturesOutsideTheFormulas(double tempC) {
    assertThatThrownBy(() -> overWaterPa(tempC)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> overIcePa(tempC)).isInstanceOf(OutOfRange.class);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, 2e6, Double.NaN})
  void refusesVapourPressuresNoTemperatureBelongsTo(double pressurePa) {
    assertThatThrownBy(() -> dewPointC(pressurePa)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> frostPointC(pressurePa)).isInstanceOf(OutOfRange.class);
  }

  @Test
  void refusesIceAboveFreezing() {
    assertThatThrownBy(() -> overIcePa(0.5))
        .hasMessage("temperature over ice is 0.5 °C; this model holds from -100.0 to 0.0 °C");
  }
}
