package coatwright.climate.forecast;

/**
 * Several ways to forecast the same thing, mixed by how well each of them did of late: weights go
 * with a power of the inverse mean square error, for every lead by itself. Errors fade.
 */
final class Contest {
  /** Verdicts by which a first guess of each way's worth is outweighed. */
  private static final double FIRST_GUESS = 6;

  private static final double TINY = 1e-12;

  private final double[] firstRatio;
  private final int power;
  private final double kept;
  private final double[][] squares;
  private final double[] seen;

  /**
   * @param leads how many hours ahead
   * @param power of the inverse mean square error
   * @param memoryH hours over which an error fades to 1/e
   * @param firstRatio mean square errors to begin with, as multiples of the first way's
   */
  Contest(int leads, int power, double memoryH, double... firstRatio) {
    this.power = power;
    this.firstRatio = firstRatio.clone();
    kept = Math.exp(-1 / memoryH);
    squares = new double[leads][firstRatio.length];
    seen = new double[leads];
  }

  /** How far each way was off at a lead. */
  void verdict(int lead, double[] errors) {
    for (int way = 0; way < firstRatio.length; way++) {
      squares[lead][way] = kept * squares[lead][way] + errors[way] * errors[way];
    }
    seen[lead] = kept * seen[lead] + 1;
  }

  /** The mixture of what the ways say. */
  double mixed(int lead, double[] values) {
    double base = seen[lead] > 0 ? squares[lead][0] / seen[lead] : 1;
    double sum = 0;
    double weights = 0;
    for (int way = 0; way < firstRatio.length; way++) {
      double meanSquare =
          (FIRST_GUESS * firstRatio[way] * base + squares[lead][way]) / (FIRST_GUESS + seen[lead]);
      double weight = power(base / (meanSquare + TINY * base + Double.MIN_NORMAL));
      sum += weight * values[way];
      weights += weight;
    }
    return weights > 0 && Double.isFinite(weights) ? sum / weights : values[0];
  }

  private double power(double ratio) {
    double product = ratio;
    for (int i = 1; i < power; i++) {
      product *= ratio;
    }
    return product;
  }
}
