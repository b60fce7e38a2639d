package coatwright.climate.forecast;

/**
 * How far a young room's forecasts may be off: a spread that grows with the lead as that of a
 * quantity which wanders about a mean and forgets within 36 h, times a scale learned from the
 * errors seen so far. What no lead has shown yet takes the scale of the longest that has.
 */
final class FirstSpread {
  /** A wandering quantity's correlation falls to 1/e in this time; our own assumption. */
  static final double FORGETS_H = 36;

  /** Weight of the unscaled spread against errors seen. */
  private static final double DOUBT = 6;

  private static final double KEPT = Math.exp(-1 / (45 * 24.0));

  private final double sd0;
  private final double[] squares = new double[SeriesModel.LEADS + 1];
  private final double[] counts = new double[SeriesModel.LEADS + 1];

  /**
   * @param sd0 spread of a room nothing is known of, long ahead
   */
  FirstSpread(double sd0) {
    this.sd0 = sd0;
  }

  void verdict(int lead, double error) {
    double r = error / unscaled(lead);
    squares[lead] = KEPT * squares[lead] + r * r / lead;
    counts[lead] = KEPT * counts[lead] + 1.0 / lead;
  }

  private double unscaled(int lead) {
    return sd0 * Math.sqrt(1 - Math.exp(-2 * lead / FORGETS_H));
  }

  /**
   * Standard deviation for every lead; the first entry is not used.
   *
   * @param leastScale nothing below it is believed yet: the calm hours of a first night say little
   *     of the day to come
   */
  double[] sds(double leastScale) {
    double[] sds = new double[SeriesModel.LEADS + 1];
    double scale = 1;
    for (int lead = 1; lead <= SeriesModel.LEADS; lead++) {
      if (counts[lead] > 0) {
        scale = Math.sqrt((DOUBT + squares[lead]) / (DOUBT + counts[lead]));
      }
      sds[lead] = Math.max(leastScale, scale) * unscaled(lead);
    }
    return sds;
  }
}
