package coatwright.film;

/** Walks one member after the other through the same coats and the same air. */
sealed interface CureWalk permits OxidativeWalk, WaterborneWalk, TwoPartWalk {
  /** Place of the late end of the recoat window behind the milestones. */
  int RECOAT_UNTIL = Milestone.values().length;

  /**
   * Seconds from the last coat to every milestone, by its index, and to the late end of the recoat
   * window; infinite where it is not reached, or not defined for this finish.
   */
  double[] secondsTo(CureMember member);

  /** The walk of a job. */
  static CureWalk of(CureJob job) {
    Curing curing = job.curing();
    if (curing instanceof OxidativeCure oxidative) {
      return new OxidativeWalk(oxidative, job);
    }
    if (curing instanceof WaterborneCure waterborne) {
      return new WaterborneWalk(waterborne, job);
    }
    return new TwoPartWalk((TwoPartCure) curing, job);
  }

  /** An answer with nothing reached yet. */
  static double[] nothingReached() {
    double[] seconds = new double[RECOAT_UNTIL + 1];
    java.util.Arrays.fill(seconds, Double.POSITIVE_INFINITY);
    return seconds;
  }

  /** A film is not further on in one milestone than in an earlier one. */
  static void keepOrder(Curing curing, double[] seconds) {
    double latest = 0;
    for (Milestone m : curing.milestones()) {
      latest = Math.max(latest, seconds[m.index()]);
      seconds[m.index()] = latest;
    }
    if (curing.hasLateEnd()) {
      int recoat = Milestone.DRY_TO_RECOAT.index();
      seconds[RECOAT_UNTIL] = Math.max(seconds[recoat], seconds[RECOAT_UNTIL]);
    }
  }
}
