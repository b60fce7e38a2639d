package coatwright.film;

import coatwright.air.MoistAir;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

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

  private final CureJob job;
  private final Members members = new Members(MEMBERS, CureAxis.values().length);
  private final double[][] seconds = new double[MEMBERS][];

  private CureEnsemble(CureJob job) {
    this.job = job;
    walkAll(CureWalk.of(job), seconds);
    List<BenchTest.Seen> tests = job.tests();
    for (int i = 0; i < tests.size(); i++) {
      weigh(tests.get(i), i);
    }
  }

  /** Every milestone with its range, seconds from the last coat; an absent one is not reached. */
  public static Prediction predict(CureJob job) {
    return dewOnTheWood(job)
        ? Prediction.ofDew(job.curing().stamp())
        : new CureEnsemble(job).predicted();
  }

  /**
   * When the recoat window closes by itself, seconds from the last coat; nothing where it does not.
   */
  public static Percentiles recoatUntilS(CureJob job) {
    return !job.curing().hasLateEnd() || dewOnTheWood(job)
        ? Percentiles.NONE
        : new CureEnsemble(job).widened(CureWalk.RECOAT_UNTIL);
  }

  private static boolean dewOnTheWood(CureJob job) {
    double atS = job.lastCoat().atS();
    MoistAir air = MoistAir.of(job.air().airTempCAt(atS), 100 * job.air().rhFractionAt(atS));
    return job.woodTempC() <= air.dewPointC();
  }

  private void walkAll(CureWalk walk, double[][] into) {
    for (int i = 0; i < MEMBERS; i++) {
      into[i] = walk.secondsTo(CureAxis.member(members, i, job.spreads()));
    }
  }

  private void weigh(BenchTest.Seen seen, int number) {
    double sinceS = seen.atS() - job.lastCoat().atS();
    if (!(sinceS > 0)) {
      return;
    }
    double[] likelihood = new double[MEMBERS];
    for (int i = 0; i < MEMBERS; i++) {
      likelihood[i] = chance(i, seen.test(), sinceS, seen.passed());
    }
    members.weigh(likelihood, number);
    if (members.effective() > MEMBERS - 1e-6) {
      // Drawn anew: these are other films than before.
      walkAll(CureWalk.of(job), seconds);
    }
  }

  /** Chance of an outcome at that time, for a member. */
  double chance(int member, BenchTest test, double sinceS, boolean passed) {
    double needsS = seconds[member][CureTests.milestone(test).index()];
    return BenchTest.chance(Math.log(sinceS / needsS) / CureTests.scatterLn(test), passed);
  }

  private Prediction predicted() {
    Map<Milestone, Percentiles> milestones = new EnumMap<>(Milestone.class);
    for (Milestone m : job.curing().milestones()) {
      milestones.put(m, widened(m.index()));
    }
    return new Prediction(
        job.curing().stamp(),
        false,
        Optional.empty(),
        milestones,
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
    double[][] strayed = new double[MEMBERS][];
    walkAll(CureWalk.of(job.withAir(air)), strayed);
    return strayed;
  }

  private Percentiles percentiles(double[][] of, int goal) {
    double[] values = new double[MEMBERS];
    for (int i = 0; i < MEMBERS; i++) {
      values[i] = of[i][goal] <= HORIZON_S ? of[i][goal] : Double.POSITIVE_INFINITY;
    }
    return Percentiles.of(values, members.weights());
  }

  Members members() {
    return members;
  }

  /** Seconds to a milestone, by member. */
  double[] secondsTo(Milestone m) {
    double[] values = new double[MEMBERS];
    for (int i = 0; i < MEMBERS; i++) {
      values[i] = seconds[i][m.index()];
    }
    return values;
  }
}
