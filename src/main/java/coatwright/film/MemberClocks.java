package coatwright.film;

/**
 * The film's own clock for every member: each has its own activation energy, so a cold night costs
 * one more than another. Kept at seven energies and read between.
 */
final class MemberClocks {
  private static final int REACH = 3;

  private final EquivalentTime[] clocks = new EquivalentTime[2 * REACH + 1];

  MemberClocks(AirCourse air, double energyJPerMol) {
    for (int i = 0; i < clocks.length; i++) {
      double factor = Math.exp(Axis.GLASS_ENERGY_LN * (i - REACH));
      clocks[i] = new EquivalentTime(air, energyJPerMol * factor);
    }
  }

  /**
   * Seconds from a moment until the clock has gone on by so much.
   *
   * @param z the member's activation energy, in standard deviations
   */
  double secondsFor(double z, double fromS, double worthS) {
    double at = Math.min(2 * REACH - 1e-9, Math.max(0, z + REACH));
    int below = (int) at;
    double share = at - below;
    double first = seconds(clocks[below], fromS, worthS);
    return share == 0 ? first : first + share * (seconds(clocks[below + 1], fromS, worthS) - first);
  }

  /** What the clock of that member went on by between two moments. */
  double worth(double z, double fromS, double toS) {
    int nearest = (int) Math.round(Math.min(2 * REACH, Math.max(0, z + REACH)));
    return clocks[nearest].at(toS) - clocks[nearest].at(fromS);
  }

  private static double seconds(EquivalentTime clock, double fromS, double worthS) {
    return clock.momentOf(clock.at(fromS) + worthS) - fromS;
  }
}
