package coatwright.film;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/**
 * Two hundred films like this one, each a little different in everything nobody knows exactly, and
 * what the bench tests say of which of them this one is.
 *
 * <p>One full run with the middle values gives the answer; the model is run again with one thing
 * moved at a time ({@link Sensitivity}), and the members are read off those slopes: logarithms of
 * times go nearly straight with logarithms of inputs. Hardening is read by the film's own clock
 * ({@link EquivalentTime}). Full runs of single members differ from this by what the test beside it
 * prints.
 */
public final class Ensemble {
  /** How many films. */
  public static final int MEMBERS = 200;

  /** Beyond this nothing is promised, s. */
  public static final double HORIZON_S = 60 * 86_400.0;

  private static final Axis[] AXES = Axis.values();
  private static final double GLASS_MARGIN_K = 8;
  private static final int LATE_MOMENTS = 28;
  private static final double FIRST_MOMENT_S = 900;
  private static final double THIN_K = 1.0;

  private final EnsembleJob job;
  private final Sensitivity sensitivity;
  private final FilmRun run;
  private final Features middle;
  private final Members members = new Members(MEMBERS);
  private final MemberClocks clocks;
  private final double[] momentsS;

  private Ensemble(
      EnsembleJob job, Sensitivity sensitivity, FilmRun run, Axis.Case c, double[] momentsS) {
    this.job = job;
    this.sensitivity = sensitivity;
    this.run = run;
    this.momentsS = momentsS;
    this.middle = Features.of(c, run, momentsS, HORIZON_S);
    this.clocks =
        new MemberClocks(job.job().air(), job.parameters().diffusion().glassEnergyJPerMol());
  }

  /** The whole prediction, everything computed anew. */
  public static Prediction predict(EnsembleJob job) {
    return predict(job, Optional.empty());
  }

  /**
   * The prediction again, with slopes that are already known.
   *
   * @param known slopes of an earlier prediction of the same coats, tests and inputs
   */
  public static Prediction predict(EnsembleJob job, Optional<Sensitivity> known) {
    FilmParameters byResidue = job.parameters().withCriteria(residueAlone(job.parameters()));
    Axis.Case c = new Axis.Case(byResidue, job.job(), job.nowS());
    double[] moments = moments(job);
    double untilS = job.lastCoatS() + HORIZON_S;
    FilmRun run = new FilmSimulation(byResidue, options(job)).run(job.job(), untilS, moments);
    if (run.condensation()) {
      return Prediction.ofDew(run);
    }
    Sensitivity sensitivity =
        known
            .filter(k -> k.fits(moments))
            .orElseGet(() -> Sensitivity.of(c, job.spreads(), moments, HORIZON_S, THIN_K));
    return new Ensemble(job, sensitivity, run, c, moments).predicted();
  }

  /** A stack is asked how it hardens, a single coat also how it clouds. */
  private static SimulationOptions options(EnsembleJob job) {
    return job.job().coats().size() == 1
        ? SimulationOptions.DEFAULT
        : SimulationOptions.DEFAULT.withTolerance(3e-4).withHaze(false, Double.POSITIVE_INFINITY);
  }

  /**
   * The glass may stand where it likes: members decide that one by one, each with its own resin.
   */
  private static FilmParameters.Criteria residueAlone(FilmParameters p) {
    FilmParameters.Criteria c = p.criteria();
    return new FilmParameters.Criteria(
        c.touchXK(),
        c.recoatXK(),
        c.restedXK(),
        c.dryHardXK(),
        c.rubOutResidue(),
        c.wrapResidue(),
        c.fullResidue(),
        -20,
        true);
  }

