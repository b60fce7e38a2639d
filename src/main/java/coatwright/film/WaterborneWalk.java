package coatwright.film;

/**
 * Water leaving along the real air, then coalescence along it. The balance of the wet film is
 * solved for the air as described and a little beside it; members are read off those slopes. Water
 * an earlier coat still held when the last went on has to leave through it.
 */
final class WaterborneWalk implements CureWalk {
  private static final double HOUR_S = 3600;
  private static final double STEP_K = 1;
  private static final double STEP_RH = 0.05;

  private final WaterborneCure cure;
  private final CureJob job;
  private final CureAir air;
  private final Wet[] wet;

  /** A wet film at a node, and how it goes with temperature and humidity. */
  private record Wet(WetFilm film, WetFilm warmer, WetFilm drier) {
    double flux(double byK, double byRh) {
      double perK = (warmer.waterKgPerM2S() - film.waterKgPerM2S()) / STEP_K;
      double perRh = (film.waterKgPerM2S() - drier.waterKgPerM2S()) / STEP_RH;
      return Math.max(0, film.waterKgPerM2S() + perK * byK + perRh * byRh);
    }

    double tempC(double byK, double byRh) {
      double perK = (warmer.tempC() - film.tempC()) / STEP_K;
      double perRh = (film.tempC() - drier.tempC()) / STEP_RH;
      return film.tempC() + perK * byK + perRh * byRh;
    }
  }

  WaterborneWalk(WaterborneCure cure, CureJob job) {
    this.cure = cure;
    this.job = job;
    this.air = new CureAir(job, true);
    this.wet = new Wet[air.size()];
  }

  @Override
  public double[] secondsTo(CureMember m) {
    CureClock water = new CureClock(air, node -> m.surface() * flux(node, m));
    CureClock flowing =
        new CureClock(
            air, node -> cure.coalescenceRate(air.filmTempC(node, m), m.energy()) / HOUR_S);
    double load = load(water, m);
    double[] seconds = CureWalk.nothingReached();
    double driedS = water.secondsFor(air.lastCoatS(), load);
    if (Double.isInfinite(driedS)
        || filmTempC(air.lastCoatS() + driedS, m) < cure.lowestFilmC() + m.filmFormingK()) {
      return seconds;
    }
    cure.goals()
        .forEach(
            (milestone, goal) ->
                seconds[milestone.index()] =
                    secondsTo(goal, m.product() * m.own(milestone), load, water, flowing));
    cure.recoatUntil()
        .ifPresent(
            goal ->
                seconds[RECOAT_UNTIL] =
                    secondsTo(goal, m.product() * m.ownEarly(), load, water, flowing));
    CureWalk.keepOrder(cure, seconds);
    return seconds;
  }

  private double secondsTo(
      WaterborneCure.Goal goal, double factor, double load, CureClock water, CureClock flowing) {
    double drying = water.secondsFor(air.lastCoatS(), goal.dryings() * factor * load);
    if (Double.isInfinite(drying)) {
      return drying;
    }
    double hours = goal.coalescences() * factor * cure.coalescenceHours();
    return drying + flowing.secondsFor(air.lastCoatS() + drying, hours);
  }

  /** Water to leave after the last coat, kg/m². */
  private double load(CureClock water, CureMember m) {
    double held = 0;
    double beforeS = job.coats().get(0).atS();
    for (CureCoat coat : job.coats()) {
      double gone = water.at(coat.atS()) - water.at(beforeS);
      held = Math.max(0, held - gone);
      held += m.wetFilm() * cure.waterKgPerM2(coat.wetFilmUm(), coat.reducedPct());
      beforeS = coat.atS();
    }
    return held;
  }

  private double flux(int node, CureMember m) {
    return at(node).flux(air.warmerK(node, m), rhStep(node, m));
  }

  private double rhStep(int node, CureMember m) {
    return air.rhFraction(node, m) - air.rhFraction(node);
  }

  /** The wet film's temperature between nodes. */
  private double filmTempC(double momentS, CureMember m) {
    int after = 0;
    while (after < air.size() && air.timeS(after) < momentS) {
      after++;
    }
    if (after == 0 || after == air.size()) {
      return tempC(Math.min(after, air.size() - 1), m);
    }
    double share = (momentS - air.timeS(after - 1)) / (air.timeS(after) - air.timeS(after - 1));
    double before = tempC(after - 1, m);
    return before + share * (tempC(after, m) - before);
  }

  private double tempC(int node, CureMember m) {
    return at(node).tempC(air.warmerK(node, m), rhStep(node, m));
  }

  private Wet at(int node) {
    Wet known = wet[node];
    if (known == null) {
      double rh = air.rhFraction(node);
      known =
          new Wet(balance(node, 0, rh), balance(node, STEP_K, rh), balance(node, 0, rh - STEP_RH));
      wet[node] = known;
    }
    return known;
  }

  private WetFilm balance(int node, double warmerK, double rhFraction) {
    return WetFilm.in(
        cure,
        air.airTempC(node) + warmerK,
        Math.max(0, rhFraction),
        air.filmTempC(node) + warmerK,
        air.draughtMPerS());
  }
}
