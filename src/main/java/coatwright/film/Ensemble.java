package coatwright.film;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/**
 * Four hundred films like this one, each a little different in everything nobody knows exactly, and
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
  public static final int MEMBERS = 400;

  /** Beyond this nothing is promised, s. */
  public static final double HORIZON_S = 60 * 86_400.0;

  private static final Axis[] AXES = Axis.values();
  private static final double GLASS_MARGIN_K = 8;
  private static final int LATE_MOMENTS = 28;
  private static final double FIRST_MOMENT_S = 900;
  private static final double THIN_K = 1.0;
  private static final int LEARNERS = 800;

  /** A stack is only asked how it hardens; its clouding is told by its last coat alone. */
  private static final SimulationOptions STACK =
      SimulationOptions.DEFAULT.withTolerance(1e-3).withHaze(false, Double.POSITIVE_INFINITY);

  private final EnsembleJob job;
  private final Sensitivity sensitivity;
  private final FilmRun run;
  private final Features middle;
  private final Members members;
  private final MemberClocks clocks;
  private final double[] momentsS;
  private final List<Axis> moving = new ArrayList<>();

  /**
   * By milestone, what brings the middle of the members before any test onto the model's own
   * answer, natural log: a film is ready when the later of two things is so, and the later of two
   * uncertain times is later than the middle of either.
   */
  private final double[] anchorLn;

  private int told;

  private Ensemble(
      EnsembleJob job,
      Sensitivity sensitivity,
      FilmRun run,
      Features middle,
      double[] momentsS,
      int count) {
    this.job = job;
    this.sensitivity = sensitivity;
    this.run = run;
    this.momentsS = momentsS;
    this.middle = middle;
    this.members = new Members(count, job.told().shop());
    this.clocks = clocks(job.job().air());
    for (Axis axis : AXES) {
      if (Arrays.stream(sensitivity.slopes(axis)).anyMatch(s -> s != 0)) {
        moving.add(axis);
      }
    }
    this.anchorLn =
        job.told().shop().taught()
            ? new Ensemble(untested(job), sensitivity, run, middle, momentsS, MEMBERS).anchorLn
            : anchors();
  }

  private double[] anchors() {
    double[] anchors = new double[Milestone.values().length];
    for (Milestone m : Milestone.values()) {
      if (!needsGlass(m) || !middle.known(Features.milestone(m))) {
        continue;
      }
      double[] values = new double[members.count];
      for (int i = 0; i < members.count; i++) {
        values[i] = Math.log(bareHardeningS(i, m, clocks));
      }
      OptionalDouble median = Percentiles.of(values, members.weights()).p50();
      double own = Math.log(bareHardeningS(Members.MIDDLE, m, clocks));
      boolean finite = median.isPresent() && Double.isFinite(own);
      anchors[m.index()] = finite ? own - median.getAsDouble() : 0;
    }
    return anchors;
  }

  /** What is still too soft to rub out is neither ready to wrap nor fully hard. */
  private static boolean needsGlass(Milestone m) {
    return m.compareTo(Milestone.RUB_OUT) >= 0;
  }

  /** The whole prediction, everything computed anew. */
  public static Prediction predict(EnsembleJob job) {
    return predict(job, Optional.empty());
  }

  /**
   * The prediction again, with slopes that are already known.
   *
   * @param known slopes of an earlier prediction of the same coats; they are found anew where they
   *     do not fit
   */
  public static Prediction predict(EnsembleJob job, Optional<Sensitivity> known) {
    Axis.Case c = byResidue(job);
    double[] moments = moments(job);
    FilmRun run = middleRun(job, c, moments);
    if (run.condensation()) {
      return Prediction.ofDew(run);
    }
    return new Ensemble(
            job,
            slopes(job, c, moments, known),
            run,
            Features.of(c, run, moments, HORIZON_S),
            moments,
            MEMBERS)
        .predicted();
  }

  /**
   * Slopes that serve every job with as many coats, for {@link #lesson}; hardening goes so nearly
   * straight that those of a usual part serve an unusual one.
   */
  public static Sensitivity slopes(EnsembleJob job) {
    EnsembleJob bare = untested(job);
    return slopes(bare, byResidue(bare), moments(bare), Optional.empty());
  }

  /**
   * What the tests of one part say of its shop. Tests made before its last coat, or within a
   * quarter of an hour of it, are left out: they tell little of hardening.
   *
   * @param job with its tests, in an untaught shop
   * @param slopes of a job with as many coats
   */
  public static Lesson lesson(EnsembleJob job, Sensitivity slopes) {
    EnsembleJob bare = untested(job);
    Axis.Case c = byResidue(bare);
    double[] moments = moments(bare);
    FilmRun run = middleRun(bare, c, moments);
    if (run.condensation()) {
      return Lesson.NONE;
    }
    Features middle = Features.of(c, run, moments, HORIZON_S);
    Sensitivity fitting = slopes(bare, c, moments, Optional.of(slopes));
    return new Ensemble(bare, fitting, run, middle, moments, LEARNERS).lesson(job);
  }

  private static EnsembleJob untested(EnsembleJob job) {
    return new EnsembleJob(
        job.parameters(),
        job.job(),
        job.spreads(),
        List.of(),
        job.nowS(),
        job.gaps(),
        job.gapK(),
        Told.NOTHING);
  }

  private static Axis.Case byResidue(EnsembleJob job) {
    FilmParameters byResidue = job.parameters().withCriteria(residueAlone(job.parameters()));
    return new Axis.Case(byResidue, job.job(), job.nowS());
  }

  private static FilmRun middleRun(EnsembleJob job, Axis.Case c, double[] moments) {
    double untilS = job.lastCoatS() + HORIZON_S;
    return new FilmSimulation(c.parameters(), options(job)).run(job.job(), untilS, moments);
  }

  private static Sensitivity slopes(
      EnsembleJob job, Axis.Case c, double[] moments, Optional<Sensitivity> known) {
    return known
        .flatMap(k -> k.forJob(job.job(), job.spreads(), moments))
        .orElseGet(() -> Sensitivity.of(c, job.spreads(), moments, HORIZON_S, THIN_K));
  }

  /** The job's tests on these members, without drawing anew. */
  Lesson lesson(EnsembleJob tested) {
    Lesson.Spread before = members.spread(Axis.GLASS_DIFFUSIVITY, Axis.OWN_THRESHOLD);
    boolean any = false;
    for (BenchTest.Seen seen : tested.tests()) {
      if (seen.atS() >= momentsS[0]) {
        members.weighInPlace(likelihood(seen));
        any = true;
      }
    }
    for (Told.Weighed weighed : tested.told().weighed()) {
      if (weighed.atS() >= momentsS[0]) {
        members.weighInPlace(likelihood(weighed));
        any = true;
      }
    }
    Lesson hardening = Lesson.NONE;
    if (any) {
      members.temper(LEARNERS / 20.0);
      hardening =
          Lesson.ofHardening(members.spread(Axis.GLASS_DIFFUSIVITY, Axis.OWN_THRESHOLD), before);
    }
    return hardening.and(cloudingLesson(tested.told().clouding()));
  }

  /** What clouding says of the shop's limit, whatever the tests of hardening say. */
  private Lesson cloudingLesson(List<Told.Clouded> coats) {
    if (coats.isEmpty() || job.job().coats().size() > 1) {
      return Lesson.NONE;
    }
    Members fresh = new Members(LEARNERS, ShopPrior.UNTAUGHT);
    Lesson.Spread before = fresh.spread(Axis.CLOUDING_LIMIT, Axis.SPIRIT_WATER);
    for (Told.Clouded coat : coats) {
      double[] likelihood = new double[fresh.count];
      for (int i = 0; i < fresh.count; i++) {
        likelihood[i] = coat.chance(Math.log(coat.peakS()) + lnSMoved(fresh, i));
      }
      fresh.weighInPlace(likelihood);
    }
    fresh.temper(LEARNERS / 20.0);
    Lesson.Spread after = fresh.spread(Axis.CLOUDING_LIMIT, Axis.SPIRIT_WATER);
    double precision = 1 / after.varFirst() - 1 / before.varFirst();
    double toward = after.first() / after.varFirst() - before.first() / before.varFirst();
    return Lesson.ofClouding(precision, toward);
  }

  /** A stack is asked how it hardens, a single coat also how it clouds. */
  private static SimulationOptions options(EnsembleJob job) {
    return job.job().coats().size() == 1 ? SimulationOptions.DEFAULT : STACK;
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
    double firstS = job.job().coats().get(0).atS();
    for (BenchTest.Seen seen : job.tests()) {
      if (seen.atS() > firstS && seen.atS() < moments.first()) {
        moments.add(seen.atS());
      }
    }
    return moments.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private Prediction predicted() {
    double firstS = job.job().coats().get(0).atS();
    for (BenchTest.Seen seen : job.tests()) {
      if (seen.atS() > firstS) {
        weigh(likelihood(seen));
      }
    }
    for (Told.Weighed weighed : job.told().weighed()) {
      if (weighed.atS() > job.lastCoatS()) {
        weigh(likelihood(weighed));
      }
    }
    if (job.job().coats().size() == 1) {
      for (Told.Clouded coat : job.told().clouding()) {
        weigh(likelihood(coat));
      }
    }
    return read();
  }

  private void weigh(double[] likelihood) {
    members.weigh(likelihood, told);
    told++;
  }

  private Prediction read() {
    Map<Milestone, Percentiles> milestones = new EnumMap<>(Milestone.class);
    for (Milestone m : Milestone.values()) {
      milestones.put(m, m.byFilmClock() ? hardening(m) : plain(Features.milestone(m)));
    }
    return new Prediction(
        run.model(),
        run.condensation(),
        Optional.of(run),
        milestones,
        plain(),
        Percentiles.NONE,
        plain(Features.OPEN_TIME),
        peakS(),
        kelvin(Features.MARGIN),
        marginErrorK(),
        kelvin(Features.SOFT_BEFORE),
        members.effective(),
        new Narrowing(this).best(),
        Optional.of(sensitivity));
  }

  private Map<Milestone, Double> plain() {
    Map<Milestone, Double> plain = new EnumMap<>(Milestone.class);
    for (Milestone m : Milestone.values()) {
      int feature = Features.milestone(m);
      if (middle.known(feature)) {
        double s =
            m.byFilmClock()
                ? bareHardeningS(Members.MIDDLE, m, clocks)
                : Math.exp(middle.value[feature]);
        if (s <= HORIZON_S) {
          plain.put(m, s);
        }
      }
    }
    return plain;
  }

  double value(int member, int feature) {
    double sum = middle.value[feature];
    for (Axis axis : moving) {
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

  /** S over what this shop's films bear. */
  private Percentiles peakS() {
    double[] values = new double[members.count];
    for (int i = 0; i < members.count; i++) {
      values[i] = middle.value[Features.PEAK_S] + lnSMoved(members, i);
    }
    return Percentiles.of(values, members.weights()).map(Math::exp);
  }

  /** How far a member's ln S over its own limit lies from the middle. */
  private double lnSMoved(Members of, int member) {
    double sum = -Axis.CLOUDING_LIMIT_LN * of.z(member, Axis.CLOUDING_LIMIT);
    for (Axis axis : moving) {
      sum += of.z(member, axis) * sensitivity.slope(axis, Features.PEAK_S);
    }
    return sum;
  }

  private Percentiles plain(int feature) {
    if (!middle.known(feature)) {
      return Percentiles.NONE;
    }
    double[] values = new double[members.count];
    for (int i = 0; i < members.count; i++) {
      values[i] = value(i, feature);
    }
    return Percentiles.of(values, members.weights()).map(Math::exp);
  }

  private Percentiles kelvin(int feature) {
    if (!middle.known(feature)) {
      return Percentiles.NONE;
    }
    double[] values = new double[members.count];
    for (int i = 0; i < members.count; i++) {
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
    return clocks(air);
  }

  private MemberClocks clocks(AirCourse air) {
    return new MemberClocks(air, job.parameters().diffusion().glassEnergyJPerMol(), job.nowS());
  }

  private MemberClocks.Warmer warmer(int member) {
    Spreads s = job.spreads();
    return new MemberClocks.Warmer(
        s.airTempK() * members.z(member, Axis.AIR_TEMPERATURE),
        s.comingAirK() * members.z(member, Axis.COMING_AIR));
  }

  private Percentiles hardening(Milestone m, MemberClocks by) {
    double[] values = new double[members.count];
    for (int i = 0; i < members.count; i++) {
      values[i] = Math.log(hardeningS(i, m, by));
    }
    return Percentiles.of(values, members.weights()).map(Math::exp);
  }

  /**
   * Seconds from the last coat, infinite beyond the horizon or while the resin itself stays soft.
   */
  double hardeningS(int member, Milestone m, MemberClocks by) {
    double s = bareHardeningS(member, m, by) * Math.exp(anchorLn[m.index()]);
    return s <= HORIZON_S ? s : Double.POSITIVE_INFINITY;
  }

  private double bareHardeningS(int member, Milestone m, MemberClocks by) {
    double clockS = Math.exp(value(member, Features.milestone(m)));
    double byResidue =
        by.secondsFor(
            members.z(member, Axis.GLASS_ENERGY), job.lastCoatS(), clockS, warmer(member));
    double s = needsGlass(m) ? hardEnoughS(member, byResidue) : byResidue;
    return s <= HORIZON_S ? s : Double.POSITIVE_INFINITY;
  }

  MemberClocks clocks() {
    return clocks;
  }

  /** From then on, when the resin first stands far enough above the room. */
  private double hardEnoughS(int member, double fromS) {
    double earlierS = fromS;
    double earlier = softness(member, job.lastCoatS() + fromS);
    if (earlier <= -GLASS_MARGIN_K) {
      return fromS;
    }
    for (int i = 0; i < momentsS.length; i++) {
      double laterS = momentsS[i] - job.lastCoatS();
      if (laterS <= fromS) {
        continue;
      }
      double later = value(member, Features.PLAIN + i);
      if (later <= -GLASS_MARGIN_K) {
        double share = (earlier + GLASS_MARGIN_K) / (earlier - later);
        return earlierS * Math.exp(share * Math.log(laterS / earlierS));
      }
      earlierS = laterS;
      earlier = later;
    }
    return Double.POSITIVE_INFINITY;
  }

  /** Softness of the whole film, K. */
  double softness(int member, double atS) {
    return between(member, Features.MEAN_SOFTNESS, atS);
  }

  /** A feature between the sampled moments, straight in the logarithm of time. */
  private double between(int member, int block, double atS) {
    int n = momentsS.length;
    int from = Features.PLAIN + block * n;
    if (atS >= momentsS[n - 1]) {
      return value(member, from + n - 1);
    }
    if (atS <= momentsS[0]) {
      return value(member, from);
    }
    int i = Arrays.binarySearch(momentsS, atS);
    if (i >= 0) {
      return value(member, from + i);
    }
    i = -i - 1;
    double start = momentsS[i - 1] - job.lastCoatS();
    double end = momentsS[i] - job.lastCoatS();
    double at = atS - job.lastCoatS();
    double share =
        start > 0 ? Math.log(at / start) / Math.log(end / start) : (at - start) / (end - start);
    double first = value(member, from + i - 1);
    return first + share * (value(member, from + i) - first);
  }

  private double[] likelihood(BenchTest.Seen seen) {
    double[] likelihood = new double[members.count];
    for (int i = 0; i < members.count; i++) {
      likelihood[i] = BenchTest.chance(scattersBeyond(i, seen), seen.passed());
    }
    return likelihood;
  }

  private double[] likelihood(Told.Weighed weighed) {
    double[] likelihood = new double[members.count];
    for (int i = 0; i < members.count; i++) {
      double lnShare = between(i, Features.VOLATILE_SHARE, weighed.atS());
      likelihood[i] = weighed.likelihood(Math.exp(lnShare));
    }
    return likelihood;
  }

  private double[] likelihood(Told.Clouded coat) {
    double[] likelihood = new double[members.count];
    for (int i = 0; i < members.count; i++) {
      likelihood[i] = coat.chance(Math.log(coat.peakS()) + lnSMoved(members, i));
    }
    return likelihood;
  }

  private double scattersBeyond(int member, BenchTest.Seen seen) {
    BenchTest test = seen.test();
    if (test.onSoftness) {
      int block = test.onSkin ? Features.SKIN_SOFTNESS : Features.MEAN_SOFTNESS;
      return (test.limitK - between(member, block, seen.atS())) / test.scatter;
    }
    double sinceS = seen.atS() - job.lastCoatS();
    double needsS = hardeningS(member, test.milestone, clocks);
    if (!(sinceS > 0) || !middle.known(Features.milestone(test.milestone))) {
      return 0;
    }
    return Math.log(sinceS / needsS) / test.scatter;
  }

  /** Logarithms of the rub-out times; empty where the middle film never gets there. */
  Optional<double[]> lnRubOut() {
    if (!middle.known(Features.milestone(Milestone.RUB_OUT))) {
      return Optional.empty();
    }
    double[] values = new double[members.count];
    for (int i = 0; i < members.count; i++) {
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

  /** As drawn, before any test; the same again for as many tests as one likes. */
  static Ensemble untold(EnsembleJob job) {
    Axis.Case c = byResidue(job);
    double[] moments = moments(job);
    FilmRun run =
        new FilmSimulation(c.parameters(), SimulationOptions.DEFAULT)
            .run(job.job(), job.lastCoatS() + HORIZON_S, moments);
    Sensitivity slopes = Sensitivity.of(c, job.spreads(), moments, HORIZON_S, THIN_K);
    Features middle = Features.of(c, run, moments, HORIZON_S);
    return new Ensemble(job, slopes, run, middle, moments, MEMBERS);
  }

  /** These films with other tests, read off the same run and slopes. */
  Prediction told(List<BenchTest.Seen> tests, Told beside) {
    return fresh(tests, beside, MEMBERS).predicted();
  }

  /** Slopes along an axis by runs of its own. */
  double[] ownSlope(Axis axis) {
    return Sensitivity.byOwnRuns(axis, byResidue(job), job.spreads(), momentsS, HORIZON_S);
  }

  /** What these tests would teach of the shop. */
  Lesson lesson(List<BenchTest.Seen> tests) {
    Ensemble fresh = fresh(List.of(), Told.NOTHING, LEARNERS);
    return fresh.lesson(with(tests, Told.NOTHING));
  }

  private Ensemble fresh(List<BenchTest.Seen> tests, Told beside, int count) {
    return new Ensemble(with(tests, beside), sensitivity, run, middle, momentsS, count);
  }

  private EnsembleJob with(List<BenchTest.Seen> tests, Told beside) {
    return new EnsembleJob(
        job.parameters(),
        job.job(),
        job.spreads(),
        tests,
        job.nowS(),
        job.gaps(),
        job.gapK(),
        beside);
  }

  OptionalDouble peakS(int member) {
    return OptionalDouble.of(Math.exp(value(member, Features.PEAK_S)));
  }
}
