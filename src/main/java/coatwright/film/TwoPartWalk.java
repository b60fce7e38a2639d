package coatwright.film;

/** Conversion along the real air. Coats beneath are further on and do not hold the last one up. */
final class TwoPartWalk implements CureWalk {
  private final TwoPartCure cure;
  private final CureAir air;

  TwoPartWalk(TwoPartCure cure, CureJob job) {
    this.cure = cure;
    this.air = new CureAir(job, false);
  }

  @Override
  public double[] secondsTo(CureMember m) {
    double most = 0;
    for (Milestone milestone : cure.milestones()) {
      most = Math.max(most, Conversion.reacted(cure.conversion(milestone)) * m.own(milestone));
    }
    Conversion reached = Conversion.along(cure, air, m, most);
    double[] seconds = CureWalk.nothingReached();
    for (Milestone milestone : cure.milestones()) {
      double needed = Conversion.reacted(cure.conversion(milestone)) * m.own(milestone);
      seconds[milestone.index()] = 3600 * reached.hoursToReacted(needed);
    }
    cure.recoatUntilConversion()
        .ifPresent(
            x ->
                seconds[RECOAT_UNTIL] =
                    3600 * reached.hoursToReacted(Conversion.reacted(x) * m.ownEarly()));
    CureWalk.keepOrder(cure, seconds);
    return seconds;
  }
}
