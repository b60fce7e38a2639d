package coatwright.film;

/**
 * Watches the newest coat's first hour: highest blush number, coldest film, narrowest dew margin.
 */
final class CloudingTracker {
  static final double WINDOW_S = 3600;

  /** Before this the film's temperature is the liquid's, not the weather's doing. */
  private static final double SETTLED_S = 5;

  private static final double NEAR_S = 0.7;
  private static final int LOOKS = 4;
  private static final int NARROWINGS = 24;
  private static final double GOLDEN = 0.6180339887498949;

  private final FilmSolution solution;
  private final Moment moment;
  private final FilmEquations equations;

  private double laidAtS;
  private double topAtEnd;
  private double steadyDewC;
  private double dewSetAtS;

  double jarS;
  double peakS;
  double peakAfterS;
  double waterPeak;
  double waterLimit;
  double filmLowK;
  double filmLowAfterS;
  double dewAtLowC;
  double marginK;

  CloudingTracker(FilmSolution solution, Moment moment, FilmEquations equations) {
    this.solution = solution;
    this.moment = moment;
    this.equations = equations;
  }

  void begin(double atS) {
    laidAtS = atS;
    moment.startHere();
    jarS = blush();
    peakS = -1;
    peak(0);
    filmLowK = Double.POSITIVE_INFINITY;
    marginK = Double.POSITIVE_INFINITY;
    filmLowAfterS = 0;
    dewSetAtS = Double.NaN;
    dewAtLowC = dewC(atS);
  }

  /**
   * A short run may end before the film has settled: then its state at the end is what there is.
   */
  void close(double atS, double filmK) {
    if (Double.isInfinite(filmLowK)) {
      filmLowK = filmK;
      filmLowAfterS = atS - laidAtS;
      dewAtLowC = dewC(atS);
      marginK = filmK - Species.KELVIN - dewAtLowC;
    }
  }

  void step(double fromS, double h) {
    double after = fromS - laidAtS;
    if (after >= WINDOW_S) {
      topAtEnd = 0;
      return;
    }
    double last = Math.min(1, (WINDOW_S - after) / h);
    double best = -1;
    for (int i = 1; i <= LOOKS; i++) {
      double s = last * i / LOOKS;
      moment.goTop(s);
      if (blush() > peakS) {
        peak(after + s * h);
        best = s;
      }
    }
    topAtEnd = blush();
    if (best > 0 && best < last) {
      refinePeak(best - last / LOOKS, best + last / LOOKS, after, h);
    }
    if (after + h > SETTLED_S) {
      coldest(fromS, h, Math.max(0, (SETTLED_S - after) / h), last);
    }
  }

  private void coldest(double fromS, double h, double first, double last) {
    double best = -1;
    double width = (last - first) / LOOKS;
    for (int i = 0; i <= LOOKS; i++) {
      double s = first + width * i;
      double k = moment.filmAt(s);
      double dew = dewC(fromS + s * h);
      marginK = Math.min(marginK, k - Species.KELVIN - dew);
      if (k < filmLowK) {
        cold(k, fromS + s * h, dew);
        best = s;
      }
    }
    if (best <= first || best >= last) {
      return;
    }
    double low = best - width;
    double high = best + width;
    for (int i = 0; i < NARROWINGS; i++) {
      double a = high - GOLDEN * (high - low);
      double b = low + GOLDEN * (high - low);
      if (moment.filmAt(a) < moment.filmAt(b)) {
        high = b;
      } else {
        low = a;
      }
    }
    double s = 0.5 * (low + high);
    double k = moment.filmAt(s);
    if (k < filmLowK) {
      double dew = dewC(fromS + s * h);
      cold(k, fromS + s * h, dew);
      marginK = Math.min(marginK, k - Species.KELVIN - dew);
    }
  }

  private void cold(double filmK, double atS, double dewC) {
    filmLowK = filmK;
    filmLowAfterS = atS - laidAtS;
    dewAtLowC = dewC;
  }

  private void refinePeak(double from, double to, double after, double h) {
    double low = from;
    double high = to;
    for (int i = 0; i < NARROWINGS; i++) {
      double a = high - GOLDEN * (high - low);
      double b = low + GOLDEN * (high - low);
      moment.goTop(a);
      double atA = blush();
      moment.goTop(b);
      if (atA > blush()) {
        high = b;
      } else {
        low = a;
      }
    }
    double s = 0.5 * (low + high);
    moment.goTop(s);
    if (blush() > peakS) {
      peak(after + s * h);
    }
  }

  private void peak(double afterS) {
    peakAfterS = afterS;
    waterPeak = solution.waterFraction(moment.at, moment.top);
    waterLimit = solution.waterLimit(moment.at, moment.top);
    peakS = waterPeak / waterLimit;
  }

  /** Whether the top cell is close to giving way at the end of the step last seen. */
  boolean near() {
    return topAtEnd > NEAR_S;
  }

  private double blush() {
    boolean counts = solution.canCloud(moment.at, moment.top, moment.at[moment.film]);
    return counts ? solution.blush(moment.at, moment.top) : 0;
  }

  private double dewC(double atS) {
    boolean changing = equations.climateChanging();
    if (changing || Double.isNaN(dewSetAtS)) {
      equations.airAt(atS);
      steadyDewC = equations.gas.dewPointC();
      dewSetAtS = changing ? Double.NaN : atS;
    }
    return steadyDewC;
  }
}
