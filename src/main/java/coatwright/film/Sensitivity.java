package coatwright.film;

import coatwright.quantity.OutOfRange;
import java.util.ArrayList;
import java.util.List;

/**
 * How the answer of one job moves with everything that is not known exactly, found by running the
 * model again at these very conditions, one thing moved by one standard deviation at a time.
 *
 * <p>The moved runs use a coarser grid than the answer itself; only their differences count. Reuse
 * one as long as coats, tests and inputs stay and only more air has come in: hardening is kept by
 * the film's own clock, on which the air's course hardly matters.
 */
public final class Sensitivity {
  private static final SimulationOptions COARSE =
      new SimulationOptions(6, 2.2, 2e-4, true, false, Double.POSITIVE_INFINITY);

  /** For several coats: their hardening comes out within a thousandth, at half the work. */
  private static final SimulationOptions COARSER =
      new SimulationOptions(6, 2.2, 1e-3, true, false, Double.POSITIVE_INFINITY);

  private static final int AXES = Axis.values().length;

  private final double[][] slopes = new double[AXES][];
  private final double[] momentsS;

  private Sensitivity(double[] momentsS) {
    this.momentsS = momentsS;
  }

  /** Runs every moved case. */
  static Sensitivity of(
      Axis.Case c, Spreads spreads, double[] momentsS, double horizonS, double thinK) {
    Sensitivity s = new Sensitivity(momentsS.clone());
    Axis.Case base = thinned(c, thinK);
    Features still = s.run(base, horizonS);
    boolean stack = c.job().coats().size() > 1;
    for (Axis axis : Axis.values()) {
      double sd = stack && axis.onlyWhileWet() ? 0 : axis.sd(spreads);
      s.slopes[axis.index()] =
          sd > 0 ? s.slope(axis, base, still, sd, horizonS) : new double[still.value.length];
    }
    return s;
  }

  private static Axis.Case thinned(Axis.Case c, double thinK) {
    FilmJob job = c.job();
    if (job.air().size() < 3) {
      return c;
    }
    AirCourse air = job.air().thinned(thinK, 0.04 * thinK);
    return new Axis.Case(
        c.parameters(),
        new FilmJob(job.coats(), air, job.woodTempC(), job.boardThicknessMm(), job.saturation()),
        c.nowS());
  }

  private Features run(Axis.Case c, double horizonS) {
    double untilS = lastCoatS(c.job()) + horizonS;
    FilmRun run =
        new FilmSimulation(c.parameters(), options(c.job())).run(c.job(), untilS, momentsS);
    return Features.of(c, run, momentsS, horizonS);
  }

  private double[] slope(Axis axis, Axis.Case c, Features still, double sd, double horizonS) {
    List<Features> ends = new ArrayList<>(2);
    List<Double> steps = new ArrayList<>(2);
    for (double step : new double[] {sd, -sd}) {
      if (ends.isEmpty() || axis.bothSides) {
        tryMoved(axis, c, step, horizonS, ends, steps);
      }
    }
    if (ends.isEmpty()) {
      tryMoved(axis, c, -sd, horizonS, ends, steps);
    }
    double[] slope = new double[still.value.length];
    if (ends.isEmpty()) {
      return slope;
    }
    boolean both = ends.size() == 2;
    Features to = ends.get(0);
    Features from = both ? ends.get(1) : still;
    double sign = both ? 2 : Math.signum(steps.get(0));
    for (int i = 0; i < slope.length; i++) {
      if (still.known(i)) {
        slope[i] = (to.orHorizon(i) - from.orHorizon(i)) / sign;
      }
    }
    return slope;
  }

  /** A step out of the model's range, or into dew, leaves only the other side to look at. */
  private void tryMoved(
      Axis axis,
      Axis.Case c,
      double step,
      double horizonS,
      List<Features> ends,
      List<Double> steps) {
    try {
      Axis.Case moved = axis.moved(c, step);
      double untilS = lastCoatS(moved.job()) + horizonS;
      FilmRun run =
          new FilmSimulation(moved.parameters(), options(moved.job()))
              .run(moved.job(), untilS, momentsS);
      if (!run.condensation()) {
        ends.add(Features.of(moved, run, momentsS, horizonS));
        steps.add(step);
      }
    } catch (OutOfRange outside) {
      return;
    }
  }

  private static SimulationOptions options(FilmJob job) {
    return job.coats().size() == 1 ? COARSE : COARSER;
  }

  private static double lastCoatS(FilmJob job) {
    return job.coats().get(job.coats().size() - 1).atS();
  }

  /** Whether these slopes are of as many moments. */
  boolean fits(double[] otherMomentsS) {
    return momentsS.length == otherMomentsS.length;
  }

  /** By how much a feature moves with one standard deviation along the axis. */
  double slope(Axis axis, int feature) {
    return slopes[axis.index()][feature];
  }
}
