package coatwright.film;

import java.util.List;

/**
 * An oil film's clock in the real air. What an earlier coat still lacked of hardness when the last
 * went on lies beneath as so much fresh film; assumed.
 */
final class OxidativeWalk implements CureWalk {
  private static final double HOUR_S = 3600;

  private final OxidativeCure cure;
  private final CureJob job;
  private final CureAir air;

  OxidativeWalk(OxidativeCure cure, CureJob job) {
    this.cure = cure;
    this.job = job;
    this.air = new CureAir(job, true);
  }

  @Override
  public double[] secondsTo(CureMember m) {
    CureClock clock =
        new CureClock(
            air,
            node ->
                cure.rate(air.filmTempC(node, m), air.rhFraction(node, m), m.energy()) / HOUR_S);
    double slower = 1 / cure.thicknessFactor(freshUm(clock, m));
    double[] seconds = CureWalk.nothingReached();
    cure.hours()
        .forEach(
            (milestone, hours) ->
                seconds[milestone.index()] =
                    clock.secondsFor(
                        air.lastCoatS(), hours * slower * m.product() * m.own(milestone)));
    cure.recoatUntilHours()
        .ifPresent(
            hours ->
                seconds[RECOAT_UNTIL] =
                    clock.secondsFor(air.lastCoatS(), hours * slower * m.product() * m.ownEarly()));
    CureWalk.keepOrder(cure, seconds);
    return seconds;
  }

  private double freshUm(CureClock clock, CureMember m) {
    List<CureCoat> coats = job.coats();
    double hardHours = cure.hours().getOrDefault(Milestone.DRY_HARD, 0.0) * m.product();
    double fresh = 0;
    for (CureCoat coat : coats) {
      double dryUm = m.wetFilm() * cure.facts().dryFilmUm(coat.wetFilmUm(), coat.reducedPct());
      double worth =
          (clock.at(air.lastCoatS()) - clock.at(coat.atS())) * cure.thicknessFactor(dryUm);
      fresh += dryUm * Math.max(0, 1 - worth / hardHours);
    }
    return fresh;
  }
}
