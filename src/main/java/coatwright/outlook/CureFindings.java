package coatwright.outlook;

import coatwright.film.CureCoat;
import coatwright.film.CureEnsemble;
import coatwright.film.CureJob;
import coatwright.film.CureSigns;
import coatwright.film.Curing;
import coatwright.film.Milestone;
import coatwright.film.Percentiles;
import coatwright.film.Prediction;
import coatwright.film.SlowCure;
import coatwright.outlook.Outlook.CloudingLevel;
import coatwright.outlook.Outlook.DryingLevel;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the cure model finds for a coating.
 *
 * @param whole this coat on those beneath
 * @param beneath the coats beneath as they lie there; empty for a first coat
 * @param referenceS the decisive milestone in the finish's reference air by the model itself, s
 */
record CureFindings(
    CureCoating coating,
    CureSigns signs,
    Prediction whole,
    Optional<Prediction> beneath,
    OptionalDouble referenceS) {

  static CureFindings of(CureCoating c) {
    Optional<CureJob> under = beneath(c.job());
    return new CureFindings(
        c,
        CureSigns.at(c.curing(), c.moment()),
        CureEnsemble.predict(c.job(), c.shop()),
        under.map(job -> CureEnsemble.predict(job, c.shop())),
        CureEnsemble.plainS(c.atReference(), decisive(c.curing())));
  }

  private static Optional<CureJob> beneath(CureJob job) {
    List<CureCoat> coats = job.coats();
    return coats.size() == 1
        ? Optional.empty()
        : Optional.of(
            new CureJob(
                job.curing(),
                coats.subList(0, coats.size() - 1),
                job.air(),
                job.woodTempC(),
                job.spreads(),
                job.tests(),
                job.nowS(),
                job.gaps(),
                job.gapK()));
  }

  /** The milestone by which drying is called brisk or slow. */
  static Milestone decisive(Curing curing) {
    return curing.milestones().contains(Milestone.RUB_OUT) ? Milestone.RUB_OUT : Milestone.DRY_HARD;
  }

  boolean condensation() {
    return coating.condensation() || whole.condensation();
  }

  /** Water that settles on the film is all the clouding there is in a finish that cures. */
  CloudingLevel level() {
    return condensation() || coating.spreadAtWoodK() < CloudingRule.LEAST_SPREAD_K
        ? CloudingLevel.LIKELY
        : CloudingLevel.NONE_EXPECTED;
  }

  /** How the air changes the drying; both by the model itself, for the shop's ways are no air. */
  double ratioToReference() {
    OptionalDouble now = whole.plain(decisive(coating.curing()));
    return now.isPresent() && referenceS.isPresent()
        ? referenceS.getAsDouble() / now.getAsDouble()
        : 0;
  }

  DryingLevel dryingLevel() {
    return Findings.dryingLevel(ratioToReference());
  }

  Outlook.Clouding clouding() {
    boolean dew = condensation();
    return new Outlook.Clouding(
        level(),
        dew ? OptionalDouble.empty() : OptionalDouble.of(signs.marginK()),
        dew ? OptionalDouble.empty() : OptionalDouble.of(signs.filmLowC()),
        coating.air().dewPointC(),
        coating.spreadAtWoodK(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty());
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
            Findings.over(whole.milestone(Milestone.DRY_TO_TOUCH).p50(), 60),
            Findings.over(whole.milestone(Milestone.DRY_TO_RECOAT).p50(), 60),
            Findings.over(whole.recoatUntilS().p50(), 60),
            Findings.over(whole.milestone(Milestone.DRY_HARD).p50(), 3600),
            Findings.days(rub)));
  }

  Outlook.Cure cure() {
    return new Outlook.Cure(
        signs.potLifeH(),
        signs.mfftMarginK(),
        signs.wipeOffAfterMin(),
        signs.bleedEveryMin(),
        signs.slowCure().stream().filter(this::tellsMore).map(SlowCureText::of).toList());
  }

  /** That it dries at nought of its speed says nothing beside what stops it. */
  private boolean tellsMore(SlowCure reason) {
    return !(reason instanceof SlowCure.SlowRate slow)
        || slow.ratio() > 0
        || signs.slowCure().size() == 1;
  }

  List<Outlook.Milestone> milestones() {
    List<Outlook.Milestone> list = new ArrayList<>();
    if (!condensation()) {
      for (Milestone m : coating.curing().milestones()) {
        list.add(Findings.milestone(m, whole.milestone(m), estimate(coating.curing(), m)));
      }
    }
    return list;
  }

  /** Whether a milestone rests on a figure nobody measured. */
  static boolean estimate(Curing curing, Milestone m) {
    String key = Curing.keys().get(m);
    return key == null || curing.basisOf(key).estimate();
  }

  /** Minutes between the coat beneath and this one. */
  double beneathAgeMin() {
    List<CureCoat> coats = coating.job().coats();
    return (coats.get(coats.size() - 1).atS() - coats.get(coats.size() - 2).atS()) / 60;
  }

  /**
   * Minutes the coat beneath still needs, by its middle; empty when it is ready or there is none.
   */
  OptionalDouble restNeededMin() {
    if (beneath.isEmpty() || beneath.get().condensation()) {
      return OptionalDouble.empty();
    }
    OptionalDouble readyS = beneath.get().milestone(Milestone.DRY_TO_RECOAT).p50();
    double leftMin =
        readyS.isPresent() ? readyS.getAsDouble() / 60 - beneathAgeMin() : Double.POSITIVE_INFINITY;
    return leftMin > 0 ? OptionalDouble.of(Math.ceil(leftMin)) : OptionalDouble.empty();
  }

  /** What is left of the recoat window of the coat beneath, minutes; negative once it closed. */
  OptionalDouble recoatLeftMin() {
    OptionalDouble untilS = beneath.map(b -> b.recoatUntilS().p50()).orElse(OptionalDouble.empty());
    return untilS.isPresent()
        ? OptionalDouble.of(untilS.getAsDouble() / 60 - beneathAgeMin())
        : OptionalDouble.empty();
  }
}
