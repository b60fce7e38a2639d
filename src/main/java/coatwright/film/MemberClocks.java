package coatwright.film;

import coatwright.solvent.AirFlow;

/**
 * The film's own clock for every member: each has its own activation energy, so a cold night costs
 * one more than another; and each stands in air a little warmer or colder than was read, or is
 * expected. Kept at seven energies and read between.
 */
final class MemberClocks {
  private static final int REACH = 3;
  private static final double MIDDLE_K = 293.15;

  private final EquivalentTime[] clocks = new EquivalentTime[2 * REACH + 1];
  private final double perK;
  private final double nowS;

  /**
   * @param nowS the present: before it the air was read, after it it is only expected
   */
  MemberClocks(AirCourse air, double energyJPerMol, double nowS) {
    this.nowS = nowS;
    perK = energyJPerMol / (AirFlow.GAS_CONSTANT * MIDDLE_K * MIDDLE_K);
    for (int i = 0; i < clocks.length; i++) {
      double factor = Math.exp(Axis.GLASS_ENERGY_LN * (i - REACH));
      clocks[i] = new EquivalentTime(air, energyJPerMol * factor);
    }
  }

  /** How far a member's air lies above what was read, and above what is expected after now, K. */
  record Warmer(double readK, double comingK) {
    static final Warmer NOT = new Warmer(0, 0);
  }

  /**
   * Seconds from a moment until the clock has gone on by so much.
   *
   * @param z the member's activation energy, in standard deviations
   */
  double secondsFor(double z, double fromS, double worthS, Warmer warmer) {
    double energy = Math.exp(Axis.GLASS_ENERGY_LN * z) * perK;
    double before = Math.exp(energy * warmer.readK());
    double after = before * Math.exp(energy * warmer.comingK());
    double at = Math.min(2 * REACH - 1e-9, Math.max(0, z + REACH));
    int below = (int) at;
    double share = at - below;
    double first = seconds(clocks[below], fromS, worthS, before, after);
    return share == 0
        ? first
        : first + share * (seconds(clocks[below + 1], fromS, worthS, before, after) - first);
  }

  private double seconds(
      EquivalentTime clock, double fromS, double worthS, double before, double after) {
    double start = clock.at(fromS);
    double untilNow = nowS > fromS ? clock.at(nowS) - start : 0;
    double worth =
        worthS <= before * untilNow
            ? worthS / before
            : untilNow + (worthS - before * untilNow) / after;
    return clock.momentOf(start + worth) - fromS;
  }
}
