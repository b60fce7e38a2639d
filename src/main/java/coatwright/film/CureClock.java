package coatwright.film;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;

/**
 * A clock that runs as fast as a rate, straight between the nodes of the air and constant after the
 * last. It is wound only as far as it is asked.
 */
final class CureClock {
  private final CureAir air;
  private final IntToDoubleFunction ratePerS;
  private final double[] rate;
  private final double[] worth;
  private int done;

  /**
   * @param ratePerS what a second at a node is worth, 0 or more
   */
  CureClock(CureAir air, IntToDoubleFunction ratePerS) {
    this.air = air;
    this.ratePerS = ratePerS;
    this.rate = new double[air.size()];
    this.worth = new double[air.size()];
    rate[0] = ratePerS.applyAsDouble(0);
  }

  /** What it showed at a moment; its zero is the first node, and so is any moment before. */
  double at(double momentS) {
    if (momentS <= air.timeS(0)) {
      return 0;
    }
    while (done < air.size() - 1 && air.timeS(done) < momentS) {
      wind();
    }
    if (momentS >= air.timeS(done)) {
      return worth[done] + rate[done] * (momentS - air.timeS(done));
    }
    int after = upper(momentS);
    double part = momentS - air.timeS(after - 1);
    double slope = (rate[after] - rate[after - 1]) / (air.timeS(after) - air.timeS(after - 1));
    return worth[after - 1] + part * (rate[after - 1] + 0.5 * slope * part);
  }

  private int upper(double momentS) {
    int low = 0;
    int high = done;
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      if (air.timeS(middle) <= momentS) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /** Seconds from a moment until it has gone on by so much; infinite where it stands still. */
  double secondsFor(double fromS, double goesOnBy) {
    if (goesOnBy <= 0) {
      return 0;
    }
    double target = at(fromS) + goesOnBy;
    while (done < air.size() - 1 && worth[done] < target) {
      wind();
    }
    if (worth[done] < target) {
      double left = target - worth[done];
      return rate[done] > 0
          ? air.timeS(done) + left / rate[done] - fromS
          : Double.POSITIVE_INFINITY;
    }
    int found = Arrays.binarySearch(worth, 0, done + 1, target);
    int after = found >= 0 ? found : -found - 1;
    if (after == 0) {
      return air.timeS(0) - fromS;
    }
    return air.timeS(after - 1) + within(after, target - worth[after - 1]) - fromS;
  }

  /** Root of rate0 t + slope t²/2 = part between two nodes, in the form that loses no digits. */
  private double within(int after, double part) {
    double spanS = air.timeS(after) - air.timeS(after - 1);
    double first = rate[after - 1];
    double slope = (rate[after] - first) / spanS;
    double root = Math.sqrt(Math.max(0, first * first + 2 * slope * part));
    return Math.min(spanS, 2 * part / (first + root));
  }

  private void wind() {
    int next = done + 1;
    rate[next] = ratePerS.applyAsDouble(next);
    worth[next] =
        worth[done] + 0.5 * (rate[done] + rate[next]) * (air.timeS(next) - air.timeS(done));
    done = next;
  }
}
