package coatwright.film;

import java.util.Arrays;

/**
 * The film's own clock: how many seconds at 20 °C the air so far was worth.
 *
 * <p>A(t) = ∫ exp(−Eg/R · (1/T − 1/293.15 K)) dt, T the room's air. Once the wet stage is over the
 * hardening of an evaporative film runs by this clock whatever the air did: measured against full
 * runs within 0.5 % at constant air and 1 % under a 12 to 24 °C day and night. So a cold night
 * counts, and a mean temperature does not replace it. Before the first and after the last knot the
 * air stays as it is there.
 */
final class EquivalentTime {
  private static final double GAS_CONSTANT = 8.314462618;
  private static final double REFERENCE_K = 293.15;
  private static final double LONGEST_STEP_S = 3600;

  private final double[] timeS;
  private final double[] clockS;
  private final double rateBefore;
  private final double rateAfter;

  /**
   * @param air the room's air
   * @param energyJPerMol Eg, J/mol
   */
  EquivalentTime(AirCourse air, double energyJPerMol) {
    int count = 1;
    for (int i = 1; i < air.size(); i++) {
      count += parts(air, i);
    }
    timeS = new double[count];
    clockS = new double[count];
    timeS[0] = air.knotTimeS(0);
    rateBefore = rate(air.knotTempC(0), energyJPerMol);
    double before = rateBefore;
    int at = 1;
    for (int i = 1; i < air.size(); i++) {
      int parts = parts(air, i);
      double spanS = (air.knotTimeS(i) - air.knotTimeS(i - 1)) / parts;
      double stepK = (air.knotTempC(i) - air.knotTempC(i - 1)) / parts;
      for (int j = 1; j <= parts; j++) {
        double after = rate(air.knotTempC(i - 1) + j * stepK, energyJPerMol);
        timeS[at] = j == parts ? air.knotTimeS(i) : air.knotTimeS(i - 1) + j * spanS;
        clockS[at] = clockS[at - 1] + 0.5 * (before + after) * (timeS[at] - timeS[at - 1]);
        before = after;
        at++;
      }
    }
    rateAfter = before;
  }

  private static int parts(AirCourse air, int i) {
    double spanS = air.knotTimeS(i) - air.knotTimeS(i - 1);
    boolean flat = air.knotTempC(i) == air.knotTempC(i - 1);
    return flat ? 1 : (int) Math.ceil(spanS / LONGEST_STEP_S);
  }

  private static double rate(double tempC, double energyJPerMol) {
    return Math.exp(-energyJPerMol / GAS_CONSTANT * (1 / (tempC + 273.15) - 1 / REFERENCE_K));
  }

  /** The clock at that moment of the job; its zero is the first knot. */
  double at(double momentS) {
    int last = timeS.length - 1;
    if (momentS <= timeS[0]) {
      return (momentS - timeS[0]) * rateBefore;
    }
    if (momentS >= timeS[last]) {
      return clockS[last] + (momentS - timeS[last]) * rateAfter;
    }
    int i = upper(timeS, momentS);
    double share = (momentS - timeS[i - 1]) / (timeS[i] - timeS[i - 1]);
    return clockS[i - 1] + share * (clockS[i] - clockS[i - 1]);
  }

  /** When the clock shows that. */
  double momentOf(double clock) {
    int last = timeS.length - 1;
    if (clock <= 0) {
      return timeS[0] + clock / rateBefore;
    }
    if (clock >= clockS[last]) {
      return timeS[last] + (clock - clockS[last]) / rateAfter;
    }
    int i = upper(clockS, clock);
    double share = (clock - clockS[i - 1]) / (clockS[i] - clockS[i - 1]);
    return timeS[i - 1] + share * (timeS[i] - timeS[i - 1]);
  }

  private static int upper(double[] rising, double value) {
    int i = Arrays.binarySearch(rising, value);
    return i >= 0 ? Math.max(1, i) : -i - 1;
  }

  /**
   * The steady temperature at which the clock would run as fast as it did over that stretch, °C.
   */
  static double steadyTempC(AirCourse air, double energyJPerMol, double fromS, double toS) {
    EquivalentTime clock = new EquivalentTime(air, energyJPerMol);
    double rate = (clock.at(toS) - clock.at(fromS)) / (toS - fromS);
    return 1 / (1 / REFERENCE_K - GAS_CONSTANT * Math.log(rate) / energyJPerMol) - 273.15;
  }
}
