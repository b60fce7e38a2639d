package coatwright.film;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;

/**
 * The six-coat, twelve-day job at equal error: how long this program takes for an answer that is so
 * wrong, and how long CVODE and SciPy take for one no better and no worse.
 *
 * <p>Reads the rows the peers printed (tab-separated: solver, grid, tolerance, ms, steps, rates,
 * Jacobians, factorisations, then the eight answers of {@link #ANSWERS}), measures its own, prints
 * tables. The truth is CVODE's answer at the tightest tolerance it was run at, on the same cells.
 */
final class FilmPrecision {
  private static final double[] AT_S = {0, 900, 1800, 2700, 6300, 8700};
  private static final double UNTIL_S = 8700 + 12 * 86400.0;
  private static final double[] TOLERANCES = {1e-3, 3e-4, 1e-4, 3e-5, 1e-5, 1e-6};
  private static final List<String> ANSWERS =
      List.of("rub-out", "dry hard", "touch", "recoat", "x4", "x6", "S coat 1", "S coat 6");

  private static final int WARM_RUNS = 150;

  /** One solver at one tolerance. */
  private record Row(
      String solver, String grid, double rtol, double ms, long[] work, double[] answers) {
    static Row parse(String line) {
      String[] f = line.split("\t", -1);
      long[] work = new long[4];
      for (int i = 0; i < 4; i++) {
        work[i] = Long.parseLong(f[4 + i]);
      }
      double[] answers = new double[ANSWERS.size()];
      for (int i = 0; i < answers.length; i++) {
        answers[i] = Double.parseDouble(f[8 + i]);
      }
      return new Row(f[0], f[1], Double.parseDouble(f[2]), Double.parseDouble(f[3]), work, answers);
    }

    /** Largest relative error of the answers. */
    double error(Row truth) {
      double worst = 0;
      for (int i = 0; i < answers.length; i++) {
        worst = Math.max(worst, Math.abs(answers[i] / truth.answers[i] - 1));
      }
      return worst;
    }
  }

  private FilmPrecision() {}

  public static void main(String[] args) throws IOException {
    Locale.setDefault(Locale.ROOT);
    double seconds = Double.parseDouble(args[0]);
    List<Row> rows = new ArrayList<>();
    for (String file : Arrays.asList(args).subList(1, args.length)) {
      Files.readAllLines(Path.of(file)).stream().map(Row::parse).forEach(rows::add);
    }
    for (String grid : List.of("whole", "merged")) {
      for (double rtol : TOLERANCES) {
        rows.add(measured(grid, rtol, false, seconds));
      }
    }
    Row withHaze = measured("merged", 1e-4, true, seconds);
    sameEquations(rows);
    everyRun(rows);
    equalError(rows, withHaze);
  }

  private static Row measured(String grid, double rtol, boolean haze, double seconds) {
    SimulationOptions options =
        SimulationOptions.DEFAULT
            .withTolerance(rtol)
            .withMerging(grid.equals("merged"))
            .withHaze(haze, haze ? 2 : Double.POSITIVE_INFINITY);
    FilmSimulation simulation = new FilmSimulation(FilmParameters.SHELLAC, options);
    List<LaidCoat> coats = new ArrayList<>();
    for (double at : AT_S) {
      coats.add(LaidCoat.plain(at, 75, 179.74, 95));
    }
    FilmJob job = FilmJob.of(coats, AirCourse.steady(20, 0.5, 0.1), 20);
    FilmRun run = simulation.run(job, UNTIL_S);
    for (int i = 0; i < WARM_RUNS; i++) {
      run = simulation.run(job, UNTIL_S);
    }
    double best = Double.POSITIVE_INFINITY;
    long until = cpuNs() + Math.round(1e9 * seconds);
    do {
      long start = cpuNs();
      run = simulation.run(job, UNTIL_S);
      best = Math.min(best, (cpuNs() - start) / 1e6);
    } while (cpuNs() < until);
    long steps = run.work().steps();
    long tried = steps + run.work().rejected();
    CoatOutcome first = run.coats().get(0);
    double[] answers = {
      run.rubOutS().orElseThrow(),
      run.dryHardS().orElseThrow(),
      first.touchS().orElseThrow(),
      first.recoatS().orElseThrow(),
      run.coats().get(3).xBeforeK().orElseThrow(),
      run.coats().get(5).xBeforeK().orElseThrow(),
      first.peakS(),
      run.lastCoat().peakS()
    };
    String name = haze ? "coatwright, haze followed" : "coatwright";
    return new Row(
        name, grid, rtol, best, new long[] {steps, steps + 2 * tried, steps, tried}, answers);
  }

  /** Processor time: another program on the same core does not count. */
  private static long cpuNs() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  private static Row truth(List<Row> rows, String grid) {
    Row best = null;
    for (Row r : rows) {
      if (r.solver.startsWith("cvode")
          && r.grid.equals(grid)
          && (best == null || r.rtol < best.rtol)) {
        best = r;
      }
    }
    if (best == null) {
      throw new IllegalStateException("no CVODE row for the " + grid + " grid");
    }
    return best;
  }

