package coatwright.film;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Watches one coat, and the stack as it stands with that coat on, for everything that has a time.
 */
final class MilestoneTracker {
  private static final int OPEN = 0;
  private static final int TOUCH = 1;
  private static final int RECOAT = 2;
  private static final int RESTED = 3;
  private static final int DRY_HARD = 4;
  private static final int RUB_OUT = 5;
  private static final int WRAP = 6;
  private static final int FULL = 7;
  private static final int KINDS = 8;

  static final double OPEN_SOLIDS = 0.25;
  private static final double GLASS_SCALE_K = 10;
  private static final int MOST_HALVINGS = 60;
  private static final double TIME_TOLERANCE = 1e-7;

  private final FilmParameters.Criteria criteria;
  private final FilmSolution solution;
  private final Moment moment;
  private final boolean[] reached = new boolean[KINDS];
  private final double[] reachedS = new double[KINDS];
  private final double[] before = new double[KINDS];
  private double laidAtS;
  private double timeS;
  private double stepS;
  private AirCursor cursor = AirCursor.still();

  MilestoneTracker(FilmParameters p, FilmSolution solution, Moment moment) {
    criteria = p.criteria();
    this.solution = solution;
    this.moment = moment;
  }

  /** A coat has just gone on; {@link Moment#begin} has been called with the new state. */
  void begin(LaidCoat coat, AirCursor air) {
    laidAtS = coat.atS();
    cursor = air;
    timeS = laidAtS;
    stepS = 0;
    Arrays.fill(reached, false);
    moment.startHere();
    for (int k = 0; k < KINDS; k++) {
      before[k] = excess(k, cursor.tempC(laidAtS));
      if (before[k] <= 0) {
        reached[k] = true;
        reachedS[k] = 0;
      }
    }
    if (!coat.poured().hasOpenTime()) {
      reached[OPEN] = true;
      reachedS[OPEN] = Double.NaN;
    }
  }

  void step(double fromS, double h) {
    timeS = fromS;
    stepS = h;
    moment.go(1);
    double airC = cursor.tempC(fromS + h);
    for (int k = 0; k < KINDS; k++) {
      if (reached[k]) {
        continue;
      }
      double now = excess(k, airC);
      if (now <= 0) {
        reached[k] = true;
        reachedS[k] = fromS - laidAtS + h * crossing(k, before[k], now);
        moment.go(1);
      }
      before[k] = now;
    }
  }

  /** Share of the step at which the excess falls through zero: Illinois' false position. */
  private double crossing(int kind, double atStart, double atEnd) {
    double low = 0;
    double high = 1;
    double fLow = atStart;
    double fHigh = atEnd;
    int side = 0;
    for (int i = 0; i < MOST_HALVINGS && (high - low) * stepS > TIME_TOLERANCE; i++) {
      double s = (fLow * high - fHigh * low) / (fLow - fHigh);
      moment.go(s);
      double value = excess(kind, cursor.tempC(timeS + s * stepS));
      if (value > 0) {
        low = s;
        fLow = value;
        fHigh = side == 1 ? fHigh / 2 : fHigh;
        side = 1;
      } else {
        high = s;
        fHigh = value;
        fLow = side == -1 ? fLow / 2 : fLow;
        side = -1;
        if (value == 0) {
          break;
        }
      }
    }
    return high;
  }

  /** How far the film at the moment is from the milestone; zero or less once it is there. */
  private double excess(int kind, double airC) {
    double air = airC + Species.KELVIN;
    return switch (kind) {
      case OPEN -> OPEN_SOLIDS - 1 / (1 + solution.liquid(moment.at, moment.newest));
      case TOUCH -> moment.at[moment.film] - glass(moment.skin) - criteria.touchXK();
      case RECOAT -> air - glass(Moment.MEAN) - criteria.recoatXK();
      case RESTED -> air - glass(Moment.MEAN) - criteria.restedXK();
      case DRY_HARD -> air - glass(Moment.MEAN) - criteria.dryHardXK();
      case RUB_OUT -> hardness(criteria.rubOutResidue(), air);
      case WRAP -> hardness(criteria.wrapResidue(), air);
      default -> residue() / criteria.fullResidue() - 1;
    };
  }

  private double hardness(double wanted, double airK) {
    double soft = (criteria.aboveRoomK() - (glass(Moment.MEAN) - airK)) / GLASS_SCALE_K;
    return Math.max(residue() / wanted - 1, soft);
  }

  private double residue() {
    return solution.residue(moment.at, Moment.MEAN);
  }

  private double glass(int part) {
    return solution.glassK(moment.at, part);
  }

  /** Softness of the stack at the start of the next step, K. */
  double softnessNow(double airC) {
    moment.startHere();
    return airC + Species.KELVIN - glass(Moment.MEAN);
  }

  OptionalDouble openS() {
    return time(OPEN);
  }

  OptionalDouble touchS() {
    return time(TOUCH);
  }

  OptionalDouble recoatS() {
    return time(RECOAT);
  }

  OptionalDouble restedS() {
    return time(RESTED);
  }

  OptionalDouble dryHardS() {
    return time(DRY_HARD);
  }

  OptionalDouble rubOutS() {
    return time(RUB_OUT);
  }

  OptionalDouble wrapS() {
    return time(WRAP);
  }

  OptionalDouble fullS() {
    return time(FULL);
  }

  private OptionalDouble time(int kind) {
    return reached[kind] && !Double.isNaN(reachedS[kind])
        ? OptionalDouble.of(reachedS[kind])
        : OptionalDouble.empty();
  }
}
