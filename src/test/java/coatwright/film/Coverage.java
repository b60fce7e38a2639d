package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Whether the tenth and ninetieth percentile hold what they promise: 500 invented shops, each with
 * a film of its own in everything that nobody knows exactly. The truth is a full run of that film,
 * not a member read off slopes; its thumbnail tests and rub-outs are drawn from that run. Eight in
 * ten of the true dates should lie between the two percentiles; 75 to 85 in a hundred is asked.
 *
 * <p>This is the honesty of the range inside the model, not a comparison with films in real shops.
 * Each is computed once for all who ask.
 */
final class Coverage {
  private static final int SHOPS = 500;
  private static final int EARLIER_PARTS = 4;
  private static final double SHOP_SD = Math.sqrt(0.8);
  private static final double PART_SD = Math.sqrt(0.2);
  private static final Axis[] AXES = Axis.values();
  private static final SimulationOptions FULL =
      SimulationOptions.FAST.withHaze(false, Double.POSITIVE_INFINITY);
  private static final Spreads READ_IN_THE_SHOP = new Spreads(0.2, 0.07, 0.3, 0.3, 2, 0.5, 1);

  private static List<Share> sixCoats = List.of();
  private static List<Share> nextPart = List.of();
  private static List<Share> oneCoat = List.of();

  private final SplittableRandom random = new SplittableRandom(20261125);

  /** One film of one shop, and what its thumbnail tests said. */
  private record Film(double rubOutS, FilmRun run, List<BenchTest.Seen> thumbnails) {}

  /** Counts dates below, within and above a range. */
  static final class Tally {
    private final int[] counts = new int[3];

    void add(Percentiles range, double value) {
      double low = range.p10().orElse(Double.POSITIVE_INFINITY);
      double high = range.p90().orElse(Double.POSITIVE_INFINITY);
      counts[value < low ? 0 : value <= high ? 1 : 2]++;
    }

    Share as(String of) {
      double all = counts[0] + counts[1] + counts[2];
      return new Share(of, counts[0] / all, counts[1] / all, counts[2] / all);
    }
  }

  /**
   * Where the truth lay.
   *
   * @param of which date
   * @param before share that was ready before the tenth percentile, 0 to 1
   */
  record Share(String of, double before, double within, double after) {
    /** 75 to 85 in a hundred is asked; the figure is printed whatever it is. */
    void isHonest() {
      String figure =
          String.format(
              Locale.ROOT,
              "%s: %.1f %% within, %.1f %% before, %.1f %% after",
              of,
              100 * within,
              100 * before,
              100 * after);
      System.out.println("coverage of the 80 % range, " + figure);
      assertThat(within).as(figure).isBetween(0.75, 0.85);
    }
  }

  private Coverage() {}

  /** Rub-out, wrapping and full hardness of six coats, and rub-out after two thumbnail tests. */
  static synchronized List<Share> ofSixCoats() {
    if (sixCoats.isEmpty()) {
      sixCoats = new Coverage().sixCoatFilms();
    }
    return sixCoats;
  }

  /** Rub-out of a shop's fifth part once four have taught its ways. */
  static synchronized List<Share> ofTheNextPart() {
    if (nextPart.isEmpty()) {
      nextPart = new Coverage().nextPartOfAShop();
    }
    return nextPart;
  }

  /** Clouding, dew margin and first milestones of one coat. */
  static synchronized List<Share> ofOneCoat() {
    if (oneCoat.isEmpty()) {
      oneCoat = new Coverage().oneCoatFilms();
    }
    return oneCoat;
  }

  private double[] drawn() {
    double[] z = new double[AXES.length];
    for (int i = 0; i < z.length; i++) {
      z[i] = random.nextGaussian();
    }
    return z;
  }

  private Film film(EnsembleJob job, double[] z, double... testedS) {
    Axis.Case c = new Axis.Case(job.parameters(), job.job(), job.nowS());
    for (Axis axis : AXES) {
      double sd = axis.sd(job.spreads());
      c = sd > 0 ? axis.moved(c, sd * z[axis.index()]) : c;
    }
    FilmRun run =
        new FilmSimulation(c.parameters(), FULL)
            .run(c.job(), job.lastCoatS() + Ensemble.HORIZON_S, testedS);
    List<BenchTest.Seen> seen = new ArrayList<>();
    BenchTest test = BenchTest.THUMBNAIL;
    for (FilmSample sample : run.trace()) {
      double beyond = (test.limitK - sample.xMeanK()) / test.scatter;
      seen.add(outcome(test, sample.atS(), BenchTest.chance(beyond, true)));
    }
    return new Film(run.rubOutS().orElse(Double.POSITIVE_INFINITY), run, seen);
  }

  private BenchTest.Seen outcome(BenchTest test, double atS, double chance) {
    return new BenchTest.Seen(test, atS, random.nextDouble() < chance);
  }

  /**
   * Two tests at the bench: one and a half times and four times as late as dry hard is expected.
   */
  private static double[] testTimes(EnsembleJob job, Prediction prior) {
    double hardS = prior.milestone(Milestone.DRY_HARD).p50().getAsDouble();
    return new double[] {job.lastCoatS() + 1.5 * hardS, job.lastCoatS() + 4 * hardS};
  }

