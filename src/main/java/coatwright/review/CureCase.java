package coatwright.review;

import coatwright.air.MoistAir;
import coatwright.film.AirCourse;
import coatwright.film.CureCoat;
import coatwright.film.CureDew;
import coatwright.film.CureEnsemble;
import coatwright.film.CureJob;
import coatwright.film.CureMoment;
import coatwright.film.CureMoment.AirExchange;
import coatwright.film.CureSigns;
import coatwright.film.Curing;
import coatwright.film.Milestone;
import coatwright.film.ModelStamp;
import coatwright.film.Prediction;
import coatwright.outlook.CloudingRule;
import coatwright.outlook.CuringJob;
import coatwright.outlook.Outlook.CloudingLevel;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A coat of a finish that cures, run again with one thing changed. It clouds in two ways only:
 * water settles on it while it is wet, or its particles do not flow together; and it stays soft by
 * its clock.
 */
final class CureCase {
  private static final double THINNER = 2.0 / 3;
  private static final double WARMED_BY_K = 5;
  private static final double WARMEST_C = 45;
  private static final double WARMEST_WOOD_C = 60;
  private static final double SAME_K = 0.3;

  private final CuringJob known;
  private final CureJob job;
  private final Milestone goal;
  private final Look base;
  private final Softness softness;

  CureCase(CuringJob known) {
    this.known = known;
    this.job = known.asked(List.of(), known.lastCoatS());
    this.goal =
        known.curing().milestones().contains(Milestone.RUB_OUT)
            ? Milestone.RUB_OUT
            : Milestone.DRY_HARD;
    this.base = Look.at(job);
    this.softness =
        new Softness(
            known.part().toString(),
            known.finish(),
            base.ready().milestone(goal),
            base.ready().plain(goal),
            CureEnsemble.plainS(inReference(), goal),
            known.air(),
            known.lastCoatS(),
            goal == Milestone.RUB_OUT ? "ready to rub out" : "dry hard",
            "more than half a year");
  }

  /**
   * What one run shows.
   *
   * @param ready whole prediction
   * @param dew the nearest it came to the dew point until dry to touch
   */
  record Look(CureSigns signs, Prediction ready, CureDew dew) {
    static Look at(CureJob job) {
      CureSigns signs = CureSigns.at(job.curing(), moment(job));
      Prediction ready = CureEnsemble.predict(job);
      OptionalDouble touchS = ready.milestone(Milestone.DRY_TO_TOUCH).p50();
      return new Look(signs, ready, CureDew.nearest(job, touchS.orElse(0)));
    }

    private static CureMoment moment(CureJob job) {
      CureCoat last = job.coats().get(job.coats().size() - 1);
      AirCourse air = job.air();
      return new CureMoment(
          air.airTempCAt(last.atS()),
          100 * air.rhFractionAt(last.atS()),
          job.woodTempC(),
          air.draughtMPerS(),
          last.wetFilmUm(),
          last.reducedPct(),
          AirExchange.UNKNOWN);
    }

    boolean dewed() {
      return dew.marginK() < CloudingRule.LEAST_SPREAD_K;
    }

    /** Colder than its particles need to flow together, with what is left to the limit, K. */
    boolean apart(double limitK) {
      return signs.mfftMarginK().isPresent() && signs.mfftMarginK().getAsDouble() < limitK;
    }

    CloudingLevel level() {
      if (dewed() || apart(0)) {
        return CloudingLevel.LIKELY;
      }
      return apart(CureSigns.LEAST_MFFT_MARGIN_K)
          ? CloudingLevel.POSSIBLE
          : CloudingLevel.NONE_EXPECTED;
    }
  }

  Look base() {
    return base;
  }

  CuringJob known() {
    return known;
  }

