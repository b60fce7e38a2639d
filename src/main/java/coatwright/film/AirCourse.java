package coatwright.film;

import coatwright.quantity.OutOfRange;
import java.util.Arrays;

/**
 * The room's air through time: straight lines between knots, constant before the first and after
 * the last.
 *
 * @param timeS knots, s, strictly rising; the same clock as the coats
 * @param airTempC °C, −5 to 45
 * @param rhFraction relative humidity over liquid water as a fraction, 0.03 to 1
 * @param draughtMPerS air speed along the surface, m/s, 0 to 3
 */
@SuppressWarnings("ArrayRecordComponent") // copied both ways, compared by content
public record AirCourse(
    double[] timeS, double[] airTempC, double[] rhFraction, double draughtMPerS) {

  private static final double THIN_K = 0.3;
  private static final double THIN_RH = 0.01;

  public AirCourse {
    if (timeS.length == 0 || timeS.length != airTempC.length || timeS.length != rhFraction.length) {
      throw new IllegalArgumentException(
          "an air course needs as many temperatures and humidities as times, and at least one; got %d times, %d temperatures, %d humidities"
              .formatted(timeS.length, airTempC.length, rhFraction.length));
    }
    timeS = timeS.clone();
    airTempC = airTempC.clone();
    rhFraction = rhFraction.clone();
    for (int i = 0; i < timeS.length; i++) {
      OutOfRange.check("time", timeS[i], "s", -1e10, 1e10);
      OutOfRange.check("air temperature", airTempC[i], "°C", -5, 45);
      OutOfRange.check("relative humidity", rhFraction[i], "(fraction)", 0.03, 1);
      if (i > 0 && timeS[i] <= timeS[i - 1]) {
        throw new IllegalArgumentException(
            "times of an air course must rise; %s s follows %s s"
                .formatted(timeS[i], timeS[i - 1]));
      }
    }
    OutOfRange.check("draught", draughtMPerS, "m/s", 0, 3);
  }

  /** Air that stays as it is. */
  public static AirCourse steady(double airTempC, double rhFraction, double draughtMPerS) {
    return new AirCourse(
        new double[] {0}, new double[] {airTempC}, new double[] {rhFraction}, draughtMPerS);
  }

  @Override
  public double[] timeS() {
    return timeS.clone();
  }

  @Override
  public double[] airTempC() {
    return airTempC.clone();
  }

  @Override
  public double[] rhFraction() {
    return rhFraction.clone();
  }

  /** How many knots. */
  public int size() {
    return timeS.length;
  }

  /** Air temperature at a time, °C. */
  public double airTempCAt(double atS) {
    return between(airTempC, atS);
  }

  /** Relative humidity at a time, as a fraction. */
  public double rhFractionAt(double atS) {
    return between(rhFraction, atS);
  }

  private double between(double[] values, double atS) {
    int i = Arrays.binarySearch(timeS, atS);
    if (i >= 0) {
      return values[i];
    }
    int above = -i - 1;
    if (above == 0) {
      return values[0];
    }
    if (above == timeS.length) {
      return values[above - 1];
    }
    double share = (atS - timeS[above - 1]) / (timeS[above] - timeS[above - 1]);
    return values[above - 1] + share * (values[above] - values[above - 1]);
  }

  double knotTimeS(int i) {
    return timeS[i];
  }

  double knotTempC(int i) {
    return airTempC[i];
  }

  double knotRhFraction(int i) {
    return rhFraction[i];
  }

  /**
   * The same air with fewer knots: every dropped knot lies within the two tolerances of the line
   * that replaces it (swinging door, both quantities at once).
   *
   * @param toleranceK K, above 0
   * @param toleranceRh fraction, above 0
   */
  public AirCourse thinned(double toleranceK, double toleranceRh) {
    OutOfRange.check("tolerance", toleranceK, "K", 1e-6, 10);
    OutOfRange.check("tolerance", toleranceRh, "(fraction)", 1e-6, 0.5);
    return new SwingingDoor(this, toleranceK, toleranceRh).thin();
  }

  /**
   * The same air with fewer knots, for a record of many days: within ±0.3 K and ±1 % RH at every
   * dropped knot, and so that a film's own clock, which its rub-out date follows, stands nowhere
   * off by more than a date may move.
   *
   * @param glassEnergyJPerMol of the set, J/mol, 0 to 200 000
   * @param mostShiftS by how much such a date may move, s, above 0
   */
  public AirCourse thinnedByClock(double glassEnergyJPerMol, double mostShiftS) {
    OutOfRange.check("activation energy in the glass", glassEnergyJPerMol, "J/mol", 0, 200e3);
    OutOfRange.check("shift of a date", mostShiftS, "s", 1e-3, 1e6);
    return new ClockedThinning(this, glassEnergyJPerMol, mostShiftS).thin(THIN_K, THIN_RH);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof AirCourse o
        && draughtMPerS == o.draughtMPerS
        && Arrays.equals(timeS, o.timeS)
        && Arrays.equals(airTempC, o.airTempC)
        && Arrays.equals(rhFraction, o.rhFraction);
  }

  @Override
  public int hashCode() {
    return 31 * (31 * Arrays.hashCode(timeS) + Arrays.hashCode(airTempC))
        + 31 * Arrays.hashCode(rhFraction)
        + Double.hashCode(draughtMPerS);
  }

  @Override
  public String toString() {
    return "AirCourse[%d knots from %s s to %s s, draught %s m/s]"
        .formatted(timeS.length, timeS[0], timeS[timeS.length - 1], draughtMPerS);
  }
}
