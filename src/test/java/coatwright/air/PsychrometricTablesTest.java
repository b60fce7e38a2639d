package coatwright.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.Deviation;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import org.junit.jupiter.api.Test;

/**
 * Moist air against tables printed or computed by others; the comparisons are {@link AirChecks}.
 */
class PsychrometricTablesTest {

  @Test
  void vapourPressureAgreesWithPsychrolibWithinAHundredthOfAPascal() {
    AirChecks.VAPOUR.holds();
  }

  @Test
  void dewAndFrostPointsAgreeWithPsychrolibWithinOneAndAHalfMillikelvin() {
    AirChecks.DEW.holds();
  }

  /**
   * In a narrow band the ice wick and the liquid wick both have a solution and psychrolib's search
   * ends on either; there ours must be the liquid one, and theirs must give back the same air.
   */
  @Test
  void wetBulbAgreesWithPsychrolibWithinItsOwnStopOfAMillikelvin() {
    AirChecks.WET_BULB.holds();
    int onTheOtherWick = 0;
    for (Row row : ReferenceTable.read("moist_air/psychrolib_grid.csv")) {
      if (AirChecks.onTheOtherWick(row)) {
        onTheOtherWick++;
        MoistAir air = AirChecks.ofGrid(row);
        MoistAir again =
            MoistAir.ofWetBulb(air.airTempC(), row.number("t_wet_C"), air.pressurePa());
        assertThat(again.rhPct()).isCloseTo(air.rhPct(), within(0.02));
      }
    }
    assertThat(onTheOtherWick).isEqualTo(3);
  }

  @Test
  void humidityRatioAgreesWithPsychrolibWithinATenthOfAMilligramPerKilogram() {
    AirChecks.RATIO.holds();
  }

  @Test
  void enthalpyAgreesWithPsychrolibWithinAJoulePerKilogram() {
    AirChecks.ENTHALPY.holds();
  }

  @Test
  void absoluteHumidityAgreesWithPsychrolibWithinAMilligramPerCubicMetre() {
    AirChecks.ABSOLUTE.holds();
  }

  @Test
  void specificVolumeAgreesWithPsychrolibWithinTenPpm() {
    AirChecks.VOLUME.holds();
  }

  @Test
  void densityAgreesWithPsychrolibWithinTenPpm() {
    AirChecks.DENSITY.holds();
  }

  @Test
  void vapourPressureDeficitAgreesWithPsychrolibAboveFreezingWithinAHundredthOfAPascal() {
    AirChecks.DEFICIT.holds();
  }

  /**
   * The reverse way: dry bulb and dew point (a frost point below zero) to humidity and wet bulb.
   */
  @Test
  void airKnownByItsDewPointAgreesWithPsychrolib() {
    AirChecks.HUMIDITY_OF_DEW.holds();
    Deviation wetBulb = new Deviation("K");
    for (Row row : ReferenceTable.read("moist_air/psychrolib_from_dewpoint.csv")) {
      wetBulb.add(AirChecks.ofDewOrFrostPoint(row).wetBulbC(), row.number("t_wet_C"), row.cells());
    }
    assertThat(wetBulb.largest()).as("%s", wetBulb).isLessThan(0.0015);
    assertThat(wetBulb.count()).isEqualTo(52);
  }

  /** The reverse way from a wet and a dry thermometer. */
  @Test
  void airKnownByItsWetBulbAgreesWithPsychrolib() {
    AirChecks.HUMIDITY_OF_WET_BULB.holds();
    Deviation dewPoint = new Deviation("K");
    for (Row row : ReferenceTable.read("moist_air/psychrolib_from_wetbulb.csv")) {
      MoistAir air =
          MoistAir.ofWetBulb(row.number("t_dry_C"), row.number("t_wet_C"), row.number("p_atm_Pa"));
      dewPoint.add(AirChecks.dewOrFrostPointC(air), row.number("t_dew_C"), row.cells());
    }
    assertThat(dewPoint.largest()).as("%s", dewPoint).isLessThan(0.001);
    assertThat(dewPoint.count()).isEqualTo(76);
  }

  /**
   * Dew point by IAPWS-IF97 forward and backward equations, wholly independent of Hyland-Wexler.
   */
  @Test
  void dewPointAgreesWithIapwsIf97WithinThreeMillikelvin() {
    AirChecks.DEW_BY_IF97.holds();
  }

  /** Density of the real-gas mixture by IAPWS: what the ideal-gas relations leave out. */
  @Test
  void densityAgreesWithTheRealGasMixtureOfIapwsWithinATenthOfAPercent() {
    AirChecks.DENSITY_REAL.holds();
  }

  /** ASHRAE Handbook Fundamentals 2017, chapter 1, Table 1. */
  @Test
  void standardPressureAgreesWithTheAshraeTableAndWithPsychrolib() {
    AirChecks.ALTITUDE_PRINTED.holds();
    AirChecks.ALTITUDE.holds();
  }
}
