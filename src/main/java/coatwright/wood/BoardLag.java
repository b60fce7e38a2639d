package coatwright.wood;

import coatwright.air.MoistAir;
import coatwright.quantity.OutOfRange;
import java.util.Arrays;

/**
 * How the face of a board follows the temperature of the air.
 *
 * <p>Heat conduction in one dimension through the thickness, constant properties, heat exchanged at
 * the face in proportion to the difference from the air (Carslaw and Jaeger, "Conduction of Heat in
 * Solids", 2nd ed. 1959, chapter III). Finite volumes in space, and in time the two-stage, stiffly
 * stable, second-order diagonally implicit Runge-Kutta method (Alexander, SIAM J. Numer. Anal. 14
 * (1977) 1006).
 *
 * <p>Left out: heat along the board and at its edges, heat of sorption, sunshine, and the chill of
 * evaporating spirit, which the film model has for itself.
 */
public final class BoardLag {
  private static final int CELLS = 40;
  private static final double GAMMA = 1 - Math.sqrt(0.5);

  /** Each cell is this much thicker than the one above it: fine at the face, where all happens. */
  private static final double GROWTH = 1.08;

  /** Steps are at most these shares of the slowest time constant and of the face's own time. */
  private static final double STEP_OF_SLOWEST = 1.0 / 80;

  private static final double STEP_OF_FACE = 1.0 / 20;

  private final double airWeight;
  private final double longestStepS;

  /** Between a cell and the one below it, W/(m² K); the last has none below. */
  private final double[] conductance = new double[CELLS];

  private final double[] cellHeat = new double[CELLS];
  private final double airConductance;
  private final double[] tempC = new double[CELLS];

  private BoardLag(Board board, double initialTempC) {
    double k = board.conductivityWPerMK();
    double cellM = board.depthM() * (GROWTH - 1) / (Math.pow(GROWTH, CELLS) - 1);
    double halfCell = 2 * k / cellM;
    double surface = board.surfaceWPerM2K();
    this.airWeight = surface / (surface + halfCell);
    this.airConductance = surface * halfCell / (surface + halfCell);
    for (int cell = 0; cell < CELLS; cell++) {
      cellHeat[cell] = board.heatPerVolumeJPerM3K() * cellM;
      double nextCellM = cellM * GROWTH;
      conductance[cell] = cell == CELLS - 1 ? 0 : 2 * k / (cellM + nextCellM);
      cellM = nextCellM;
    }
    double faceS = k * board.heatPerVolumeJPerM3K() / (surface * surface);
    this.longestStepS = Math.min(timeConstantS(board) * STEP_OF_SLOWEST, faceS * STEP_OF_FACE);
    Arrays.fill(tempC, initialTempC);
  }

  /**
   * Temperature of the face in the air, at each time of the history.
   *
   * <p>A board whose past is unknown is best started at the first air temperature and forgotten for
   * three {@link #timeConstantS time constants}.
   *
   * @param timesS seconds from any zero, rising
   * @param airTempsC air temperature at those times, °C, -40 to 60; straight lines between
   * @param initialTempC the whole board at the first time, °C, -40 to 60
   * @return °C, as many as there are times; the first follows from the initial state
   * @throws OutOfRange for a temperature outside, times that do not rise, or lists of unequal
   *     length
   */
  public static double[] surfaceTempsC(
      Board board, double[] timesS, double[] airTempsC, double initialTempC) {
    checkHistory(timesS, airTempsC);
    checkTemperature("initial board temperature", initialTempC);
    BoardLag lag = new BoardLag(board, initialTempC);
    double[] surfaceC = new double[timesS.length];
    surfaceC[0] = lag.surfaceC(airTempsC[0]);
    for (int i = 1; i < timesS.length; i++) {
      lag.follow(timesS[i] - timesS[i - 1], airTempsC[i - 1], airTempsC[i]);
      surfaceC[i] = lag.surfaceC(airTempsC[i]);
    }
    return surfaceC;
  }

