package coatwright.climate.forecast;

import coatwright.air.SaturationPressure;
import java.util.Arrays;
import java.util.List;

/**
 * A room's air over the hours after one: its middle, and members that each are one course it may
 * take. Leads count from 1; lead 1 is the hour after the last that was known.
 */
public final class HourlyForecast {
  /** Hours ahead. */
  public static final int LEADS = SeriesModel.LEADS;

  /** Standard deviations from the middle of a normal law to its ninetieth percentile. */
  static final double NINETY_SDS = 1.2815515655;

  /** What the forecast rests on. */
  public enum Basis {
    /** Less than a day is known: the air is taken to stay as it is. */
    STAYS,
    /** Less than nine weeks: the range is still partly assumed. */
    LEARNING,
    /** The room's own past errors make the range. */
    OWN_ERRORS
  }

  private static final double COLDEST_C = -40;
  private static final double WARMEST_C = 60;

  /** Of saturation; no shop is drier. */
  private static final double DRIEST = 0.02;

  private final long hour;
  private final Basis basis;
  private final double[] tempC;
  private final double[] vapourPa;
  private final double[][] memberTempC;
  private final double[][] memberVapourPa;

  HourlyForecast(
      long hour, Basis basis, double[] tempC, double[] lnVapour, List<ErrorPaths.Path> errors) {
    this.hour = hour;
    this.basis = basis;
    this.tempC = new double[LEADS + 1];
    this.vapourPa = new double[LEADS + 1];
    this.memberTempC = new double[errors.size()][LEADS + 1];
    this.memberVapourPa = new double[errors.size()][LEADS + 1];
    for (int lead = 1; lead <= LEADS; lead++) {
      put(this.tempC, this.vapourPa, lead, tempC[lead], lnVapour[lead]);
      for (int i = 0; i < errors.size(); i++) {
        ErrorPaths.Path path = errors.get(i);
        put(
            memberTempC[i],
            memberVapourPa[i],
            lead,
            tempC[lead] + path.temp()[lead],
            lnVapour[lead] + path.lnVapour()[lead]);
      }
    }
  }

  /** Air holds no more than all, and some; the sum of two forecasts may ask for otherwise. */
  private static void put(double[] temp, double[] vapour, int lead, double tempC, double lnPa) {
    temp[lead] = Math.min(WARMEST_C, Math.max(COLDEST_C, tempC));
    double saturatedPa = SaturationPressure.overWaterPa(temp[lead]);
    vapour[lead] = Math.min(saturatedPa, Math.max(DRIEST * saturatedPa, Math.exp(lnPa)));
  }

  /** The last hour known, hours since 1970. */
  public long hour() {
    return hour;
  }

  public Basis basis() {
    return basis;
  }

  /** Middle of the hour's mean temperature, °C. */
  public double tempC(int lead) {
    return tempC[lead];
  }

  /** Middle of the hour's mean vapour pressure, Pa. */
  public double vapourPa(int lead) {
    return vapourPa[lead];
  }

  /** How many courses there are. */
  public int members() {
    return memberTempC.length;
  }

  public double tempC(int member, int lead) {
    return memberTempC[member][lead];
  }

  public double vapourPa(int member, int lead) {
    return memberVapourPa[member][lead];
  }

  /**
   * How far a share of the members is to be drawn towards how often that hour was so in the last 30
   * days: 0.3 from a day ahead on, 0.6 three days ahead, less before. Of the weights tried on two
   * simulated rooms and an outdoor year these made what is said and what is seen agree best, and
   * left no lead worse than the 30 days by themselves.
   *
   * @param aheadH hours ahead, 0 or more
   */
  public static double towardsUsual(double aheadH) {
    double later = Math.min(1, Math.max(0, (aheadH - 24) / 48));
    return 0.3 * Math.min(1, aheadH / 24) + 0.3 * later;
  }

  /** A quantile of some values, straight between two of them; the values stay as they are. */
  public static double quantile(double[] values, double share) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    double at = share * (sorted.length - 1);
    int below = (int) at;
    int above = Math.min(sorted.length - 1, below + 1);
    return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
  }
}
