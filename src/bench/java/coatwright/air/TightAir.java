package coatwright.air;

/**
 * Dew point, wet bulb, humidity ratio and enthalpy in one loop with everything shared and nothing
 * checked: what the formulas themselves cost. The same equations, and Newton steps to the same
 * 1e-11 K for both bulbs.
 */
final class TightAir {
  private static final double PRESSURE_PA = 101_325;

  private TightAir() {}

  /** The four answers of one state, added up. */
  static double allFour(double airTempC, double rhPct) {
    double k = airTempC + 273.15;
    double full = logOverWater(k);
    double vapourPa = rhPct / 100 * Math.exp(full);
    double lnVapour = full + Math.log(rhPct / 100);
    double ratio = 0.621945 * vapourPa / (PRESSURE_PA - vapourPa);
    double enthalpy = 1.006 * airTempC + ratio * (2501 + 1.86 * airTempC);
    double dewK = k;
    double change = 1;
    while (Math.abs(change) > 1e-11) {
      change = (logOverWater(dewK) - lnVapour) / slope(dewK);
      dewK -= change;
    }
    double wet = airTempC - 0.35 * (k - dewK);
    change = 1;
    while (Math.abs(change) > 1e-11) {
      double wetK = wet + 273.15;
      double p = Math.exp(logOverWater(wetK));
      double saturated = 0.621945 * p / (PRESSURE_PA - p);
      double risesBy = saturated * slope(wetK) * PRESSURE_PA / (PRESSURE_PA - p);
      double below = 2501 + 1.86 * airTempC - 4.186 * wet;
      double above = (2501 - 2.326 * wet) * saturated - 1.006 * (airTempC - wet);
      double aboveBy = (2501 - 2.326 * wet) * risesBy - 2.326 * saturated + 1.006;
      change = (above - ratio * below) / (aboveBy + ratio * 4.186);
      wet -= change;
    }
    return dewK - 273.15 + wet + ratio + enthalpy;
  }

  private static double logOverWater(double k) {
    return -5.8002206e3 / k
        + 1.3914993
        + k * (-4.8640239e-2 + k * (4.1764768e-5 - k * 1.4452093e-8))
        + 6.5459673 * Math.log(k);
  }

  private static double slope(double k) {
    return 5.8002206e3 / (k * k)
        - 4.8640239e-2
        + k * (2 * 4.1764768e-5 - 3 * k * 1.4452093e-8)
        + 6.5459673 / k;
  }
}
