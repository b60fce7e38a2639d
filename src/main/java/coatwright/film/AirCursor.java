package coatwright.film;

/** Walks along an air course with the integrator: one straight line at a time. */
final class AirCursor {
  private final AirCourse air;
  private int next;
  private double fromS;
  private double tempC;
  private double rhFraction;

  /** Slopes of the present line, per second. */
  double tempSlope;

  double rhSlope;

  AirCursor(AirCourse air, double startS) {
    this.air = air;
    while (next < air.size() && air.knotTimeS(next) <= startS) {
      next++;
    }
    line();
  }

  /** Stands in until a job is given. */
  static AirCursor still() {
    return new AirCursor(AirCourse.steady(20, 0.5, 0), 0);
  }

  /** The next knot after the present line, s; infinite on the last. */
  double nextKnotS() {
    return next < air.size() ? air.knotTimeS(next) : Double.POSITIVE_INFINITY;
  }

  /** Steps onto the line that begins at the next knot. */
  void pass() {
    next++;
    line();
  }

  private void line() {
    if (next == 0 || next == air.size()) {
      int i = next == 0 ? 0 : next - 1;
      fromS = air.knotTimeS(i);
      tempC = air.knotTempC(i);
      rhFraction = air.knotRhFraction(i);
      tempSlope = 0;
      rhSlope = 0;
      return;
    }
    double dt = air.knotTimeS(next) - air.knotTimeS(next - 1);
    fromS = air.knotTimeS(next - 1);
    tempC = air.knotTempC(next - 1);
    rhFraction = air.knotRhFraction(next - 1);
    tempSlope = (air.knotTempC(next) - tempC) / dt;
    rhSlope = (air.knotRhFraction(next) - rhFraction) / dt;
  }

  boolean changing() {
    return tempSlope != 0 || rhSlope != 0;
  }

  double tempC(double atS) {
    return tempC + tempSlope * (atS - fromS);
  }

  double rhFraction(double atS) {
    return rhFraction + rhSlope * (atS - fromS);
  }
}
