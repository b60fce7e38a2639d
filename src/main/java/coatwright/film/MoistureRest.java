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
    double glassC = solution.glassK(0, water, 0) - Species.KELVIN;
    return glassC - airC < criteria.aboveRoomK();
  }

  /**
   * Water the resin holds against this humidity, volume per volume of resin; MOST without limit.
   */
  static double water(FilmSolution solution, double rhFraction) {
    double high = 0;
    do {
      high += STEP;
      solution.activities(0, high, 0);
    } while (solution.aW < rhFraction && high < MOST);
    double low = high - STEP;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = 0.5 * (low + high);
      solution.activities(0, middle, 0);
      if (solution.aW < rhFraction) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }
}
