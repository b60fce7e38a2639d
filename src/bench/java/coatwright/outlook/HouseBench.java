package coatwright.outlook;

import coatwright.film.AirCourse;
import coatwright.film.Ensemble;
import coatwright.film.EnsembleJob;
import coatwright.film.FilmJob;
import coatwright.film.FilmParameters;
import coatwright.film.FilmSimulation;
import coatwright.film.Finish;
import coatwright.film.LaidCoat;
import coatwright.film.Prediction;
import coatwright.film.SimulationOptions;
import coatwright.film.Spreads;
import coatwright.journal.Coat;
import coatwright.journal.Jar;
import coatwright.journal.Method;
import coatwright.journal.Observation.What;
import coatwright.journal.Part;
import coatwright.journal.PartPath;
import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the daemon asks of the ensemble: an outlook, a coat told with its range, and a shop of two
 * hundred live parts predicted again. Processor time of the asking thread, warm, so that other work
 * on the machine counts little; the peer of each is the one full run that it rests on.
 */
final class HouseBench {
  private static final int PARTS = 200;
  private static final double[] SIX_COATS_MIN = {0, 15, 30, 45, 105, 145};
  private static final double[] ONE_COAT_MIN = {0};

  /** One finish of every family that cures, and the lacquer. */
  private static final List<String> CURING =
      List.of(
          "lacquer-nitrocellulose",
          "varnish-alkyd",
          "oil-linseed",
          "waterborne-acrylic",
          "two-part-acid");

  private static final double HORIZON_S = 60 * 86_400.0;
  private static final ThreadMXBean THREAD = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  private final int warm;
  private final int measured;

  private HouseBench(int warm, int measured) {
    this.warm = warm;
    this.measured = measured;
  }

  public static void main(String[] args) {
    Locale.setDefault(Locale.ROOT);
    int measured = Integer.parseInt(args[0]);
    HouseBench bench = new HouseBench(2 * measured, measured);
    System.out.printf(
        "| %d members | ms of processor time, minimum | median | goal | beside it |%n"
            + "|---|---|---|---|---|%n",
        Ensemble.MEMBERS);
    bench.described("shellac-pale", TestShop.FINISHES);
    for (String finish : CURING) {
      bench.described(finish, TestShop.SHIPPED);
    }
    bench.coats("one coat", ONE_COAT_MIN);
    bench.coats("six coats", SIX_COATS_MIN);
    bench.house("one coat each", ONE_COAT_MIN, false, "");
    bench.house("six coats each", SIX_COATS_MIN, false, "2000");
    bench.house("one coat and two tests each", ONE_COAT_MIN, true, "2000");
    bench.house("six coats and two tests each", SIX_COATS_MIN, true, "2000");
    bench.allocation();
  }

  private record Times(double least, double median) {}

  private Times time(int times, Runnable work) {
    for (int i = 0; i < warm * times / measured; i++) {
      work.run();
    }
    double[] ms = new double[times];
    for (int i = 0; i < times; i++) {
      long start = THREAD.getCurrentThreadCpuTime();
      work.run();
      ms[i] = (THREAD.getCurrentThreadCpuTime() - start) / 1e6;
    }
    Arrays.sort(ms);
    return new Times(ms[0], ms[times / 2]);
  }

  private static void row(String what, Times t, String goal, String beside) {
    System.out.printf(
        "| %s | %.1f | %.1f | %s | %s |%n", what, t.least(), t.median(), goal, beside);
  }

  private static String runs(Times whole, double oneRunMs) {
    return "%.1f times its one full run".formatted(whole.least() / oneRunMs);
  }

  private void described(String finish, Map<String, Finish> finishes) {
    Map<String, String> form = Map.of("finish", finish, "air", "24C,60%", "wood", "23C");
    row(
        "outlook of a described coat of " + finish,
        time(measured, () -> FilmOutlooks.described(OutlookForm.read(form, finishes))),
        "50",
        "");
  }

  private static FilmJob job(double[] atMin) {
    List<LaidCoat> coats = new ArrayList<>();
    for (double min : atMin) {
      coats.add(LaidCoat.plain(60 * min, 75, 179.74, 95));
    }
    return FilmJob.of(coats, AirCourse.steady(20, 0.5, 0.1), 20);
  }

