package coatwright.film;

/** An air course with one thing about it changed. */
public final class AirCourses {
  private static final double LEAST_RH = 0.03;
  private static final double EDGE_S = 1;

  private AirCourses() {}

  /** The same air, moving otherwise along the surface, m/s. */
  public static AirCourse withDraught(AirCourse air, double draughtMPerS) {
    return new AirCourse(air.timeS(), air.airTempC(), air.rhFraction(), draughtMPerS);
  }

  /** Every temperature higher by so many kelvin, at the humidity that was read. */
  public static AirCourse warmer(AirCourse air, double byK) {
    double[] tempC = air.airTempC();
    for (int i = 0; i < tempC.length; i++) {
      tempC[i] += byK;
    }
    return new AirCourse(air.timeS(), tempC, air.rhFraction(), air.draughtMPerS());
  }

  /**
   * Every humidity higher by that fraction. Air cannot hold more than all: an error of the sensor
   * stops at saturation, and at the 3 % the model holds from.
   */
  public static AirCourse damper(AirCourse air, double byFraction) {
    double[] rh = air.rhFraction();
    for (int i = 0; i < rh.length; i++) {
      rh[i] = Math.min(1, Math.max(LEAST_RH, rh[i] + byFraction));
    }
    return new AirCourse(air.timeS(), air.airTempC(), rh, air.draughtMPerS());
  }

  /**
   * Warmer by so many kelvin from one moment to another, as before outside it; the change takes a
   * second at either end.
   */
  public static AirCourse warmerBetween(AirCourse air, double fromS, double toS, double byK) {
    double[] old = air.timeS();
    int most = old.length + 4;
    double[] timeS = new double[most];
    double[] tempC = new double[most];
    double[] rh = new double[most];
    int n = 0;
    double[] edges = {fromS - EDGE_S, fromS, toS, toS + EDGE_S};
    int edge = 0;
    for (int i = 0; i <= old.length; i++) {
      while (edge < 4
          && Double.isFinite(edges[edge])
          && (i == old.length || edges[edge] < old[i])) {
        n = put(air, edges[edge], timeS, tempC, rh, n);
        edge++;
      }
      if (i < old.length) {
        while (edge < 4 && edges[edge] == old[i]) {
          edge++;
        }
        n = put(air, old[i], timeS, tempC, rh, n);
      }
    }
    for (int i = 0; i < n; i++) {
      if (timeS[i] >= fromS && timeS[i] <= toS) {
        tempC[i] += byK;
      }
    }
    return new AirCourse(
        java.util.Arrays.copyOf(timeS, n),
        java.util.Arrays.copyOf(tempC, n),
        java.util.Arrays.copyOf(rh, n),
        air.draughtMPerS());
  }

  private static int put(
      AirCourse air, double atS, double[] timeS, double[] tempC, double[] rh, int n) {
    if (n > 0 && atS <= timeS[n - 1]) {
      return n;
    }
    timeS[n] = atS;
    tempC[n] = air.airTempCAt(atS);
    rh[n] = air.rhFractionAt(atS);
    return n + 1;
  }

  /**
   * The steady temperature, °C, at which a hardening film would age as fast as it does over a
   * stretch of this air; the mean for everything but a cold night.
   */
  public static double steadyTempC(
      AirCourse air, FilmParameters parameters, double fromS, double toS) {
    return EquivalentTime.steadyTempC(air, parameters.diffusion().glassEnergyJPerMol(), fromS, toS);
  }
}
