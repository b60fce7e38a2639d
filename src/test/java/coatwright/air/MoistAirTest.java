package coatwright.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.OutOfRange;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MoistAirTest {
  private static final double SEA = MoistAir.SEA_LEVEL_PA;

  /** Within the rounding of the printed psychrometric value 13.9 °C; the digits from IAPWS-IF97. */
  @Test
  void halfSaturatedAirAt25DegreesDewsAt13Point86() {
    assertThat(MoistAir.of(25, 50).dewPointC()).isCloseTo(13.86, within(0.005));
  }

  @Test
  void saturatedAirDewsAtItsOwnTemperature() {
    MoistAir air = MoistAir.of(17.3, 100);
    assertThat(air.dewPointC()).isEqualTo(17.3);
    assertThat(air.wetBulbC()).isCloseTo(17.3, within(1e-9));
    assertThat(air.vapourPressureDeficitPa()).isZero();
  }

  @Test
  void saysFrostPointOnlyWhenTheDewPointIsBelowFreezing() {
    assertThat(MoistAir.of(22, 20).dewPointC()).isBetween(-3.0, -1.0);
    assertThat(MoistAir.of(22, 20).frostPointC()).isPresent();
    assertThat(MoistAir.of(22, 60).frostPointC()).isEmpty();
  }

  @Test
  void dewPointIsDefinedForVeryDryAndVeryColdAir() {
    MoistAir air = MoistAir.of(-40, 1);
    assertThat(air.dewPointC()).isBetween(-80.0, -60.0);
    assertThat(air.frostPointC().orElseThrow()).isBetween(air.dewPointC(), -60.0);
    assertThat(air.wetBulbC()).isBetween(-45.0, -40.0);
  }

  @Test
  void airSaturatedOverSupercooledWaterFrostsAWickAboveItsOwnTemperature() {
    MoistAir air = MoistAir.of(-10, 100);
    assertThat(air.frostPointC().orElseThrow()).isGreaterThan(-10);
    assertThat(air.wetBulbC()).isBetween(-10.0, -9.5);
  }

  @ParameterizedTest(name = "{0} °C, {1} %, {2} Pa")
  @CsvSource({
    "-40.5, 50, 101325", "60.5, 50, 101325", "20, 0, 101325", "20, -3, 101325", "20, 100.1, 101325",
    "20, 50, 40000", "20, 50, 120000", "NaN, 50, 101325", "20, NaN, 101325", "20, 50, NaN",
    "Infinity, 50, 101325"
  })
  void refusesAirThatCannotBe(double airTempC, double rhPct, double pressurePa) {
    assertThatThrownBy(() -> new MoistAir(airTempC, rhPct, pressurePa))
        .isInstanceOf(OutOfRange.class);
  }

  @Test
  void saysWhichLimitWasBroken() {
    assertThatThrownBy(() -> MoistAir.of(-44, 50))
        .hasMessage("air temperature is -44.0 °C; this model holds from -40.0 to 60.0 °C");
  }

  @Test
  void refusesToCoolAirBelowItsDewPoint() {
    assertThatThrownBy(() -> MoistAir.of(20, 50).warmedTo(5)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> MoistAir.ofDewPoint(10, 12, SEA)).isInstanceOf(OutOfRange.class);
  }

  @Test
  void refusesAWetBulbNoDrynessCouldReach() {
    assertThatThrownBy(() -> MoistAir.ofWetBulb(30, 2, SEA))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("even dry air");
  }

  @Property(seed = "20261125")
  void warmingLowersHumidityAndKeepsTheDewPoint(
      @ForAll @DoubleRange(min = -39, max = 50) double airTempC,
      @ForAll @DoubleRange(min = 1, max = 100) double rhPct,
      @ForAll @DoubleRange(min = 0.1, max = 10) double stepK) {
    MoistAir before = MoistAir.of(airTempC, rhPct);
    MoistAir after = before.warmedTo(airTempC + stepK);
    assertThat(after.rhPct()).isLessThan(before.rhPct());
    assertThat(after.dewPointC()).isCloseTo(before.dewPointC(), within(1e-9));
    assertThat(after.humidityRatio()).isCloseTo(before.humidityRatio(), within(1e-12));
  }

  @Property(seed = "20261125")
  void dewPointAndItsInverseAgree(
      @ForAll @DoubleRange(min = -40, max = 60) double airTempC,
      @ForAll @DoubleRange(min = 1, max = 100) double rhPct) {
    MoistAir air = MoistAir.of(airTempC, rhPct);
    double dewPointC = Math.min(air.dewPointC(), airTempC);
    assertThat(MoistAir.ofDewPoint(airTempC, dewPointC, SEA).rhPct())
        .isCloseTo(rhPct, within(1e-8));
  }

  @Property(seed = "20261125")
  void wetBulbAndItsInverseAgreeAboveFreezing(
      @ForAll @DoubleRange(min = 0, max = 60) double airTempC,
      @ForAll @DoubleRange(min = 1, max = 100) double rhPct,
      @ForAll @DoubleRange(min = 60_000, max = 105_000) double pressurePa) {
    wetBulbAndItsInverseAgree(airTempC, rhPct, pressurePa);
  }

  /** Between -0.1 and 0 °C the two wicks leave a hair of nearly saturated states to neither. */
  @Property(seed = "20261125")
  void wetBulbAndItsInverseAgreeBelowFreezing(
      @ForAll @DoubleRange(min = -40, max = -0.1) double airTempC,
      @ForAll @DoubleRange(min = 1, max = 100) double rhPct,
      @ForAll @DoubleRange(min = 60_000, max = 105_000) double pressurePa) {
    wetBulbAndItsInverseAgree(airTempC, rhPct, pressurePa);
  }

  private static void wetBulbAndItsInverseAgree(double airTempC, double rhPct, double pressurePa) {
    MoistAir air = new MoistAir(airTempC, rhPct, pressurePa);
    assertThat(MoistAir.ofWetBulb(airTempC, air.wetBulbC(), pressurePa).rhPct())
        .isCloseTo(rhPct, within(1e-6));
  }

  @Property(seed = "20261125")
  void moreHumidAirDewsWarmerAndDriesSlower(
      @ForAll @DoubleRange(min = -40, max = 60) double airTempC,
      @ForAll @DoubleRange(min = 1, max = 98) double rhPct,
      @ForAll @DoubleRange(min = 0.1, max = 2) double stepPct) {
    MoistAir drier = MoistAir.of(airTempC, rhPct);
    MoistAir damper = MoistAir.of(airTempC, rhPct + stepPct);
    assertThat(damper.dewPointC()).isGreaterThan(drier.dewPointC());
    assertThat(damper.absoluteHumidityGm3()).isGreaterThan(drier.absoluteHumidityGm3());
    assertThat(damper.enthalpyKjKg()).isGreaterThan(drier.enthalpyKjKg());
    assertThat(damper.densityKgm3()).isLessThan(drier.densityKgm3());
    assertThat(damper.vapourPressureDeficitPa()).isLessThan(drier.vapourPressureDeficitPa());
  }

  @Property(seed = "20261125")
  void dewPointLiesBelowWetBulbAndWetBulbBelowTheAir(
      @ForAll @DoubleRange(min = 1, max = 60) double airTempC,
      @ForAll @DoubleRange(min = 40, max = 100) double rhPct) {
    MoistAir air = MoistAir.of(airTempC, rhPct);
    double coldestC = air.frostPointC().orElse(air.dewPointC());
    assertThat(air.wetBulbC())
        .isBetween(Math.min(coldestC, air.dewPointC()) - 1e-9, airTempC + 1e-9);
  }
}
