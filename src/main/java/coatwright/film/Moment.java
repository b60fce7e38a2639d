package coatwright.film;

/**
 * The few sums of the state that milestones ask about, at both ends of a step and anywhere between:
 * mean composition of the stack, of the newest coat, of the skin and of the top cell, the film
 * temperature and the wood's surface. They are linear in the state, so the cubic between steps
 * carries over to them.
 */
final class Moment {
  static final int MEAN = 0;

  /** Where the mean of the newest coat, the skin, the top cell and the temperatures begin. */
  final int newest;

  final int skin;
  final int top;
  final int film;
  final int wood;
  private final int size;

  private final FilmGrid grid;
  private double[] start;
  private double[] startRate;
  private double[] end;
  private double[] endRate;
  private double stepS;

  /** The moment last asked for. */
  final double[] at;

  Moment(FilmGrid grid) {
    this.grid = grid;
    int ns = grid.species;
    newest = ns;
    skin = 2 * ns;
    top = 3 * ns;
    film = 4 * ns;
    wood = film + 1;
    size = wood + 1;
    start = new double[size];
    startRate = new double[size];
    end = new double[size];
    endRate = new double[size];
    at = new double[size];
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
    System.arraycopy(start, 0, at, 0, size);
  }

  void go(double share) {
    for (int i = 0; i < size; i++) {
      at[i] = RosenbrockStepper.hermite(start[i], startRate[i], end[i], endRate[i], stepS, share);
    }
  }

  double filmAt(double share) {
    return RosenbrockStepper.hermite(
        start[film], startRate[film], end[film], endRate[film], stepS, share);
  }

  /** Only the top cell and the film's temperature. */
  void goTop(double share) {
    for (int i = top; i <= film; i++) {
      at[i] = RosenbrockStepper.hermite(start[i], startRate[i], end[i], endRate[i], stepS, share);
    }
  }

  private void sums(double[] v, double[] out) {
    int ns = grid.species;
    int n = grid.cells;
    for (int s = 0; s < ns; s++) {
      double all = 0;
      double inNewest = 0;
      double inSkin = 0;
      for (int j = 0; j < n; j++) {
        double u = v[j * ns + s];
        double volume = u * grid.thickness[j];
        all += volume;
        inSkin += u * grid.skinShare[j];
        if (j >= grid.newestFrom) {
          inNewest += volume;
        }
      }
      out[MEAN + s] = all / grid.resinM;
      out[newest + s] = inNewest / grid.newestM;
      out[skin + s] = inSkin;
      out[top + s] = v[(n - 1) * ns + s];
    }
    out[film] = v[n * ns];
    out[wood] = v[n * ns + 1];
  }
}
