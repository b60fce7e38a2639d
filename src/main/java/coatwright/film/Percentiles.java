package coatwright.film;

import java.util.Arrays;
import java.util.Comparator;
import java.util.OptionalDouble;

/** Tenth, fiftieth and ninetieth percentile of the ensemble; an absent one is not reached. */
public record Percentiles(OptionalDouble p10, OptionalDouble p50, OptionalDouble p90) {

  /** Nothing known, or never reached. */
  public static final Percentiles NONE =
      new Percentiles(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

  static Percentiles of(double[] values, double[] weights) {
    int[] order = rising(values);
    return new Percentiles(
        quantile(values, weights, order, 0.1),
        quantile(values, weights, order, 0.5),
        quantile(values, weights, order, 0.9));
  }

  /**
   * The weighted quantile, straight between the middles of neighbouring weights; absent where it
   * falls on a value that is infinite.
   */
  static OptionalDouble quantile(double[] values, double[] weights, double share) {
    return quantile(values, weights, rising(values), share);
  }

  private static int[] rising(double[] values) {
    Integer[] order = new Integer[values.length];
    for (int i = 0; i < order.length; i++) {
      order[i] = i;
    }
    Arrays.sort(order, Comparator.comparingDouble(i -> values[i]));
    return Arrays.stream(order).mapToInt(Integer::intValue).toArray();
  }

  private static OptionalDouble quantile(
      double[] values, double[] weights, int[] order, double share) {
    double total = 0;
    for (double weight : weights) {
      total += weight;
    }
    double sum = 0;
    double before = 0;
    double middleBefore = 0;
    for (int i = 0; i < order.length; i++) {
      double weight = weights[order[i]] / total;
      double middle = sum + 0.5 * weight;
      double value = values[order[i]];
      if (middle >= share) {
        boolean first = i == 0 || middle == middleBefore;
        double part = first ? 1 : (share - middleBefore) / (middle - middleBefore);
        double found = first ? value : before + part * (value - before);
        return Double.isFinite(found) ? OptionalDouble.of(found) : OptionalDouble.empty();
      }
      sum += weight;
      before = value;
      middleBefore = middle;
    }
    return Double.isFinite(before) ? OptionalDouble.of(before) : OptionalDouble.empty();
  }

  /** The same, each through a function that keeps their order. */
  Percentiles map(java.util.function.DoubleUnaryOperator f) {
    return new Percentiles(map(p10, f), map(p50, f), map(p90, f));
  }

  private static OptionalDouble map(OptionalDouble v, java.util.function.DoubleUnaryOperator f) {
    return v.isPresent() ? OptionalDouble.of(f.applyAsDouble(v.getAsDouble())) : v;
  }
}