  private void coats(String name, double[] atMin) {
    FilmJob job = job(atMin);
    FilmSimulation simulation =
        new FilmSimulation(FilmParameters.SHELLAC, SimulationOptions.DEFAULT);
    double untilS = 60 * atMin[atMin.length - 1] + HORIZON_S;
    double oneRun = time(measured, () -> simulation.run(job, untilS)).least();
    EnsembleJob asked = EnsembleJob.untested(FilmParameters.SHELLAC, job, Spreads.told(0.2, 0.07));
    Times anew = time(measured, () -> Ensemble.predict(asked));
    row(name + ", everything anew", anew, "50", runs(anew, oneRun));
    Prediction before = Ensemble.predict(asked);
    Times again = time(measured, () -> Ensemble.predict(asked, before.sensitivity()));
    row(name + ", slopes known", again, "10", runs(again, oneRun));
  }

  /**
   * Two hundred parts in one room, coated one after the other over five hours; tested, each had the
   * thumbnail put to it a day later, which left a mark on every third, and was touched before.
   */
  private static TestShop shop(double[] atMin, boolean tested) {
    TestShop shop = new TestShop();
    shop.air(
        0,
        30,
        5,
        h -> 20 + 2 * Math.sin(2 * Math.PI * h / 24),
        h -> 50 - 6 * Math.sin(2 * Math.PI * h / 24));
    Instant mixed = TestShop.START.minus(Duration.ofDays(2));
    OptionalDouble cut = OptionalDouble.of(1.5 * TestShop.LB);
    OptionalDouble strength = OptionalDouble.of(95);
    Jar jar = new Jar("A", "shellac-pale", cut, strength, Optional.empty(), Optional.empty());
    String jarEntry = shop.write(mixed, jar).id();
    for (int i = 0; i < PARTS; i++) {
      PartPath part = PartPath.parse("kitchen/door-" + i);
      shop.write(
          mixed, new Part(part, OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty()));
      for (double min : atMin) {
        Instant at = TestShop.START.plusSeconds(Math.round(60 * (min + 1.5 * i)));
        shop.write(
            at,
            new Coat(
                part,
                "A",
                jarEntry,
                at,
                Optional.empty(),
                TestShop.ROOM,
                Method.BRUSH,
                OptionalDouble.empty(),
                OptionalDouble.of(20),
                Optional.empty()));
      }
      if (tested) {
        double coatedH = (atMin[atMin.length - 1] + 1.5 * i) / 60;
        shop.note(part, coatedH + 1, What.TACKY, true);
        shop.note(part, coatedH + 20, What.THUMBNAIL, i % 3 != 0);
      }
    }
    return shop;
  }

  /** Each refresh two minutes after the last, as readings come in; slopes are kept between them. */
  private void house(String name, double[] atMin, boolean tested, String goal) {
    TestShop shop = shop(atMin, tested);
    int[] minutes = {28 * 60};
    Runnable refresh =
        () -> {
          minutes[0] += 1;
          shop.at(Duration.ofMinutes(minutes[0]));
          shop.outlooks.refresh(shop.now(), "a reading came in");
        };
    Times first = timeOnce(refresh);
    row(PARTS + " live parts, " + name + ", the first time", first, "", "cold");
    Times again = time(Math.max(3, measured / 10), refresh);
    row(
        PARTS + " live parts, " + name + ", predicted again",
        again,
        goal,
        "%.1f ms a part".formatted(again.least() / PARTS));
  }

  private static Times timeOnce(Runnable work) {
    long start = THREAD.getCurrentThreadCpuTime();
    work.run();
    double ms = (THREAD.getCurrentThreadCpuTime() - start) / 1e6;
    return new Times(ms, ms);
  }

  private void allocation() {
    FilmJob job = job(SIX_COATS_MIN);
    double untilS = 8700 + 12 * 86_400.0;
    long[] bytes = new long[2];
    int[] steps = new int[2];
    for (int i = 0; i < 2; i++) {
      SimulationOptions options = SimulationOptions.DEFAULT.withTolerance(i == 0 ? 1e-3 : 1e-6);
      FilmSimulation simulation = new FilmSimulation(FilmParameters.SHELLAC, options);
      for (int k = 0; k < warm; k++) {
        simulation.run(job, untilS);
      }
      long before = THREAD.getCurrentThreadAllocatedBytes();
      steps[i] = simulation.run(job, untilS).work().steps();
      bytes[i] = THREAD.getCurrentThreadAllocatedBytes() - before;
    }
    System.out.printf(
        "%nAllocated by a six-coat run: %d bytes in %d steps, %d bytes in %d: %.2f bytes a step"
            + " more (goal: none).%n",
        bytes[0],
        steps[0],
        bytes[1],
        steps[1],
        (bytes[1] - bytes[0]) / (double) (steps[1] - steps[0]));
  }
}