  Why.Saw saw() {
    ModelStamp stamp = known.curing().stamp();
    return new Why.Saw(
        stamp.name(),
        stamp.version(),
        base.level().toString(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        base.signs().filmLowC(),
        dewPointC(),
        job.woodTempC() - dewPointC(),
        OptionalDouble.empty());
  }

  double dewPointC() {
    double atS = known.lastCoatS();
    return MoistAir.of(airTempC(), 100 * job.air().rhFractionAt(atS)).dewPointC();
  }

  double airTempC() {
    return job.air().airTempCAt(known.lastCoatS());
  }

  Softness softness() {
    return softness;
  }

  private CureJob inReference() {
    double tempC = known.finish().referenceTempC();
    return changed(
        job.coats(),
        AirCourse.steady(tempC, known.finish().referenceRhPct() / 100, job.air().draughtMPerS()),
        tempC);
  }

  private CureJob changed(List<CureCoat> coats, AirCourse air, double woodTempC) {
    return new CureJob(
        job.curing(),
        coats,
        air,
        woodTempC,
        job.spreads(),
        job.tests(),
        job.nowS(),
        job.gaps(),
        job.gapK());
  }

  /** Each with the air, the wood or the coat otherwise; for a clouded coat and for a soft one. */
  List<Why.Counterfactual> counterfactuals(boolean soft) {
    List<Why.Counterfactual> told = new ArrayList<>();
    String airWas = Show.temperature(airTempC(), UnitSystem.METRIC);
    told.add(told(softness.referenceWords(), airWas, inReference(), soft));
    warmer(soft).ifPresent(told::add);
    asWarmAsTheAir(soft).ifPresent(told::add);
    thinner(soft).ifPresent(told::add);
    return told;
  }

  private Optional<Why.Counterfactual> warmer(boolean soft) {
    AirCourse air = job.air();
    double[] warm = air.airTempC();
    double[] drier = air.rhFraction();
    for (int i = 0; i < warm.length; i++) {
      if (warm[i] + WARMED_BY_K > WARMEST_C) {
        return Optional.empty();
      }
      double vapourPa = MoistAir.of(warm[i], 100 * drier[i]).vapourPressurePa();
      warm[i] += WARMED_BY_K;
      drier[i] = Math.max(0.03, vapourPa / MoistAir.of(warm[i], 100).vapourPressurePa());
    }
    double woodC = Math.min(WARMEST_WOOD_C, job.woodTempC() + WARMED_BY_K);
    AirCourse warmed = new AirCourse(air.timeS(), warm, drier, air.draughtMPerS());
    return Optional.of(
        told(
            "the room and the wood "
                + Show.temperatureStep(WARMED_BY_K, UnitSystem.METRIC)
                + " warmer throughout",
            Show.temperature(airTempC(), UnitSystem.METRIC),
            changed(job.coats(), warmed, woodC),
            soft));
  }

  private Optional<Why.Counterfactual> asWarmAsTheAir(boolean soft) {
    return airTempC() - job.woodTempC() < SAME_K
        ? Optional.empty()
        : Optional.of(
            told(
                "the wood as warm as the air",
                Show.temperature(job.woodTempC(), UnitSystem.METRIC),
                changed(job.coats(), job.air(), airTempC()),
                soft));
  }

  private Optional<Why.Counterfactual> thinner(boolean soft) {
    CureCoat last = job.coats().get(job.coats().size() - 1);
    if (!soft || last.wetFilmUm() * THINNER < 1) {
      return Optional.empty();
    }
    List<CureCoat> thin = new ArrayList<>();
    for (CureCoat c : job.coats()) {
      thin.add(new CureCoat(c.atS(), Math.max(1, c.wetFilmUm() * THINNER), c.reducedPct()));
    }
    return Optional.of(
        told(
            "coats a third thinner",
            Show.film(last.wetFilmUm(), UnitSystem.METRIC),
            changed(thin, job.air(), job.woodTempC()),
            soft));
  }

  private Why.Counterfactual told(String change, String was, CureJob other, boolean soft) {
    Look look = Look.at(other);
    OptionalDouble readyS = look.ready().plain(goal);
    boolean sooner = softness.isSooner(readyS);
    boolean clearer = look.level().compareTo(base.level()) > 0;
    return new Why.Counterfactual(
        change,
        soft ? was + ", " + softness.was() : stands(base),
        soft ? softness.after(readyS) : stands(look),
        look.level().toString(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        soft ? sooner : clearer);
  }

  private static String stands(Look look) {
    double marginK = look.dew().marginK();
    return "the film "
        + Show.temperatureStep(Math.abs(marginK), UnitSystem.METRIC)
        + (marginK < 0 ? " below the dew point" : " above the dew point");
  }

  /** The kinetics, for who words the case. */
  Curing curing() {
    return known.curing();
  }
}
