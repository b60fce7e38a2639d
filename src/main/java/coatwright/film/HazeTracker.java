package coatwright.film;

import java.util.OptionalDouble;

/**
 * Follows the haze of every cell: micro-voids open where S passes 1 and sinter shut while the resin
 * still flows. Bloom that clears falls again before the film stiffens; what is left then stays.
 *
 * <p>Each cell's haze H relaxes to 1/(1+exp(−(S−1)/0.05)) with the time constant of {@link
 * FilmParameters.HazeGrowth}; the update is exact for an interval's end state.
 */
final class HazeTracker {
  private static final double WIDTH = 0.05;
  private static final double MOST_EXPONENT = 60;
  private static final double NEAR_S = 0.7;
  private static final double ALIVE_HAZE = 0.003;
  private static final double ALIVE_S = 600;
  private static final double BLOOM = 0.3;
  private static final double CLEAR = 0.05;
  private static final double HOUR_S = 3600;

  private final FilmGrid grid;
  private final FilmSolution solution;
  private final double baseS;
  private final double lnSinter;

  private double laidAtS;
  private double lastS;
  private double lastMean;
  private boolean bloomed;

  /** Clouding is near or alive: the next intervals must be short. */
  boolean near;

  double mean;
  double peak;
  double bloomS;
  private OptionalDouble at1h = OptionalDouble.empty();
  private OptionalDouble clearsAfterS = OptionalDouble.empty();

  HazeTracker(FilmParameters p, FilmGrid grid, FilmSolution solution) {
    this.grid = grid;
    this.solution = solution;
    baseS = p.hazeGrowth().baseS();
    lnSinter = Math.log(p.hazeGrowth().dropM() / p.hazeGrowth().tensionNPerM());
  }

  void begin(double atS, double jarS) {
    laidAtS = atS;
    lastS = atS;
    mean = weigh();
    lastMean = mean;
    peak = mean;
    bloomS = 0;
    bloomed = mean > CLEAR;
    near = jarS > NEAR_S;
    at1h = OptionalDouble.empty();
    clearsAfterS = OptionalDouble.empty();
  }

  private double weigh() {
    double sum = 0;
    for (int j = 0; j < grid.cells; j++) {
      sum += grid.haze[j] * grid.thickness[j];
    }
    return sum / grid.resinM;
  }

  /** Carries every cell's haze from the last update to this state. */
  void update(double atS, double[] y) {
    double dt = atS - lastS;
    if (dt <= 0) {
      return;
    }
    int ns = grid.species;
    double film = y[grid.cells * ns];
    double sum = 0;
    near = false;
    for (int j = 0; j < grid.cells; j++) {
      int p = j * ns;
      double s = solution.canCloud(y, p, film) ? solution.blush(y, p) : 0;
      double x = film - solution.glassK(y, p);
      double tau = baseS + Math.exp(FilmSolution.lnViscosity(x) + lnSinter);
      double steep = Math.max(-MOST_EXPONENT, Math.min(MOST_EXPONENT, (1 - s) / WIDTH));
      double toward = 1 / (1 + Math.exp(steep));
      double h = toward + (grid.haze[j] - toward) * Math.exp(-dt / tau);
      grid.haze[j] = h;
      sum += h * grid.thickness[j];
      near |= s > NEAR_S || (h > ALIVE_HAZE && tau < ALIVE_S);
    }
    lastMean = mean;
    // A film white throughout may sum to a rounding more than itself.
    mean = Math.min(1, sum / grid.resinM);
    account(atS - laidAtS, dt);
    lastS = atS;
  }

  private void account(double after, double dt) {
    peak = Math.max(peak, mean);
    bloomS += dt * shareAbove(BLOOM);
    double before = after - dt;
    if (before < HOUR_S && after >= HOUR_S) {
      at1h = OptionalDouble.of(lastMean + (mean - lastMean) * (HOUR_S - before) / dt);
    }
    if (mean > CLEAR) {
      bloomed = true;
    } else if (bloomed && clearsAfterS.isEmpty() && after <= HOUR_S) {
      double share = lastMean > mean ? (lastMean - CLEAR) / (lastMean - mean) : 1;
      clearsAfterS = OptionalDouble.of(before + dt * Math.max(0, Math.min(1, share)));
    }
  }

  /** Share of the last interval that the mean stood above a level, on a straight line. */
  private double shareAbove(double level) {
    if (lastMean > level && mean > level) {
      return 1;
    }
    if (lastMean <= level && mean <= level) {
      return 0;
    }
    double low = Math.min(lastMean, mean);
    double high = Math.max(lastMean, mean);
    return (high - level) / (high - low);
  }

  OptionalDouble at1h() {
    return at1h;
  }

  OptionalDouble clearsAfterS() {
    return clearsAfterS;
  }
}
