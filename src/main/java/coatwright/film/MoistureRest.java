package coatwright.film;

/** The film long after everything but the room's moisture has left it. */
final class MoistureRest {
  private static final double STEP = 0.002;
  private static final double MOST = 1;
  private static final int HALVINGS = 50;

  private MoistureRest() {}

  /**
   * Whether the dry film would stand too close to its glass transition to be rubbed out, for ever.
   */
  static boolean tooSoft(
      FilmSolution solution, FilmParameters.Criteria criteria, double airC, double rhFraction) {
    double water = water(solution, rhFraction);
    if (water >= MOST) {
      return true;
    }
    double[] u = new double[solution.ns];
    u[Species.WATER] = water;
    double glassC = solution.glassK(u, 0) - Species.KELVIN;
    return glassC - airC < criteria.aboveRoomK();
  }

  /**
   * Water the resin holds against this humidity, volume per volume of resin; MOST without limit.
   */
  static double water(FilmSolution solution, double rhFraction) {
    double[] u = new double[solution.ns];
    double[] a = new double[solution.ns];
    double high = 0;
    do {
      high += STEP;
    } while (activity(solution, high, u, a) < rhFraction && high < MOST);
    double low = high - STEP;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = 0.5 * (low + high);
      if (activity(solution, middle, u, a) < rhFraction) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  private static double activity(FilmSolution solution, double water, double[] u, double[] a) {
    u[Species.WATER] = water;
    solution.activities(u, 0, a);
    return a[Species.WATER];
  }
}
