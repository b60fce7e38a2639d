package coatwright.film;

import coatwright.air.MoistAir;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Two hundred films of a curing finish like this one, each walked through the real air with
 * thresholds, thickness and activation energy of its own, and what the bench tests say of which of
 * them this one is. A cold night counts, and a mean temperature does not replace it.
 */
public final class CureEnsemble {
  /** How many films. */
  public static final int MEMBERS = 200;

  /** Beyond this nothing is promised, s: half a year, for oil in a cold shop takes months. */
  public static final double HORIZON_S = 180 * 86_400.0;

  /** Members that carry a lesson: more than a range needs, since a lesson is a small difference. */
  private static final int LEARNERS = 800;

  private final CureJob job;
  private final int count;
  private final Members members;
  private final double[][] seconds;

  private CureEnsemble(CureJob job, ShopPrior shop, int count) {
    this.job = job;
    this.count = count;
    this.members = new Members(count, CureAxis.values().length);
    members.place(shop, CureAxis.PRODUCT.index(), CureAxis.OWN_LATE.index());
    this.seconds = new double[count][];
    walkAll(CureWalk.of(job), seconds);
  }

  private CureEnsemble(CureJob job, ShopPrior shop) {
    this(job, shop, MEMBERS);
    List<BenchTest.Seen> tests = job.tests();
    for (int i = 0; i < tests.size(); i++) {
      weigh(tests.get(i), i);
    }
  }

  /** Every milestone with its range, seconds from the last coat; an absent one is not reached. */
  public static Prediction predict(CureJob job) {
    return predict(job, ShopPrior.UNTAUGHT);
  }

  /**
   * The same in a shop that has taught its own ways.
   *
   * @param shop what its other parts of the same finish have taught
   */
  public static Prediction predict(CureJob job, ShopPrior shop) {
    return dewOnTheWood(job)
        ? Prediction.ofDew(job.curing().stamp())
        : new CureEnsemble(job, shop).predicted();
  }

  /**
   * What the tests of one part say of its shop's product and of what its owner calls hard; nothing
   * where it was laid on dew or no test was made since its last coat.
   */
  public static Lesson lesson(CureJob job) {
    boolean tested = job.tests().stream().anyMatch(t -> t.atS() > job.lastCoat().atS());
    return !tested || dewOnTheWood(job)
        ? Lesson.NONE
        : new CureEnsemble(job, ShopPrior.UNTAUGHT, LEARNERS).taught();
  }

  private Lesson taught() {
    int pace = CureAxis.PRODUCT.index();
    int own = CureAxis.OWN_LATE.index();
    Lesson.Spread before = members.spread(pace, own);
    for (BenchTest.Seen seen : job.tests()) {
      double sinceS = seen.atS() - job.lastCoat().atS();
      if (sinceS > 0) {
        members.weighInPlace(likelihood(seen, sinceS));
      }
    }
    members.temper(LEARNERS / 20.0);
    return Lesson.ofHardening(members.spread(pace, own), before);
  }

  /**
   * The model's own answer for a milestone, s from the last coat, whatever tests and shop say;
   * empty where it is not reached, not defined, or the coat went on dew.
   */
  public static OptionalDouble plainS(CureJob job, Milestone m) {
    return dewOnTheWood(job) ? OptionalDouble.empty() : within(plain(job)[m.index()]);
  }

  private static double[] plain(CureJob job) {
    return CureWalk.of(job).secondsTo(CureMember.MIDDLE);
  }

  private static OptionalDouble within(double seconds) {
    return seconds <= HORIZON_S ? OptionalDouble.of(seconds) : OptionalDouble.empty();
  }

  private static boolean dewOnTheWood(CureJob job) {
    double atS = job.lastCoat().atS();
    MoistAir air = MoistAir.of(job.air().airTempCAt(atS), 100 * job.air().rhFractionAt(atS));
    return job.woodTempC() <= air.dewPointC();
  }

  private void walkAll(CureWalk walk, double[][] into) {
    for (int i = 0; i < count; i++) {
      into[i] = walk.secondsTo(CureAxis.member(members, i, job.spreads()));
    }
  }

  private void weigh(BenchTest.Seen seen, int number) {
    double sinceS = seen.atS() - job.lastCoat().atS();
    if (!(sinceS > 0)) {
      return;
    }
    members.weigh(likelihood(seen, sinceS), number);
    if (members.effective() > count - 1e-6) {
      // Drawn anew: these are other films than before.
      walkAll(CureWalk.of(job), seconds);
    }
  }

  private double[] likelihood(BenchTest.Seen seen, double sinceS) {
    double[] likelihood = new double[count];
    for (int i = 0; i < count; i++) {
      likelihood[i] = chance(i, seen.test(), sinceS, seen.passed());
    }
    return likelihood;
  }

  /** Chance of an outcome at that time, for a member. */
  double chance(int member, BenchTest test, double sinceS, boolean passed) {
    double needsS = seconds[member][CureTests.milestone(test).index()];
    return BenchTest.chance(Math.log(sinceS / needsS) / CureTests.scatterLn(test), passed);
  }

  private Prediction predicted() {
    Map<Milestone, Percentiles> milestones = new EnumMap<>(Milestone.class);
    Map<Milestone, Double> plainS = new EnumMap<>(Milestone.class);
    double[] plain = plain(job);
    for (Milestone m : job.curing().milestones()) {
      milestones.put(m, widened(m.index()));
      within(plain[m.index()]).ifPresent(s -> plainS.put(m, s));
    }
    return new Prediction(
        job.curing().stamp(),
        false,
        Optional.empty(),
        milestones,
        plainS,
        job.curing().hasLateEnd() ? widened(CureWalk.RECOAT_UNTIL) : Percentiles.NONE,
        Percentiles.NONE,
        Percentiles.NONE,
        Percentiles.NONE,
        0,
        Percentiles.NONE,
        members.effective(),
        new CureNarrowing(this, job).best(),
        Optional.empty());
  }

  /** What nobody measured may have been warmer or colder: both ends are given all of it. */
  private Percentiles widened(int goal) {
    Percentiles found = percentiles(seconds, goal);
    if (job.gaps().isEmpty() || job.gapK() <= 0) {
      return found;
    }
    Percentiles early = percentiles(strayed(job.gapK()), goal);
    Percentiles late = percentiles(strayed(-job.gapK()), goal);
    return new Percentiles(early.p10(), found.p50(), late.p90());
  }

  private double[][] strayed(double byK) {
    AirCourse air = job.air();
    for (EnsembleJob.Gap gap : job.gaps()) {
      air = AirCourses.warmerBetween(air, gap.fromS(), gap.toS(), byK);
    }
    double[][] strayed = new double[count][];
    walkAll(CureWalk.of(job.withAir(air)), strayed);
    return strayed;
  }

  private Percentiles percentiles(double[][] of, int goal) {
    double[] values = new double[count];
    for (int i = 0; i < count; i++) {
      values[i] = of[i][goal] <= HORIZON_S ? of[i][goal] : Double.POSITIVE_INFINITY;
    }
    return Percentiles.of(values, members.weights());
  }

  Members members() {
    return members;
  }

  /** Seconds to a milestone, by member. */
  double[] secondsTo(Milestone m) {
    double[] values = new double[count];
    for (int i = 0; i < count; i++) {
      values[i] = seconds[i][m.index()];
    }
    return values;
  }
}
