package coatwright.outlook;

import coatwright.film.CoatOutcome;
import coatwright.film.Ensemble;
import coatwright.film.EnsembleJob;
import coatwright.film.FilmRun;
import coatwright.film.FilmSimulation;
import coatwright.film.Milestone;
import coatwright.film.Percentiles;
import coatwright.film.Prediction;
import coatwright.film.Sensitivity;
import coatwright.film.SimulationOptions;
import coatwright.outlook.Outlook.CloudingLevel;
import coatwright.outlook.Outlook.DryingLevel;
import coatwright.outlook.Outlook.OpenTimeLevel;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the film model finds for a coating, and the three answers read off it.
 *
 * @param alone the coat by itself
 * @param whole it with the coats beneath, the same as {@code alone} when there are none
 * @param referenceRubOutS rub-out of the same coats in the finish's reference air, s
 */
record Findings(
    Coating coating, Prediction alone, Prediction whole, OptionalDouble referenceRubOutS) {

  private static final SimulationOptions PLAIN =
      SimulationOptions.DEFAULT.withHaze(false, Double.POSITIVE_INFINITY);

  private static final double SHORT_MIN = 2;
  private static final double LONG_MIN = 6;
  private static final double BRUSHING_SHARE = 1.25;

  static Findings of(Coating c) {
    return of(c, Optional.empty());
  }

  /**
   * What the model finds, with slopes of the stack that are already known.
   *
   * @param slopes of the coats beneath with this one, from an earlier look at the same stack
   */
  static Findings of(Coating c, Optional<Sensitivity> slopes) {
    Prediction alone = Ensemble.predict(c.alone());
    Prediction whole = alone;
    if (c.stack().isPresent() && !c.condensation()) {
      Prediction stacked = Ensemble.predict(c.stack().get(), slopes);
      // Dew under an earlier coat leaves nothing to tell of the stack; this coat can still be told.
      whole = stacked.condensation() ? alone : stacked;
    }
    return new Findings(c, alone, whole, referenceRubOut(c));
  }

  private static OptionalDouble referenceRubOut(Coating c) {
    EnsembleJob job = c.stack().orElse(c.alone());
    double untilS =
        c.reference().coats().get(c.reference().coats().size() - 1).atS() + Ensemble.HORIZON_S;
    FilmRun run = new FilmSimulation(job.parameters(), PLAIN).run(c.reference(), untilS);
    return run.rubOutS();
  }

  CoatOutcome coat() {
    return alone.film().lastCoat();
  }

  boolean condensation() {
    return coating.condensation() || alone.condensation();
  }

  /** Slopes of the stack, to be handed in again while it stays. */
  Optional<Sensitivity> slopes() {
    return coating.stack().isEmpty() ? Optional.empty() : whole.sensitivity();
  }

  /**
   * S over what this shop's films bear: the run's own, until coats or the shop taught otherwise.
   */
  double peakS() {
    double byRun = coat().peakS();
    return taughtOfClouding() ? alone.peakS().p50().orElse(byRun) : byRun;
  }

  /** How many times the model's water this shop's films bear, by the middle. */
  private double bearsTimes() {
    return condensation() || !taughtOfClouding() ? 1 : coat().peakS() / peakS();
  }

  private boolean taughtOfClouding() {
    return coating.alone().told().shop().cloudingParts() > 0
        || !coating.alone().told().clouding().isEmpty();
  }

  double peakS90() {
    return alone.peakS().p90().orElse(peakS());
  }

  /** Lowest film temperature less dew point, less what the sensors leave open, K. */
  double marginK() {
    return coat().marginK() - alone.marginErrorK();
  }

  CloudingLevel level() {
    return condensation()
        ? CloudingLevel.LIKELY
        : CloudingRule.level(coating.spreadAtWoodK(), peakS(), peakS90(), marginK());
  }

  boolean closeToDew() {
    return coating.spreadAtWoodK() < CloudingRule.LEAST_SPREAD_K;
  }

  Outlook.Clouding clouding() {
    CoatOutcome o = coat();
    boolean dew = condensation();
    return new Outlook.Clouding(
        level(),
        dew ? OptionalDouble.empty() : OptionalDouble.of(marginK()),
        dew ? OptionalDouble.empty() : OptionalDouble.of(o.filmLowC()),
        coating.air().dewPointC(),
        coating.spreadAtWoodK(),
        OptionalDouble.of(o.waterPeakPct()),
        OptionalDouble.of(o.waterLimitPct() * bearsTimes()),
        dew ? OptionalDouble.empty() : OptionalDouble.of(peakS90()),
        dew || o.hazeAt1h().isEmpty()
            ? Optional.empty()
            : Optional.of(o.hazeAt1h().getAsDouble() < 0.05),
        dew || o.clearsAfterS().isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(o.clearsAfterS().getAsDouble() / 60),
        dew ? OptionalDouble.empty() : o.bloomS(),
        dew ? OptionalDouble.empty() : alone.marginK().p10(),
        dew ? OptionalDouble.empty() : alone.marginK().p90(),
        dew ? OptionalDouble.empty() : alone.peakS().p10(),
        dew ? OptionalDouble.empty() : alone.peakS().p50());
  }

  /** How the air changes the drying; both by the model itself, for the shop's ways are no air. */
  double ratioToReference() {
    OptionalDouble now = whole.plain(Milestone.RUB_OUT);
    return now.isPresent() && referenceRubOutS.isPresent()
        ? referenceRubOutS.getAsDouble() / now.getAsDouble()
        : 0;
  }

  DryingLevel dryingLevel() {
    return dryingLevel(ratioToReference());
  }

  /** The word for a drying time against that in the reference air. */
  static DryingLevel dryingLevel(double ratio) {
    if (ratio > 1.25) {
      return DryingLevel.BRISK;
    }
    if (ratio >= 0.6) {
      return DryingLevel.USUAL;
    }
    return ratio >= 0.25 ? DryingLevel.SLOW : DryingLevel.STALLED;
  }

  Optional<Outlook.Drying> drying() {
    if (condensation()) {
      return Optional.empty();
    }
    Percentiles rub = whole.milestone(Milestone.RUB_OUT);
    return Optional.of(
        new Outlook.Drying(
            dryingLevel(),
            ratioToReference(),
            over(whole.milestone(Milestone.DRY_TO_TOUCH).p50(), 60),
            over(whole.milestone(Milestone.DRY_TO_RECOAT).p50(), 60),
            coating.finish().recoatUntilMin(),
            over(whole.milestone(Milestone.DRY_HARD).p50(), 3600),
            days(rub)));
  }

  /** A range in days; empty where not even the earliest is reached. */
  static Optional<Outlook.Range> days(Percentiles s) {
    return s.p50().isEmpty() && s.p10().isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Outlook.Range(over(s.p10(), 86_400), over(s.p50(), 86_400), over(s.p90(), 86_400)));
  }

  static OptionalDouble over(OptionalDouble v, double unit) {
    return v.isPresent() ? OptionalDouble.of(v.getAsDouble() / unit) : v;
  }

  Optional<Outlook.OpenTime> openTime() {
    Percentiles open = alone.openTimeS();
    if (condensation() || open.p50().isEmpty()) {
      return Optional.empty();
    }
    double min = open.p50().getAsDouble() / 60;
    return Optional.of(
        new Outlook.OpenTime(
            openLevel(min),
            min,
            open.p10().orElse(60 * min) / 60,
            open.p90().orElse(60 * min) / 60));
  }

  private OpenTimeLevel openLevel(double min) {
    boolean tooShort =
        min < SHORT_MIN
            || (coating.learnedBrushingMin().isPresent()
                && min < BRUSHING_SHARE * coating.learnedBrushingMin().getAsDouble());
    if (tooShort) {
      return OpenTimeLevel.SHORT;
    }
    return min > LONG_MIN ? OpenTimeLevel.LONG : OpenTimeLevel.COMFORTABLE;
  }

  List<Outlook.Milestone> milestones() {
    List<Outlook.Milestone> list = new ArrayList<>();
    if (condensation()) {
      return list;
    }
    for (Milestone m : Milestone.values()) {
      if (m != Milestone.RESTED) {
        list.add(milestone(m, whole.milestone(m), coating.finish().basisOf(m).estimate()));
      }
    }
    return list;
  }

  /** A milestone in minutes. */
  static Outlook.Milestone milestone(Milestone m, Percentiles s, boolean estimate) {
    return new Outlook.Milestone(
        m.toString(),
        over(s.p10(), 60),
        over(s.p50(), 60),
        over(s.p90(), 60),
        s.p50().isPresent(),
        estimate);
  }

  /** How soft the film beneath still is, K; absent for a first coat. */
  OptionalDouble softBeforeK() {
    return coating.stack().isEmpty() ? OptionalDouble.empty() : whole.softBeforeK().p50();
  }

  boolean tooTacky() {
    OptionalDouble soft = softBeforeK();
    return soft.isPresent() && soft.getAsDouble() > recoatLimitK();
  }

  double recoatLimitK() {
    return coating.alone().parameters().criteria().recoatXK();
  }

  /** Minutes until the film beneath is firm enough, counted from when this coat was to go on. */
  OptionalDouble restNeededMin() {
    if (!tooTacky()) {
      return OptionalDouble.empty();
    }
    EnsembleJob stack = coating.stack().orElseThrow();
    var coats = stack.job().coats();
    var beneath = coats.subList(0, coats.size() - 1);
    double previousS = beneath.get(beneath.size() - 1).atS();
    FilmRun run =
        new FilmSimulation(stack.parameters(), PLAIN)
            .run(
                Described.job(
                    beneath,
                    stack.job().air(),
                    stack.job().woodTempC(),
                    stack.job().boardThicknessMm()),
                previousS + 10 * 86_400);
    OptionalDouble recoatS = run.lastCoat().recoatS();
    double dueS = coats.get(coats.size() - 1).atS() - previousS;
    return recoatS.isPresent()
        ? OptionalDouble.of(Math.max(1, Math.ceil((recoatS.getAsDouble() - dueS) / 60)))
        : OptionalDouble.empty();
  }
}
