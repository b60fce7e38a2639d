package coatwright.film;

/**
 * Drops knots of an air course as {@link SwingingDoor} does, and keeps the film's own clock ({@link
 * EquivalentTime}): what it counts up to any knot differs from what it counts along the thinned
 * course by no more than a budget, however long the record. Small errors on one side would add up
 * otherwise, day after day: the door alone moved rub-out dates of six coats by up to 0.004 d, this
 * one by up to 0.0008 d where a thousandth was allowed. Humidity is held the same way. A date that
 * waits for a cooler room, not for the last of the solvent, is not covered.
 */
final class ClockedThinning {
  /** A point of humidity for an hour, fraction times seconds. */
  private static final double MOST_RH_S = 36;

  private static final double GAS_CONSTANT = 8.314462618;
  private static final double REFERENCE_K = 293.15;

  private final AirCourse air;
  private final double energyJPerMol;
  private final double budgetS;

  /** The clock and the humidity counted up to each knot. */
  private final double[] clockS;

  private final double[] rhS;

  ClockedThinning(AirCourse air, double energyJPerMol, double mostShiftS) {
    this.air = air;
    this.energyJPerMol = energyJPerMol;
    int n = air.size();
    clockS = new double[n];
    rhS = new double[n];
    double slowest = rate(air.knotTempC(0));
    for (int i = 1; i < n; i++) {
      double dt = air.knotTimeS(i) - air.knotTimeS(i - 1);
      clockS[i] = clockS[i - 1] + dt * meanRate(air.knotTempC(i - 1), air.knotTempC(i));
      rhS[i] = rhS[i - 1] + 0.5 * dt * (air.knotRhFraction(i - 1) + air.knotRhFraction(i));
      slowest = Math.min(slowest, rate(air.knotTempC(i)));
    }
    budgetS = mostShiftS * slowest;
  }

  /** How fast the clock runs, 1 at 20 °C. */
  private double rate(double tempC) {
    return Math.exp(
        -energyJPerMol / GAS_CONSTANT * (1 / (tempC + Species.KELVIN) - 1 / REFERENCE_K));
  }

  /** Mean along a straight line of temperature, by Simpson's rule. */
  private double meanRate(double fromC, double toC) {
    return (rate(fromC) + 4 * rate(0.5 * (fromC + toC)) + rate(toC)) / 6;
  }

  AirCourse thin(double toleranceK, double toleranceRh) {
    SwingingDoor door = new SwingingDoor(air, toleranceK, toleranceRh);
    int n = air.size();
    int[] kept = new int[n];
    int count = 1;
    int from = 0;
    double clockError = 0;
    double rhError = 0;
    while (from < n - 1) {
      int to = door.farthestTold(from);
      while (to > from + 1 && !keeps(from, to, clockError, rhError)) {
        to = from + (to - from) / 2;
        // The door let a longer line pass; the shorter one must pass on its own.
        while (to > from + 1 && !door.tells(from, to)) {
          to--;
        }
      }
      clockError += lineClockS(from, to, to) - (clockS[to] - clockS[from]);
      rhError += lineRhS(from, to, to) - (rhS[to] - rhS[from]);
      from = to;
      kept[count++] = from;
    }
    return door.only(kept, count);
  }

  /** Whether both counts stay within their budgets at every knot along the line. */
  private boolean keeps(int from, int to, double clockError, double rhError) {
    double line = clockError;
    for (int i = from + 1; i <= to; i++) {
      line += stretchClockS(from, to, i);
      double clock = line - (clockS[i] - clockS[from]);
      double rh = rhError + lineRhS(from, to, i) - (rhS[i] - rhS[from]);
      if (Math.abs(clock) > budgetS || Math.abs(rh) > MOST_RH_S) {
        return false;
      }
    }
    return true;
  }

  private double lineClockS(int from, int to, int at) {
    double sum = 0;
    for (int i = from + 1; i <= at; i++) {
      sum += stretchClockS(from, to, i);
    }
    return sum;
  }

  /** The clock along the line from-to, between knot i − 1 and knot i. */
  private double stretchClockS(int from, int to, int i) {
    double dt = air.knotTimeS(i) - air.knotTimeS(i - 1);
    return dt * meanRate(lineTempC(from, to, i - 1), lineTempC(from, to, i));
  }

  private double lineTempC(int from, int to, int i) {
    return air.knotTempC(from) + share(from, to, i) * (air.knotTempC(to) - air.knotTempC(from));
  }

  private double lineRhS(int from, int to, int i) {
    double at =
        air.knotRhFraction(from)
            + share(from, to, i) * (air.knotRhFraction(to) - air.knotRhFraction(from));
    return 0.5 * (air.knotTimeS(i) - air.knotTimeS(from)) * (air.knotRhFraction(from) + at);
  }

  private double share(int from, int to, int i) {
    return (air.knotTimeS(i) - air.knotTimeS(from)) / (air.knotTimeS(to) - air.knotTimeS(from));
  }
}
