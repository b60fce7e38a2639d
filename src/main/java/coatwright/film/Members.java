package coatwright.film;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Where the members of the ensemble stand, in standard deviations along every axis, and what weight
 * each has after the tests that were made.
 *
 * <p>Drawn from a fixed seed, stratified along every axis and in mirrored pairs, so that before any
 * test the median of anything that goes straight with the inputs is the answer of the model itself.
 */
final class Members {
  private static final long SEED = 0x5eedc0a7L;

  /**
   * Share of a resampled member that is its parent's; the rest is pulled to the mean and redrawn.
   */
  private static final double KEPT = 0.95;

  final int count;
  private final int axes;
  private double[][] z;
  private double[] weight;

  /**
   * Members of the spirit film's ensemble.
   *
   * @param count even
   */
  Members(int count) {
    this(count, Axis.values().length);
  }

  /**
   * @param count even
   * @param axes along how many
   */
  Members(int count, int axes) {
    this.count = count;
    this.axes = axes;
    this.z = new double[count][axes];
    this.weight = new double[count];
    Arrays.fill(weight, 1.0 / count);
    int half = count / 2;
    for (int axis = 0; axis < axes; axis++) {
      SplittableRandom random = new SplittableRandom(SEED + 7919L * axis);
      int[] order = shuffled(half, random);
      for (int i = 0; i < half; i++) {
        double chance = (order[i] + random.nextDouble()) / half;
        double drawn = NormalLaw.quantile(Math.min(1 - 1e-6, Math.max(1e-6, chance)));
        z[i][axis] = drawn;
        z[half + i][axis] = -drawn;
      }
    }
  }

  private static int[] shuffled(int n, SplittableRandom random) {
    int[] order = new int[n];
    for (int i = 0; i < n; i++) {
      order[i] = i;
    }
    for (int i = n - 1; i > 0; i--) {
      int j = random.nextInt(i + 1);
      int kept = order[i];
      order[i] = order[j];
      order[j] = kept;
    }
    return order;
  }

  double z(int member, Axis axis) {
    return z[member][axis.index()];
  }

  double z(int member, int axis) {
    return z[member][axis];
  }

  double[] weights() {
    return weight.clone();
  }

  /** How many members of equal weight would say as much: 1 / Σ w². */
  double effective() {
    double sum = 0;
    for (double w : weight) {
      sum += w * w;
    }
    return 1 / sum;
  }

  /** Multiplies the weights; where too few members carry them, draws the members anew. */
  void weigh(double[] likelihood, int test) {
    double total = 0;
    for (int i = 0; i < count; i++) {
      weight[i] *= likelihood[i];
      total += weight[i];
    }
    for (int i = 0; i < count; i++) {
      weight[i] /= total;
    }
    if (effective() < count / 3.0) {
      resample(new SplittableRandom(SEED ^ (0x9e3779b97f4a7c15L * (test + 1))));
    }
  }

  /**
   * Systematic resampling with jitter. Parents are drawn in toward the weighted mean so that the
   * jitter does not widen what the tests have narrowed.
   */
  private void resample(SplittableRandom random) {
    double[] mean = new double[axes];
    double[] sd = new double[axes];
    moments(mean, sd);
    double[][] drawn = new double[count][axes];
    double next = random.nextDouble() / count;
    double sum = 0;
    int filled = 0;
    for (int i = 0; i < count; i++) {
      sum += weight[i];
      while (filled < count && (next <= sum || i == count - 1)) {
        for (int axis = 0; axis < axes; axis++) {
          double pulled = KEPT * z[i][axis] + (1 - KEPT) * mean[axis];
          drawn[filled][axis] =
              pulled + Math.sqrt(1 - KEPT * KEPT) * sd[axis] * random.nextGaussian();
        }
        filled++;
        next += 1.0 / count;
      }
    }
    z = drawn;
    Arrays.fill(weight, 1.0 / count);
  }

  private void moments(double[] mean, double[] sd) {
    for (int axis = 0; axis < axes; axis++) {
      double first = 0;
      double second = 0;
      for (int i = 0; i < count; i++) {
        first += weight[i] * z[i][axis];
        second += weight[i] * z[i][axis] * z[i][axis];
      }
      mean[axis] = first;
      sd[axis] = Math.sqrt(Math.max(0, second - first * first));
    }
  }

  /** Weighted variance along an axis; 1 before any test. */
  double variance(Axis axis) {
    double[] mean = new double[axes];
    double[] sd = new double[axes];
    moments(mean, sd);
    return sd[axis.index()] * sd[axis.index()];
  }
}