  private static EnsembleJob job(FilmJob coats) {
    return EnsembleJob.untested(FilmParameters.SHELLAC, coats, READ_IN_THE_SHOP);
  }

  private List<Share> sixCoatFilms() {
    EnsembleJob job = job(Jobs.sixCoats(20, 0.5));
    Ensemble ensemble = Ensemble.untold(job);
    Prediction prior = ensemble.told(List.of(), Told.NOTHING);
    double[] tested = testTimes(job, prior);
    Tally untold = new Tally();
    Tally wrapped = new Tally();
    Tally full = new Tally();
    Tally told = new Tally();
    for (int shop = 0; shop < SHOPS; shop++) {
      Film film = film(job, drawn(), tested);
      Prediction after = ensemble.told(film.thumbnails(), Told.NOTHING);
      untold.add(prior.milestone(Milestone.RUB_OUT), film.rubOutS());
      wrapped.add(
          prior.milestone(Milestone.WRAP), film.run().wrapS().orElse(Double.POSITIVE_INFINITY));
      full.add(
          prior.milestone(Milestone.FULL_HARDNESS),
          film.run().fullHardnessS().orElse(Double.POSITIVE_INFINITY));
      told.add(after.milestone(Milestone.RUB_OUT), film.rubOutS());
    }
    return List.of(
        untold.as("rub-out of six coats, no tests"),
        wrapped.as("wrapping of six coats, no tests"),
        full.as("full hardness of six coats, no tests"),
        told.as("rub-out of six coats, two thumbnail tests"));
  }

  private List<Share> nextPartOfAShop() {
    EnsembleJob job = job(Jobs.oneCoat(20, 0.5));
    Ensemble ensemble = Ensemble.untold(job);
    Prediction prior = ensemble.told(List.of(), Told.NOTHING);
    double[] tested = testTimes(job, prior);
    double medianS = prior.milestone(Milestone.RUB_OUT).p50().getAsDouble();
    Tally taught = new Tally();
    Tally taughtAndTested = new Tally();
    for (int shop = 0; shop < SHOPS; shop++) {
      double faster = SHOP_SD * random.nextGaussian();
      double limit = SHOP_SD * random.nextGaussian();
      List<Lesson> lessons = new ArrayList<>();
      for (int part = 0; part < EARLIER_PARTS; part++) {
        Film film = film(job, inShop(faster, limit), tested);
        List<BenchTest.Seen> seen = new ArrayList<>(film.thumbnails());
        double afterS = medianS * Math.exp(0.5 * random.nextGaussian());
        double beyond = Math.log(afterS / film.rubOutS()) / BenchTest.RUBBED_OUT.scatter;
        seen.add(
            outcome(
                BenchTest.RUBBED_OUT, job.lastCoatS() + afterS, BenchTest.chance(beyond, true)));
        lessons.add(ensemble.lesson(seen));
      }
      Told beside = Told.NOTHING.withShop(ShopPrior.of(lessons));
      Film next = film(job, inShop(faster, limit), tested);
      taught.add(ensemble.told(List.of(), beside).milestone(Milestone.RUB_OUT), next.rubOutS());
      taughtAndTested.add(
          ensemble.told(next.thumbnails(), beside).milestone(Milestone.RUB_OUT), next.rubOutS());
    }
    return List.of(
        taught.as("rub-out of a shop's fifth part, no tests on it"),
        taughtAndTested.as("rub-out of a shop's fifth part, two thumbnail tests on it"));
  }

  private double[] inShop(double faster, double limit) {
    double[] z = drawn();
    z[Axis.GLASS_DIFFUSIVITY.index()] = faster + PART_SD * random.nextGaussian();
    z[Axis.OWN_THRESHOLD.index()] = limit + PART_SD * random.nextGaussian();
    return z;
  }

  private List<Share> oneCoatFilms() {
    EnsembleJob job = job(Jobs.oneCoat(24, 0.6));
    Prediction said = Ensemble.predict(job);
    Tally s = new Tally();
    Tally margin = new Tally();
    Tally open = new Tally();
    Tally touch = new Tally();
    Tally recoat = new Tally();
    for (int shop = 0; shop < SHOPS; shop++) {
      double[] z = drawn();
      CoatOutcome coat = film(job, z).run().lastCoat();
      double bears = Math.exp(Axis.CLOUDING_LIMIT_LN * z[Axis.CLOUDING_LIMIT.index()]);
      s.add(said.peakS(), coat.peakS() / bears);
      margin.add(said.marginK(), coat.marginK());
      open.add(said.openTimeS(), coat.openTimeS().getAsDouble());
      touch.add(said.milestone(Milestone.DRY_TO_TOUCH), coat.touchS().getAsDouble());
      recoat.add(said.milestone(Milestone.DRY_TO_RECOAT), coat.recoatS().getAsDouble());
    }
    return List.of(
        s.as("S of one coat, readings and wood uncertain"),
        margin.as("film over dew point"),
        open.as("open time"),
        touch.as("touch"),
        recoat.as("recoat"));
  }
}
