package coatwright.air;

import static coatwright.air.SaturationPressure.dewPointC;
import static coatwright.air.SaturationPressure.frostPointC;
import static coatwright.air.SaturationPressure.overIcePa;
import static coatwright.air.SaturationPressure.overWaterPa;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.Deviation;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SaturationPressureTest {
  private static final String FORMULAS = "moist_air/saturation_pressure_formulas.csv";

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
    Deviation deviation = new Deviation("ppm");
    for (Row row : ReferenceTable.read("moist_air/psychrolib_saturation.csv")) {
      double tempC = row.number("t_C");
      boolean ice = row.text("over").equals("ice");
      double oursPa = ice ? overIcePa(tempC) : overWaterPa(tempC);
      deviation.addPpm(oursPa, row.number("p_sat_Pa"), tempC + " °C");
    }
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(1);
    assertThat(deviation.count()).isEqualTo(101);
  }

  /** IAPWS-IF97, an independent and newer formulation of water, 0 to 60 °C. */
  @Test
  void agreesWithIapwsIf97OverWaterWithin180Ppm() {
    Deviation deviation = compared("if97_water_Pa", 60, SaturationFunction.HYLAND_WEXLER_WATER);
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(180);
  }

  /** IAPWS R14-08(2011), sublimation pressure of ice. */
  @Test
  void agreesWithIapwsR14OverIceWithin330Ppm() {
    Deviation deviation = compared("iapws_r14_ice_Pa", 0, SaturationPressure::overIcePa);
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(330);
  }

  /**
   * Equation 6 carried below its printed range must be the supercooled branch typed by others too.
   */
  @Test
  void continuesEquationSixBelowFreezingAsAnIndependentCodeDoesWithinFivePpm() {
    Deviation deviation =
        compared("hyland_wexler_water_Pa", 60, SaturationFunction.HYLAND_WEXLER_WATER);
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(5);
  }

  /** WMO-No. 8 (2008), annex 4.B, the same numbers computed outside this project. */
  @Test
  void carriesTheMagnusFormOfTheWmoGuideAsPrintedWithinOnePpm() {
    Deviation deviation = compared("wmo_magnus_water_Pa", 60, SaturationFunction.MAGNUS_WATER);
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(5);
  }

  /** WMO-No. 8 (2008), annex 4.B, against the extrapolated equation 6, -40 to 0 °C. */
  @Test
  void supercooledDewPointStaysWithinFourHundredthsOfAKelvinOfTheWmoMagnusForm() {
    Deviation deviation = new Deviation("K");
    for (int tempC = -40; tempC <= 0; tempC++) {
      double magnusPa = SaturationFunction.MAGNUS_WATER.pressurePa(tempC);
      deviation.add(dewPointC(magnusPa), tempC, tempC + " °C");
    }
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(0.04);
  }

  private static Deviation compared(String column, double warmestC, SaturationFunction ours) {
    Deviation deviation = new Deviation("ppm");
    for (Row row : ReferenceTable.read(FORMULAS)) {
      double tempC = row.number("t_C");
      if (!row.text(column).isEmpty() && tempC <= warmestC) {
        deviation.addPpm(ours.pressurePa(tempC), row.number(column), tempC + " °C");
      }
    }
    return deviation;
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
