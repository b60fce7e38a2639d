package coatwright.outlook;

import coatwright.film.AirCourse;
import coatwright.film.CoatOutcome;
import coatwright.film.FilmParameters;
import coatwright.film.FilmRun;
import coatwright.film.FilmSimulation;
import coatwright.film.Finish;
import coatwright.film.LaidCoat;
import coatwright.film.SimulationOptions;
import coatwright.quantity.OutOfRange;
import java.util.List;

/**
 * How near to clouding one coat comes in any air the finish may be brushed in, on wood colder or
 * warmer than that air: the cheap form of the film model at the nodes of a grid, straight lines
 * between. Thousands of hours of a forecast's courses are asked of it; each would else be a run.
 */
final class CloudingSurface {
  /** What stands for "clouds for certain", where the run finds dew or the model does not hold. */
  static final double CLOUDS = 9;

  private static final int TEMPS = 5;
  private static final double[] RH = {
    0.10, 0.30, 0.42, 0.50, 0.56, 0.62, 0.68, 0.74, 0.80, 0.88, 1.0
  };
  private static final double[] WOOD_LESS_AIR_K = {-14, -9, -5.5, -3, -1.5, 0, 2, 6};
  private static final double COLDEST_C = -4;
  private static final double HOTTEST_C = 44;
  private static final double WET_S = 3600;

  private final double lowC;
  private final double stepK;
  private final double[][][] s = new double[TEMPS][RH.length][WOOD_LESS_AIR_K.length];

  private CloudingSurface(double lowC, double stepK) {
    this.lowC = lowC;
    this.stepK = stepK;
  }

  /**
   * Of a coat by itself on a board.
   *
   * @param draughtMPerS air along the surface, m/s
   */
  static CloudingSurface of(
      FilmParameters set, Finish finish, LaidCoat coat, double draughtMPerS, double boardMm) {
    double low = Math.max(COLDEST_C, finish.lowestTempC());
    double high = Math.min(HOTTEST_C, finish.highestTempC());
    CloudingSurface surface = new CloudingSurface(low, Math.max(0.1, (high - low) / (TEMPS - 1)));
    FilmSimulation simulation = new FilmSimulation(set, SimulationOptions.CLOUDING);
    for (int t = 0; t < TEMPS; t++) {
      double airC = surface.lowC + t * surface.stepK;
      for (int r = 0; r < RH.length; r++) {
        AirCourse air = AirCourse.steady(airC, RH[r], draughtMPerS);
        for (int w = 0; w < WOOD_LESS_AIR_K.length; w++) {
          surface.s[t][r][w] =
              peak(simulation, coat.at(0), air, airC + WOOD_LESS_AIR_K[w], boardMm);
        }
      }
    }
    return surface;
  }

  private static double peak(
      FilmSimulation simulation, LaidCoat coat, AirCourse air, double woodC, double boardMm) {
    try {
      FilmRun run = simulation.run(Described.job(List.of(coat), air, woodC, boardMm), WET_S);
      CoatOutcome outcome = run.lastCoat();
      return run.condensation() ? CLOUDS : Math.min(CLOUDS, outcome.peakS());
    } catch (OutOfRange outside) {
      return CLOUDS;
    }
  }

  /** The film's water over what it bears, at its peak; {@link #CLOUDS} where it cannot be told. */
  double peakS(double airTempC, double rhPct, double woodTempC) {
    double t = Math.min(TEMPS - 1, Math.max(0, (airTempC - lowC) / stepK));
    int t0 = (int) Math.min(TEMPS - 2, t);
    double rh = Math.min(RH[RH.length - 1], Math.max(RH[0], rhPct / 100));
    int r0 = below(RH, rh);
    double apart = Math.min(WOOD_LESS_AIR_K[WOOD_LESS_AIR_K.length - 1], woodTempC - airTempC);
    if (apart < WOOD_LESS_AIR_K[0]) {
      return CLOUDS;
    }
    int w0 = below(WOOD_LESS_AIR_K, apart);
    double inR = (rh - RH[r0]) / (RH[r0 + 1] - RH[r0]);
    double inW = (apart - WOOD_LESS_AIR_K[w0]) / (WOOD_LESS_AIR_K[w0 + 1] - WOOD_LESS_AIR_K[w0]);
    double inT = t - t0;
    return (1 - inT) * plane(s[t0], r0, inR, w0, inW) + inT * plane(s[t0 + 1], r0, inR, w0, inW);
  }

  private static double plane(double[][] at, int r, double inR, int w, double inW) {
    double here = at[r][w] + inW * (at[r][w + 1] - at[r][w]);
    double next = at[r + 1][w] + inW * (at[r + 1][w + 1] - at[r + 1][w]);
    return here + inR * (next - here);
  }

  private static int below(double[] nodes, double value) {
    int i = 0;
    while (i < nodes.length - 2 && nodes[i + 1] <= value) {
      i++;
    }
    return i;
  }
}
