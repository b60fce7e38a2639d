package coatwright.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.Deviation;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/**
 * Moist air against tables printed or computed by others.
 *
 * <p>psychrolib, after ASHRAE, means relative humidity <em>over ice</em> in air at or below 0.01 °C
 * and calls the frost point a dew point there; this room means liquid water throughout. So states
 * at or below freezing are entered by their vapour pressure, on which both agree, and a "dew point"
 * of theirs below freezing is compared with our frost point. Nothing else differs.
 */
class PsychrometricTablesTest {
  private static final String GRID = "moist_air/psychrolib_grid.csv";

  private static MoistAir ofGrid(Row row) {
    double tempC = row.number("t_dry_C");
    double pressurePa = row.number("p_atm_Pa");
    return tempC > 0.01
        ? new MoistAir(tempC, row.number("rh_pct"), pressurePa)
        : MoistAir.ofVapourPressure(tempC, row.number("p_vap_Pa"), pressurePa);
  }

  private static Deviation overGrid(String unit, String column, ToDoubleFunction<MoistAir> ours) {
    Deviation deviation = new Deviation(unit);
    for (Row row : ReferenceTable.read(GRID)) {
      deviation.add(ours.applyAsDouble(ofGrid(row)), row.number(column), row.cells());
    }
    assertThat(deviation.count()).isEqualTo(690);
    return deviation;
  }

  private static double dewOrFrostPointC(MoistAir air) {
    return air.frostPointC().orElseGet(air::dewPointC);
  }

  @Test
  void vapourPressureAgreesWithPsychrolibWithinAHundredthOfAPascal() {
    Deviation deviation = overGrid("Pa", "p_vap_Pa", MoistAir::vapourPressurePa);
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(0.01);
  }

  @Test
  void dewAndFrostPointsAgreeWithPsychrolibWithinOneAndAHalfMillikelvin() {
    Deviation deviation = overGrid("K", "t_dew_C", PsychrometricTablesTest::dewOrFrostPointC);
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(0.0015);
  }

  /**
   * In a narrow band the ice wick and the liquid wick both have a solution and psychrolib's search
   * ends on either; there ours must be the liquid one, and theirs must give back the same air.
   */
  @Test
  void wetBulbAgreesWithPsychrolibWithinItsOwnStopOfAMillikelvin() {
    Deviation deviation = new Deviation("K");
    int onTheOtherWick = 0;
    for (Row row : ReferenceTable.read(GRID)) {
      MoistAir air = ofGrid(row);
      double theirsC = row.number("t_wet_C");
      if (air.wetBulbC() >= 0 && theirsC < 0) {
        onTheOtherWick++;
        MoistAir again = MoistAir.ofWetBulb(air.airTempC(), theirsC, air.pressurePa());
        assertThat(again.rhPct()).isCloseTo(air.rhPct(), within(0.02));
      } else {
        deviation.add(air.wetBulbC(), theirsC, row.cells());
      }
    }
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(0.0015);
    assertThat(onTheOtherWick).isEqualTo(3);
  }

  @Test
  void humidityRatioAgreesWithPsychrolibWithinATenthOfAMilligramPerKilogram() {
    Deviation deviation = overGrid("g/kg", "hum_ratio_g_per_kg", air -> 1000 * air.humidityRatio());
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(1e-4);
  }

  @Test
  void enthalpyAgreesWithPsychrolibWithinAJoulePerKilogram() {
    Deviation deviation = overGrid("kJ/kg", "enthalpy_kJ_per_kg_dry_air", MoistAir::enthalpyKjKg);
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(0.001);
  }

  @Test
  void absoluteHumidityAgreesWithPsychrolibWithinAMilligramPerCubicMetre() {
    Deviation deviation = overGrid("g/m3", "abs_humidity_g_per_m3", MoistAir::absoluteHumidityGm3);
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(0.001);
  }

  @Test
  void specificVolumeAgreesWithPsychrolibWithinTenPpm() {
    Deviation deviation =
        overGrid("m3/kg", "volume_m3_per_kg_dry_air", MoistAir::specificVolumeM3Kg);
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(1e-5);
  }

  @Test
  void densityAgreesWithPsychrolibWithinTenPpm() {
    Deviation deviation = overGrid("kg/m3", "density_kg_per_m3", MoistAir::densityKgm3);
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(1e-5);
  }

  @Test
  void vapourPressureDeficitAgreesWithPsychrolibAboveFreezingWithinAHundredthOfAPascal() {
    Deviation deviation = new Deviation("Pa");
    for (Row row : ReferenceTable.read(GRID)) {
      if (row.number("t_dry_C") > 0.01) {
        deviation.add(ofGrid(row).vapourPressureDeficitPa(), row.number("vpd_Pa"), row.cells());
      }
    }
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(0.01);
  }

