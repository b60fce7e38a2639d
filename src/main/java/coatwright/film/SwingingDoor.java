package coatwright.film;

/**
 * Drops the knots of an air course that a straight line between their neighbours tells within a
 * tolerance. From the last kept knot two doors swing shut, one for temperature and one for
 * humidity; the knot before the one that shuts either is kept.
 */
final class SwingingDoor {
  private final AirCourse air;
  private final double toleranceK;
  private final double toleranceRh;

  SwingingDoor(AirCourse air, double toleranceK, double toleranceRh) {
    this.air = air;
    this.toleranceK = toleranceK;
    this.toleranceRh = toleranceRh;
  }

  AirCourse thin() {
    int n = air.size();
    int[] kept = new int[n];
    int count = 0;
    int from = 0;
    kept[count++] = 0;
    while (from < n - 1) {
      from = farthestTold(from);
      kept[count++] = from;
    }
    return only(kept, count);
  }

  /** The course with these knots only. */
  AirCourse only(int[] kept, int count) {
    double[] timeS = new double[count];
    double[] tempC = new double[count];
    double[] rh = new double[count];
    for (int i = 0; i < count; i++) {
      timeS[i] = air.knotTimeS(kept[i]);
      tempC[i] = air.knotTempC(kept[i]);
      rh[i] = air.knotRhFraction(kept[i]);
    }
    return new AirCourse(timeS, tempC, rh, air.draughtMPerS());
  }

  /**
   * The last knot whose straight line from {@code from} passes every knot between within tolerance.
   */
  int farthestTold(int from) {
    double lowK = Double.NEGATIVE_INFINITY;
    double highK = Double.POSITIVE_INFINITY;
    double lowRh = Double.NEGATIVE_INFINITY;
    double highRh = Double.POSITIVE_INFINITY;
    int told = from + 1;
    for (int i = from + 1; i < air.size(); i++) {
      double dt = air.knotTimeS(i) - air.knotTimeS(from);
      double slopeK = (air.knotTempC(i) - air.knotTempC(from)) / dt;
      double slopeRh = (air.knotRhFraction(i) - air.knotRhFraction(from)) / dt;
      if (slopeK >= lowK && slopeK <= highK && slopeRh >= lowRh && slopeRh <= highRh) {
        told = i;
      }
      lowK = Math.max(lowK, slopeK - toleranceK / dt);
      highK = Math.min(highK, slopeK + toleranceK / dt);
      lowRh = Math.max(lowRh, slopeRh - toleranceRh / dt);
      highRh = Math.min(highRh, slopeRh + toleranceRh / dt);
      if (lowK > highK || lowRh > highRh) {
        break;
      }
    }
    return told;
  }

  /** Whether the straight line between two knots passes every knot between within tolerance. */
  boolean tells(int from, int to) {
    double dt = air.knotTimeS(to) - air.knotTimeS(from);
    double slopeK = (air.knotTempC(to) - air.knotTempC(from)) / dt;
    double slopeRh = (air.knotRhFraction(to) - air.knotRhFraction(from)) / dt;
    for (int i = from + 1; i < to; i++) {
      double after = air.knotTimeS(i) - air.knotTimeS(from);
      double offK = air.knotTempC(from) + slopeK * after - air.knotTempC(i);
      double offRh = air.knotRhFraction(from) + slopeRh * after - air.knotRhFraction(i);
      if (Math.abs(offK) > toleranceK || Math.abs(offRh) > toleranceRh) {
        return false;
      }
    }
    return true;
  }
}