  private static double[] moments(EnsembleJob job) {
    TreeSet<Double> moments = new TreeSet<>();
    double ratio = Math.log(HORIZON_S / FIRST_MOMENT_S) / (LATE_MOMENTS - 1);
    for (int i = 0; i < LATE_MOMENTS; i++) {
      moments.add(job.lastCoatS() + FIRST_MOMENT_S * Math.exp(i * ratio) * (1 - 1e-9));
    }
    for (BenchTest.Seen seen : job.tests()) {
      if (seen.atS() > job.job().coats().get(0).atS()) {
        moments.add(seen.atS());
      }
    }
    return moments.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private Prediction predicted() {
    List<BenchTest.Seen> tests = job.tests();
    for (int i = 0; i < tests.size(); i++) {
      if (tests.get(i).atS() > job.job().coats().get(0).atS()) {
        members.weigh(likelihood(tests.get(i)), i);
      }
    }
    Map<Milestone, Percentiles> milestones = new EnumMap<>(Milestone.class);
    for (Milestone m : Milestone.values()) {
      milestones.put(m, m.byFilmClock() ? hardening(m) : plain(Features.milestone(m)));
    }
    return new Prediction(
        run.model(),
        run.condensation(),
        Optional.of(run),
        milestones,
        plain(Features.OPEN_TIME),
        plain(Features.PEAK_S),
        kelvin(Features.MARGIN),
        marginErrorK(),
        kelvin(Features.SOFT_BEFORE),
        members.effective(),
        new Narrowing(this).best(),
        Optional.of(sensitivity));
  }

  double value(int member, int feature) {
    double sum = middle.value[feature];
    for (Axis axis : AXES) {
      sum += members.z(member, axis) * sensitivity.slope(axis, feature);
    }
    return sum;
  }

  Members members() {
    return members;
  }

  Sensitivity sensitivity() {
    return sensitivity;
  }

  double lastCoatS() {
    return job.lastCoatS();
  }

  double nowS() {
    return job.nowS();
  }

  double sdOf(Axis axis) {
    return axis.sd(job.spreads());
  }

  double[] momentsS() {
    return momentsS;
  }

  private double marginErrorK() {
    return Math.hypot(
        Math.hypot(
            sensitivity.slope(Axis.AIR_TEMPERATURE, Features.MARGIN),
            sensitivity.slope(Axis.HUMIDITY, Features.MARGIN)),
        sensitivity.slope(Axis.WOOD_TEMPERATURE, Features.MARGIN));
  }

  private Percentiles plain(int feature) {
    if (!middle.known(feature)) {
      return Percentiles.NONE;
    }
    double[] values = new double[MEMBERS];
    for (int i = 0; i < MEMBERS; i++) {
      values[i] = value(i, feature);
    }
    return Percentiles.of(values, members.weights()).map(Math::exp);
  }

  private Percentiles kelvin(int feature) {
    if (!middle.known(feature)) {
      return Percentiles.NONE;
    }
    double[] values = new double[MEMBERS];
    for (int i = 0; i < MEMBERS; i++) {
      values[i] = value(i, feature);
    }
    return Percentiles.of(values, members.weights());
  }

  private Percentiles hardening(Milestone m) {
    if (!middle.known(Features.milestone(m))) {
      return Percentiles.NONE;
    }
    Percentiles found = hardening(m, clocks);
    if (job.gaps().isEmpty() || job.gapK() <= 0) {
      return found;
    }
    Percentiles early = hardening(m, gapClocks(job.gapK()));
    Percentiles late = hardening(m, gapClocks(-job.gapK()));
    return new Percentiles(early.p10(), found.p50(), late.p90());
  }

  /**
   * What nobody measured may have been this much warmer or colder: both ends are given all of it.
   */
  private MemberClocks gapClocks(double byK) {
    AirCourse air = job.job().air();
    for (EnsembleJob.Gap gap : job.gaps()) {
      air = AirCourses.warmerBetween(air, gap.fromS(), gap.toS(), byK);
    }
    return new MemberClocks(air, job.parameters().diffusion().glassEnergyJPerMol());
  }

  private Percentiles hardening(Milestone m, MemberClocks by) {
    double[] values = new double[MEMBERS];
    for (int i = 0; i < MEMBERS; i++) {
      values[i] = Math.log(hardeningS(i, m, by));
    }
    return Percentiles.of(values, members.weights()).map(Math::exp);
  }

  /**
   * Seconds from the last coat, infinite beyond the horizon or while the resin itself stays soft.
   */
  double hardeningS(int member, Milestone m, MemberClocks by) {
    double clockS = Math.exp(value(member, Features.milestone(m)));
    double byResidue = by.secondsFor(members.z(member, Axis.GLASS_ENERGY), job.lastCoatS(), clockS);
    // What is still too soft to rub out is neither ready to wrap nor fully hard.
    boolean needsGlass = m.compareTo(Milestone.RUB_OUT) >= 0;
    double s = needsGlass ? hardEnoughS(member, byResidue) : byResidue;
    return s <= HORIZON_S ? s : Double.POSITIVE_INFINITY;
  }

  MemberClocks clocks() {
    return clocks;
  }

  /** From then on, when the resin first stands far enough above the room. */
  private double hardEnoughS(int member, double fromS) {
    double before = softness(member, job.lastCoatS() + fromS);
    if (before <= -GLASS_MARGIN_K) {
      return fromS;
    }
    for (int i = 0; i < momentsS.length; i++) {
      double afterS = momentsS[i] - job.lastCoatS();
      if (afterS > fromS && value(member, Features.PLAIN + i) <= -GLASS_MARGIN_K) {
        return afterS;
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  /** Softness of the whole film between the sampled moments, straight in the logarithm of time. */
  double softness(int member, double atS) {
    int n = momentsS.length;
    if (atS >= momentsS[n - 1]) {
      return value(member, Features.PLAIN + n - 1);
    }
    int i = 1;
    while (i < n - 1 && momentsS[i] < atS) {
      i++;
    }
    double from = momentsS[i - 1] - job.lastCoatS();
    double to = momentsS[i] - job.lastCoatS();
    double at = atS - job.lastCoatS();
    boolean late = from > 0 && at > 0;
    double share = late ? Math.log(at / from) / Math.log(to / from) : (at - from) / (to - from);
    double first = value(member, Features.PLAIN + i - 1);
    double second = value(member, Features.PLAIN + i);
    return first + Math.max(0, Math.min(1, share)) * (second - first);
  }

  private double[] likelihood(BenchTest.Seen seen) {
    double[] likelihood = new double[MEMBERS];
    for (int i = 0; i < MEMBERS; i++) {
      likelihood[i] = BenchTest.chance(scattersBeyond(i, seen), seen.passed());
    }
    return likelihood;
  }

  private double scattersBeyond(int member, BenchTest.Seen seen) {
    BenchTest test = seen.test();
    if (test.onSoftness) {
      int moment = nearest(seen.atS());
      int feature = Features.PLAIN + moment + (test.onSkin ? momentsS.length : 0);
      return (test.limitK - value(member, feature)) / test.scatter;
    }
    double sinceS = seen.atS() - job.lastCoatS();
    double needsS = hardeningS(member, test.milestone, clocks);
    if (!(sinceS > 0) || !middle.known(Features.milestone(test.milestone))) {
      return 0;
    }
    return Math.log(sinceS / needsS) / test.scatter;
  }

  private int nearest(double atS) {
    int best = 0;
    for (int i = 0; i < momentsS.length; i++) {
      if (Math.abs(momentsS[i] - atS) < Math.abs(momentsS[best] - atS)) {
        best = i;
      }
    }
    return best;
  }

  /** Logarithms of the rub-out times; empty where the middle film never gets there. */
  Optional<double[]> lnRubOut() {
    if (!middle.known(Features.milestone(Milestone.RUB_OUT))) {
      return Optional.empty();
    }
    double[] values = new double[MEMBERS];
    for (int i = 0; i < MEMBERS; i++) {
      values[i] = Math.log(Math.min(HORIZON_S, hardeningS(i, Milestone.RUB_OUT, clocks)));
    }
    return Optional.of(values);
  }

  /**
   * Members that were drawn, as sets and jobs of their own; for checking the slopes by full runs.
   */
  List<Axis.Case> asCases(int every) {
    List<Axis.Case> cases = new ArrayList<>();
    Axis.Case middleCase = new Axis.Case(job.parameters(), job.job(), job.nowS());
    for (int i = 0; i < MEMBERS; i += every) {
      Axis.Case c = middleCase;
      for (Axis axis : Axis.values()) {
        double sd = axis.sd(job.spreads());
        c = sd > 0 ? axis.moved(c, sd * members.z(i, axis)) : c;
      }
      cases.add(c);
    }
    return cases;
  }

  static Ensemble untold(EnsembleJob job) {
    FilmParameters byResidue = job.parameters().withCriteria(residueAlone(job.parameters()));
    Axis.Case c = new Axis.Case(byResidue, job.job(), job.nowS());
    double[] moments = moments(job);
    FilmRun run =
        new FilmSimulation(byResidue, SimulationOptions.DEFAULT)
            .run(job.job(), job.lastCoatS() + HORIZON_S, moments);
    return new Ensemble(
        job, Sensitivity.of(c, job.spreads(), moments, HORIZON_S, THIN_K), run, c, moments);
  }

  OptionalDouble peakS(int member) {
    return OptionalDouble.of(Math.exp(value(member, Features.PEAK_S)));
  }
}
