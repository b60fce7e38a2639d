package coatwright.outlook;

import coatwright.air.MoistAir;

/** What the errors of two readings make of the dew point. */
final class DewError {
  private DewError() {}

  /**
   * Standard uncertainty of the dew point, K.
   *
   * @param airTempErrorK of the air temperature, K
   * @param rhErrorPct of the humidity, points
   */
  static double ofK(MoistAir air, double airTempErrorK, double rhErrorPct) {
    double drier = Math.max(1, air.rhPct() - 1);
    double perPct =
        (air.dewPointC() - new MoistAir(air.airTempC(), drier, air.pressurePa()).dewPointC())
            / (air.rhPct() - drier);
    double perK =
        air.dewPointC()
            - new MoistAir(air.airTempC() - 1, air.rhPct(), air.pressurePa()).dewPointC();
    return Math.hypot(perPct * rhErrorPct, perK * airTempErrorK);
  }
}