  /**
   * The reverse way: dry bulb and dew point (a frost point below zero) to humidity and wet bulb.
   */
  @Test
  void airKnownByItsDewPointAgreesWithPsychrolib() {
    Deviation humidity = new Deviation("%");
    Deviation wetBulb = new Deviation("K");
    for (Row row : ReferenceTable.read("moist_air/psychrolib_from_dewpoint.csv")) {
      MoistAir air = ofDewOrFrostPoint(row);
      humidity.add(air.rhPct(), row.number("rh_pct"), row.cells());
      wetBulb.add(air.wetBulbC(), row.number("t_wet_C"), row.cells());
    }
    assertThat(humidity.largest()).as("%s", humidity).isLessThan(0.001);
    assertThat(wetBulb.largest()).as("%s", wetBulb).isLessThan(0.0015);
    assertThat(humidity.count()).isEqualTo(52);
  }

  private static MoistAir ofDewOrFrostPoint(Row row) {
    double tempC = row.number("t_dry_C");
    double dewC = row.number("t_dew_C");
    double pressurePa = row.number("p_atm_Pa");
    return dewC > 0
        ? MoistAir.ofDewPoint(tempC, dewC, pressurePa)
        : MoistAir.ofVapourPressure(tempC, SaturationPressure.overIcePa(dewC), pressurePa);
  }

  /** The reverse way from a wet and a dry thermometer. */
  @Test
  void airKnownByItsWetBulbAgreesWithPsychrolib() {
    Deviation humidity = new Deviation("%");
    Deviation dewPoint = new Deviation("K");
    for (Row row : ReferenceTable.read("moist_air/psychrolib_from_wetbulb.csv")) {
      MoistAir air =
          MoistAir.ofWetBulb(row.number("t_dry_C"), row.number("t_wet_C"), row.number("p_atm_Pa"));
      humidity.add(air.rhPct(), row.number("rh_pct"), row.cells());
      dewPoint.add(dewOrFrostPointC(air), row.number("t_dew_C"), row.cells());
    }
    assertThat(humidity.largest()).as("%s", humidity).isLessThan(0.001);
    assertThat(dewPoint.largest()).as("%s", dewPoint).isLessThan(0.001);
    assertThat(humidity.count()).isEqualTo(76);
  }

  /**
   * Dew point by IAPWS-IF97 forward and backward equations, wholly independent of Hyland-Wexler.
   */
  @Test
  void dewPointAgreesWithIapwsIf97WithinThreeMillikelvin() {
    Deviation deviation = new Deviation("K");
    for (Row row : ReferenceTable.read("moist_air/dewpoint_if97_vs_psychrolib.csv")) {
      MoistAir air = MoistAir.of(row.number("t_dry_C"), row.number("rh_pct"));
      deviation.add(air.dewPointC(), row.number("t_dew_if97_C"), row.cells());
    }
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(0.003);
    assertThat(deviation.count()).isEqualTo(206);
  }

  /** Density of the real-gas mixture by IAPWS: what the ideal-gas relations leave out. */
  @Test
  void densityAgreesWithTheRealGasMixtureOfIapwsWithinATenthOfAPercent() {
    Deviation deviation = new Deviation("ppm");
    for (Row row : ReferenceTable.read("moist_air/density_iapws_vs_psychrolib.csv")) {
      MoistAir air =
          new MoistAir(row.number("t_dry_C"), row.number("rh_pct"), row.number("p_atm_Pa"));
      deviation.addPpm(air.densityKgm3(), row.number("density_iapws_kg_per_m3"), row.cells());
    }
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(1000);
    assertThat(deviation.count()).isEqualTo(48);
  }

  /** ASHRAE Handbook Fundamentals 2017, chapter 1, Table 1. */
  @Test
  void standardPressureAgreesWithTheAshraeTableAndWithPsychrolib() {
    assertThat(StandardAtmosphere.pressurePa(500)).isCloseTo(95_461, within(1.0));
    assertThat(StandardAtmosphere.pressurePa(1000)).isCloseTo(89_875, within(1.0));
    Deviation deviation = new Deviation("Pa");
    for (Row row : ReferenceTable.read("moist_air/psychrolib_standard_atmosphere.csv")) {
      double altitudeM = row.number("altitude_m");
      deviation.add(StandardAtmosphere.pressurePa(altitudeM), row.number("p_Pa"), altitudeM + " m");
    }
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(0.01);
  }
}
