package coatwright.film;

/**
 * The few sums of the state that milestones ask about, at both ends of a step and anywhere between:
 * mean composition of the stack, of the newest coat, of the skin and of the top cell, the film
 * temperature and the wood's surface. They are linear in the state, so the cubic between steps
 * carries over to them.
 */
final class Moment {
  static final int MEAN = 0;
  static final int NEWEST = 3;
  static final int SKIN = 6;
  static final int TOP = 9;
  static final int FILM = 12;
  static final int WOOD = 13;
  private static final int SIZE = 14;

  private final FilmGrid grid;
  private double[] start = new double[SIZE];
  private double[] startRate = new double[SIZE];
  private double[] end = new double[SIZE];
  private double[] endRate = new double[SIZE];
  private double stepS;

  /** The moment last asked for. */
  final double[] at = new double[SIZE];

  Moment(FilmGrid grid) {
    this.grid = grid;
  }

  void begin(double[] y, double[] f) {
    sums(y, start);
    sums(f, startRate);
  }

  void finish(double[] y, double[] f, double h) {
    sums(y, end);
    sums(f, endRate);
    stepS = h;
  }

  /** The end becomes the start of the next step. */
  void advance() {
    double[] t = start;
    start = end;
    end = t;
    t = startRate;
    startRate = endRate;
    endRate = t;
  }

  /** The state at the start of the next step. */
  void startHere() {
    System.arraycopy(start, 0, at, 0, SIZE);
  }

  void go(double share) {
    for (int i = 0; i < SIZE; i++) {
      at[i] = RosenbrockStepper.hermite(start[i], startRate[i], end[i], endRate[i], stepS, share);
    }
  }

  double filmAt(double share) {
    return RosenbrockStepper.hermite(
        start[FILM], startRate[FILM], end[FILM], endRate[FILM], stepS, share);
  }

  void goTop(double share) {
    for (int i = TOP; i < TOP + 3; i++) {
      at[i] = RosenbrockStepper.hermite(start[i], startRate[i], end[i], endRate[i], stepS, share);
    }
  }

  private void sums(double[] v, double[] out) {
    int ns = grid.species;
    int n = grid.cells;
    for (int s = 0; s < ns; s++) {
      double all = 0;
      double newest = 0;
      double skin = 0;
      for (int j = 0; j < n; j++) {
        double u = v[j * ns + s];
        double volume = u * grid.thickness[j];
        all += volume;
        skin += u * grid.skinShare[j];
        if (j >= grid.newestFrom) {
          newest += volume;
        }
      }
      out[MEAN + s] = all / grid.resinM;
      out[NEWEST + s] = newest / grid.newestM;
      out[SKIN + s] = skin;
      out[TOP + s] = v[(n - 1) * ns + s];
    }
    out[FILM] = v[n * ns];
    out[WOOD] = v[n * ns + 1];
  }
}