  /**
   * Time in which the board closes 63 % of a remaining difference from steady air, once its first
   * minutes are over: the slowest mode of the plane wall, depth² / (diffusivity ζ²) with ζ tan ζ =
   * Biot number. Source: Incropera et al., "Fundamentals of Heat and Mass Transfer", 7th ed.,
   * equations 5.42 to 5.44.
   *
   * @return seconds
   */
  public static double timeConstantS(Board board) {
    double zeta = firstRoot(board.biot());
    double diffusivity = board.conductivityWPerMK() / board.heatPerVolumeJPerM3K();
    return board.depthM() * board.depthM() / (diffusivity * zeta * zeta);
  }

  /** First positive root of ζ tan ζ = Bi, which lies between 0 and π/2. */
  static double firstRoot(double biot) {
    return root(biot, 0);
  }

  /** Root number {@code n} of ζ tan ζ = Bi, counted from 0; it lies between nπ and nπ + π/2. */
  static double root(double biot, int n) {
    double low = 0;
    double high = Math.PI / 2;
    for (int step = 0; step < 60; step++) {
      double middle = 0.5 * (low + high);
      // sin and cos, because tan has its pole at the upper end.
      if ((n * Math.PI + middle) * Math.sin(middle) > biot * Math.cos(middle)) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return n * Math.PI + 0.5 * (low + high);
  }

  private double surfaceC(double airTempC) {
    return airWeight * airTempC + (1 - airWeight) * tempC[0];
  }

  private void follow(double spanS, double airFromC, double airToC) {
    int steps = (int) Math.max(1, Math.min(1_000_000, Math.ceil(spanS / longestStepS)));
    double stepS = spanS / steps;
    double[] rate = new double[CELLS];
    double[] stage = new double[CELLS];
    for (int step = 0; step < steps; step++) {
      double airFirstC = between(airFromC, airToC, (step + GAMMA) / steps);
      double airEndC = between(airFromC, airToC, (step + 1.0) / steps);
      System.arraycopy(tempC, 0, stage, 0, CELLS);
      solveImplicit(GAMMA * stepS, airFirstC, stage);
      for (int cell = 0; cell < CELLS; cell++) {
        rate[cell] = (stage[cell] - tempC[cell]) / GAMMA;
        stage[cell] = tempC[cell] + (1 - GAMMA) * rate[cell];
      }
      solveImplicit(GAMMA * stepS, airEndC, stage);
      System.arraycopy(stage, 0, tempC, 0, CELLS);
    }
  }

  private static double between(double from, double to, double share) {
    return from + (to - from) * share;
  }

  /** Backward step of that length, in place: a tridiagonal system solved by Thomas' elimination. */
  private void solveImplicit(double stepS, double airTempC, double[] values) {
    double[] upper = new double[CELLS];
    double above = airConductance * stepS;
    double carried = airTempC;
    double carriedUpper = 0;
    for (int cell = 0; cell < CELLS; cell++) {
      double below = conductance[cell] * stepS;
      double pivot = cellHeat[cell] + above * (1 - carriedUpper) + below;
      upper[cell] = below / pivot;
      values[cell] = (cellHeat[cell] * values[cell] + above * carried) / pivot;
      carried = values[cell];
      carriedUpper = upper[cell];
      above = below;
    }
    for (int cell = CELLS - 2; cell >= 0; cell--) {
      values[cell] += upper[cell] * values[cell + 1];
    }
  }

  private static void checkHistory(double[] timesS, double[] airTempsC) {
    if (timesS.length == 0 || timesS.length != airTempsC.length) {
      throw new OutOfRange(
          "air history has %d times and %d temperatures; give one temperature for each time"
              .formatted(timesS.length, airTempsC.length));
    }
    for (int i = 0; i < timesS.length; i++) {
      checkTemperature("air temperature", airTempsC[i]);
      boolean rises = i == 0 ? Double.isFinite(timesS[0]) : timesS[i] > timesS[i - 1];
      if (!rises || Double.isInfinite(timesS[i])) {
        throw new OutOfRange(
            "time %d of the air history is %s s; times must be finite and rise"
                .formatted(i + 1, timesS[i]));
      }
    }
  }

  private static void checkTemperature(String what, double tempC) {
    OutOfRange.check(what, tempC, "°C", MoistAir.COLDEST_C, MoistAir.WARMEST_C);
  }
}
