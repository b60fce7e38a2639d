package coatwright.air;

/**
 * Dew point, wet bulb, humidity ratio and enthalpy in one loop with everything shared and nothing
 * checked: what the formulas themselves cost. The same equations and the same steps: Newton's in
 * 1/T for the dew point, Halley's from the dry bulb for the wet one, stopped at the same sizes.
 */
final class TightAir {
  private static final double PRESSURE_PA = 101_325;

  private static final double LN_MAGNUS = Math.log(611.2);

  private TightAir() {}

  /** The four answers of one state, added up. */
  static double allFour(double airTempC, double rhPct) {
    double k = airTempC + 273.15;
    double full = logOverWater(k);
    double p = Math.exp(full);
    double vapourPa = rhPct / 100 * p;
    double lnVapour = full + Math.log(rhPct / 100);
    double ratio = 0.621945 * vapourPa / (PRESSURE_PA - vapourPa);
    double enthalpy = 1.006 * airTempC + ratio * (2501 + 1.86 * airTempC);
    double x = lnVapour - LN_MAGNUS;
    double dewK = 243.12 * x / (17.62 - x) + 273.15;
    double change = 1;
    while (Math.abs(change) >= 1e-5) {
      change = (logOverWater(dewK) - lnVapour) / slope(dewK);
      dewK /= 1 + change / dewK;
    }
    double wet = airTempC;
    while (true) {
      double wetK = wet + 273.15;
      double slope = slope(wetK);
      double heat = 2501 - 2.326 * wet;
      double thinned = PRESSURE_PA / (PRESSURE_PA - p);
      double saturated = 0.621945 * p / (PRESSURE_PA - p);
      double rises = saturated * slope * thinned;
      double bends = saturated * thinned * (bend(wetK) + slope * slope * (2 * thinned - 1));
      double below = 2501 + 1.86 * airTempC - 4.186 * wet;
      double above = heat * saturated - 1.006 * (airTempC - wet) - ratio * below;
      double by = heat * rises - 2.326 * saturated + 1.006 + ratio * 4.186;
      change = above / (by - 0.5 * above * (heat * bends - 2 * 2.326 * rises) / by);
      wet -= change;
      if (Math.abs(change) < 1e-3) {
        break;
      }
      p = Math.exp(logOverWater(wet + 273.15));
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

  private static double bend(double k) {
    return -2 * 5.8002206e3 / (k * k * k)
        + 2 * 4.1764768e-5
        - 6 * k * 1.4452093e-8
        - 6.5459673 / (k * k);
  }

  /** The humidity ratio alone. */
  static double humidityRatio(double airTempC, double rhPct) {
    double vapourPa = rhPct / 100 * Math.exp(logOverWater(airTempC + 273.15));
    return 0.621945 * vapourPa / (PRESSURE_PA - vapourPa);
  }
}
