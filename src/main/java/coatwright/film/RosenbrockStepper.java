package coatwright.film;

/**
 * Carries the state through time: a four-stage, third-order, stiffly accurate Rosenbrock scheme
 * (Sandu, Verwer, Blom, Spee, Carmichael and Potra, Atmospheric Environment 31 (1997) 3459,
 * "RODAS3"). One factorisation and three evaluations a step, no iteration; between steps a cubic
 * through both ends' values and rates.
 */
final class RosenbrockStepper {
  /** Step after a coat is brushed on, s. */
  static final double FIRST_STEP_S = 0.05;

  private static final double LANDED_S = 1e-9;
  private static final double SAFETY = 0.9;
  private static final double LEAST_FACTOR = 0.3;
  private static final double MOST_FACTOR = 5;
  private static final double LEAST_AFTER_REJECTION = 0.2;
  private static final double LEAST_STEP_S = 1e-9;
  private static final double ABSOLUTE = 1e-3;
  private static final double TEMPERATURE_SCALE_K = 20;

  private final FilmGrid grid;
  private final FilmEquations equations;
  private final ArrowMatrix matrix;
  private final double rtol;

  private final double[] k1;
  private final double[] k2;
  private final double[] k3;
  private final double[] k4;
  private final double[] trial;
  private final double[] slope;

  /** State and rates at the step's start and end. */
  double[] y;

  double[] f;
  double[] yEnd;
  double[] fEnd;
  double timeS;
  double stepS;
  int steps;
  int rejected;

  private double nextStepS;

  RosenbrockStepper(FilmGrid grid, FilmEquations equations, double rtol) {
    this.grid = grid;
    this.equations = equations;
    this.rtol = rtol;
    matrix = ArrowMatrix.of(grid.species, grid.thickness.length);
    int most = grid.mostUnknowns();
    y = new double[most];
    f = new double[most];
    yEnd = new double[most];
    fEnd = new double[most];
    k1 = new double[most];
    k2 = new double[most];
    k3 = new double[most];
    k4 = new double[most];
    trial = new double[most];
    slope = new double[grid.species + 1];
  }

  void clear(double atS) {
    timeS = atS;
    steps = 0;
    rejected = 0;
  }

  /** Begins afresh from the state in y, after a coat. */
  void restart() {
    nextStepS = FIRST_STEP_S;
    equations.rates(timeS, y, f);
  }

  /**
   * One accepted step, at most to {@code limitS}, from the state that {@link #restart} or the last
   * step has left rates and exponentials for. Afterwards y, f hold its start and yEnd, fEnd its
   * end; call {@link #advance} to go on.
   */
  void step(double limitS) {
    equations.airAt(timeS);
    equations.jacobian(y, f, matrix);
    boolean changing = equations.climateChanging();
    if (changing) {
      equations.climateSlope(timeS, y, slope);
    }
    double h = Math.min(nextStepS, limitS - timeS);
    // A sliver left before the landing point would cost two steps.
    if (timeS + 1.5 * h > limitS && timeS + h < limitS) {
      h = timeS + 1.1 * h >= limitS ? limitS - timeS : 0.5 * (limitS - timeS);
    }
    boolean backed = false;
    while (true) {
      double error = attempt(h, changing);
      double factor = SAFETY / Math.cbrt(error);
      if (error <= 1) {
        stepS = h;
        double grow = backed ? 1 : MOST_FACTOR;
        double next = h * Math.max(LEAST_FACTOR, Math.min(grow, factor));
        // A step shortened only to land says nothing about the next.
        nextStepS = h < nextStepS && !backed ? Math.max(next, nextStepS) : next;
        steps++;
        break;
      }
      rejected++;
      backed = true;
      h *= Double.isNaN(factor) ? LEAST_AFTER_REJECTION : Math.max(LEAST_AFTER_REJECTION, factor);
      if (h < LEAST_STEP_S) {
        throw new FilmFailure(
            "the film calculation stalls at %.1f s: steps below %g s do not settle"
                .formatted(timeS, LEAST_STEP_S));
      }
    }
    double end = timeS + stepS;
    equations.rates(end, yEnd, fEnd);
  }

  /** One step of this very length, whatever its error; for the order test. */
  void forced(double h) {
    equations.airAt(timeS);
    equations.jacobian(y, f, matrix);
    boolean changing = equations.climateChanging();
    if (changing) {
      equations.climateSlope(timeS, y, slope);
    }
    attempt(h, changing);
    stepS = h;
    equations.rates(timeS + h, yEnd, fEnd);
  }

  /** End of the step last taken, s: the limit itself when only rounding parts the two. */
  double endS(double limitS) {
    double end = timeS + stepS;
    return limitS - end < LANDED_S * Math.max(1, Math.abs(limitS)) ? limitS : end;
  }

  void advance(double landedS) {
    timeS = landedS;
    double[] t = y;
    y = yEnd;
    yEnd = t;
    t = f;
    f = fEnd;
    fEnd = t;
  }

  /** Tries a step of h; the scaled error, not-a-number when a stage left the possible. */
  private double attempt(double h, boolean changing) {
    int n = grid.unknowns();
    int film = grid.film();
    int top = film - grid.species;
    matrix.factor(2 / h);
    System.arraycopy(f, 0, k1, 0, n);
    if (changing) {
      addSlope(k1, top, film, 0.5 * h);
    }
    matrix.solve(k1);
    double c = 4 / h;
    for (int i = 0; i < n; i++) {
      k2[i] = f[i] + c * k1[i];
    }
    if (changing) {
      addSlope(k2, top, film, 1.5 * h);
    }
    matrix.solve(k2);
    for (int i = 0; i < n; i++) {
      trial[i] = y[i] + 2 * k1[i];
    }
    equations.rates(timeS + h, trial, k3);
    double d = 1 / h;
    for (int i = 0; i < n; i++) {
      k3[i] += d * (k1[i] - k2[i]);
    }
    matrix.solve(k3);
    for (int i = 0; i < n; i++) {
      trial[i] += k3[i];
    }
    equations.rates(timeS + h, trial, k4);
    double e = 8.0 / 3.0;
    for (int i = 0; i < n; i++) {
      k4[i] += d * (k1[i] - k2[i] - e * k3[i]);
    }
    matrix.solve(k4);
    double sum = 0;
    for (int i = 0; i < film; i++) {
      double end = trial[i] + k4[i];
      yEnd[i] = end;
      double scale = rtol * (ABSOLUTE + Math.max(Math.abs(y[i]), Math.abs(end)));
      double part = k4[i] / scale;
      sum += part * part;
    }
    double perKelvin = 1 / (TEMPERATURE_SCALE_K * rtol);
    for (int i = film; i < n; i++) {
      yEnd[i] = trial[i] + k4[i];
      double part = k4[i] * perKelvin;
      sum += part * part;
    }
    return Math.max(1e-10, Math.sqrt(sum / n));
  }

  private void addSlope(double[] k, int top, int film, double by) {
    for (int s = 0; s < grid.species; s++) {
      k[top + s] += by * slope[s];
    }
    k[film] += by * slope[grid.species];
  }

  /** One unknown at a share of the step, 0 to 1. */
  double dense(int unknown, double share) {
    return hermite(y[unknown], f[unknown], yEnd[unknown], fEnd[unknown], stepS, share);
  }

  static double hermite(double a, double da, double b, double db, double h, double s) {
    double r = 1 - s;
    return r * r * ((1 + 2 * s) * a + s * h * da) + s * s * ((3 - 2 * s) * b - r * h * db);
  }
}
