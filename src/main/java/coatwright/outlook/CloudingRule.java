package coatwright.outlook;

import coatwright.outlook.Outlook.CloudingLevel;

/**
 * When clouding is expected, in one place: of a coat about to be laid, of an hour to come, and of a
 * coat that is looked back upon. The figures are ours.
 */
public final class CloudingRule {
  /** Wood nearer its dew point than this is clouding by itself, K. */
  public static final double LEAST_SPREAD_K = 1;

  /** From this water ratio on clouding is likely, where the film gets below the dew point. */
  public static final double LIKELY_S = 1.2;

  /** At this water ratio the resin gives way. */
  public static final double LIMIT_S = 1;

  private CloudingRule() {}

  /**
   * How far clouding is to be expected.
   *
   * @param spreadK wood less dew point, K
   * @param s50 median of the film's water over the water at which the resin gives way, at its peak
   * @param s90 the same, one time in ten
   * @param marginK the film at its coldest less the dew point, K
   */
  public static CloudingLevel level(double spreadK, double s50, double s90, double marginK) {
    if (spreadK < LEAST_SPREAD_K || (s50 >= LIKELY_S && marginK <= 0)) {
      return CloudingLevel.LIKELY;
    }
    return s90 >= LIMIT_S ? CloudingLevel.POSSIBLE : CloudingLevel.NONE_EXPECTED;
  }
}