  private static void sameEquations(List<Row> rows) {
    System.out.println(
        "Are they the same equations? Whole grid, tightest tolerance of each:\n\n"
            + "| answer | CVODE | Coatwright | relative difference |\n|---|---|---|---|");
    Row truth = truth(rows, "whole");
    Row own = null;
    for (Row r : rows) {
      if (r.solver.equals("coatwright") && r.grid.equals("whole")) {
        own = own == null || r.rtol < own.rtol ? r : own;
      }
    }
    for (int i = 0; i < ANSWERS.size(); i++) {
      System.out.printf(
          "| %s | %.7g | %.7g | %.1e |%n",
          ANSWERS.get(i),
          truth.answers[i],
          own.answers[i],
          Math.abs(own.answers[i] / truth.answers[i] - 1));
    }
  }

  private static void everyRun(List<Row> rows) {
    System.out.println(
        "\n"
            + "Every run (error = largest relative error of those eight answers, on the run's own"
            + " cells):\n\n"
            + "| solver | old coats | tolerance | ms, minimum | steps | rates | factorisations |"
            + " error |\n"
            + "|---|---|---|---|---|---|---|---|");
    for (Row r : rows) {
      System.out.printf(
          "| %s | %s | %.0e | %.2f | %d | %d | %d | %.1e |%n",
          r.solver,
          r.grid,
          r.rtol,
          r.ms,
          r.work[0],
          r.work[1],
          r.work[3],
          r.error(truth(rows, r.grid)));
    }
  }

  private static void equalError(List<Row> rows, Row withHaze) {
    System.out.println(
        "\n"
            + "At equal error (the peer's time read off its own runs, straight in logarithms):\n\n"
            + "| our run | error | ours, ms | peer | peer, ms | ratio |\n"
            + "|---|---|---|---|---|---|");
    for (Row own : rows) {
      if (!own.solver.equals("coatwright") || (own.rtol != 1e-3 && own.rtol != 1e-4)) {
        continue;
      }
      Row truth = truth(rows, own.grid);
      double error = own.error(truth);
      for (String solver : rows.stream().map(Row::solver).distinct().toList()) {
        if (!solver.equals("coatwright")) {
          double ms =
              timeAt(rows, truth, error, r -> r.solver.equals(solver) && r.grid.equals(own.grid));
          against(own, error, solver, ms);
        }
      }
    }
    Row whole = truth(rows, "whole");
    Row merged =
        rows.stream()
            .filter(
                r ->
                    r.solver.equals("coatwright")
                        && r.grid.equals("merged")
                        && r.rtol == withHaze.rtol)
            .findFirst()
            .orElseThrow();
    double error = merged.error(whole);
    System.out.println(
        "\n"
            + "Old coats merged, as in use, against the whole grid's truth (the error of merging"
            + " counts):\n\n"
            + "| our run | error | ours, ms | peer | peer, ms | ratio |\n"
            + "|---|---|---|---|---|---|");
    for (String solver : rows.stream().map(Row::solver).distinct().toList()) {
      if (!solver.equals("coatwright")) {
        double ms =
            timeAt(rows, whole, error, r -> r.solver.equals(solver) && r.grid.equals("whole"));
        against(merged, error, solver, ms);
      }
    }
    System.out.printf("%nThe same run with haze followed: %.2f ms.%n", withHaze.ms);
  }

  private static void against(Row own, double error, String solver, double ms) {
    if (Double.isNaN(ms)) {
      return;
    }
    System.out.printf(
        "| %s, %.0e | %.1e | %.2f | %s | %.1f | %.1f |%n",
        own.grid, own.rtol, error, own.ms, solver, ms, ms / own.ms);
  }

  /**
   * The least time of any two neighbouring runs whose errors lie about this one; the cheapest run
   * when all are better; not-a-number when none is so good.
   */
  private static double timeAt(List<Row> rows, Row truth, double error, Predicate<Row> which) {
    List<Row> peers =
        rows.stream()
            .filter(which)
            .filter(r -> r != truth)
            .sorted((a, b) -> Double.compare(b.rtol, a.rtol))
            .toList();
    double best = Double.NaN;
    for (int i = 0; i < peers.size(); i++) {
      Row fine = peers.get(i);
      if (fine.error(truth) > error) {
        continue;
      }
      double ms = fine.ms;
      if (i > 0 && peers.get(i - 1).error(truth) > error) {
        Row coarse = peers.get(i - 1);
        double share =
            Math.log(error / coarse.error(truth))
                / Math.log(fine.error(truth) / coarse.error(truth));
        ms = Math.exp(Math.log(coarse.ms) + share * Math.log(fine.ms / coarse.ms));
      }
      best = Double.isNaN(best) ? ms : Math.min(best, ms);
    }
    return best;
  }
}
