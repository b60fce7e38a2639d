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
  /** The film as described, beside the drawn ones. */
  static final int MIDDLE = -1;

  private static final long SEED = 20_261_125L;

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
   * @param shop where this shop's films start from
   */
  Members(int count, ShopPrior shop) {
    this(count, Axis.values().length, SEED);
    for (double[] member : z) {
      shop.place(member);
    }
  }

  /**
   * Members of an ensemble along axes of its own.
   *
   * @param count even
   * @param axes along how many
   */
  Members(int count, int axes) {
    this(count, axes, SEED);
  }

  /** Moves every member where a shop's own films start from, along its two hardening axes. */
  void place(ShopPrior shop, int pace, int own) {
    for (double[] member : z) {
      shop.place(member, pace, own);
    }
  }

  private Members(int count, int axes, long seed) {
    this.count = count;
    this.axes = axes;
    this.z = new double[count][axes];
    this.weight = new double[count];
    Arrays.fill(weight, 1.0 / count);
    int half = count / 2;
    for (int axis = 0; axis < axes; axis++) {
      SplittableRandom random = new SplittableRandom(seed + 7919L * axis);
      int[] order = shuffled(half, random);
      for (int i = 0; i < half; i++) {
        double chance = (order[i] + random.nextDouble()) / half;
        z[i][axis] = NormalLaw.quantile(Math.min(1 - 1e-6, Math.max(1e-6, chance)));
      }
    }
    separate(half);
    for (int i = 0; i < half; i++) {
      for (int axis = 0; axis < axes; axis++) {
        z[half + i][axis] = -z[i][axis];
      }
    }
  }

  /**
   * Takes the chance likeness between axes out of the draw and brings every axis to variance 1
   * (Gram and Schmidt, axis by axis): with a hundred draws it would reach a tenth and widen or
   * narrow every range by it.
   */
  private void separate(int half) {
    for (int axis = 0; axis < axes; axis++) {
      for (int earlier = 0; earlier < axis; earlier++) {
        double likeness = 0;
        for (int i = 0; i < half; i++) {
          likeness += z[i][axis] * z[i][earlier] / half;
        }
        for (int i = 0; i < half; i++) {
          z[i][axis] -= likeness * z[i][earlier];
        }
      }
      double square = 0;
      for (int i = 0; i < half; i++) {
        square += z[i][axis] * z[i][axis] / half;
      }
      for (int i = 0; i < half; i++) {
        z[i][axis] /= Math.sqrt(square);
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

  double[][] raw() {
    return z;
  }

  double z(int member, Axis axis) {
    return z(member, axis.index());
  }

  double z(int member, int axis) {
    return member == MIDDLE ? 0 : z[member][axis];
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

  /** Multiplies the weights and leaves the members where they are. */
  void weighInPlace(double[] likelihood) {
    double total = 0;
    for (int i = 0; i < count; i++) {
      weight[i] *= likelihood[i];
      total += weight[i];
    }
    for (int i = 0; i < count; i++) {
      weight[i] /= total;
    }
  }

  /**
   * Raises all weights to one power, below 1, so that so many members still speak: what so few
   * carry would be chance, not knowledge.
   */
  void temper(double leastEffective) {
    double[] full = weight.clone();
    double power = 1;
    while (effective() < leastEffective && power > 0.05) {
      power *= 0.85;
      double total = 0;
      for (int i = 0; i < count; i++) {
        weight[i] = Math.pow(full[i], power);
        total += weight[i];
      }
      for (int i = 0; i < count; i++) {
        weight[i] /= total;
      }
    }
  }

  /** Multiplies the weights; where too few members carry them, draws the members anew. */
  void weigh(double[] likelihood, int test) {
    weighInPlace(likelihood);
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

  /** Mean and covariance along two axes as the weights stand. */
  Lesson.Spread spread(Axis one, Axis other) {
    return spread(one.index(), other.index());
  }

  /** The same by the axes' places. */
  Lesson.Spread spread(int one, int other) {
    double first = 0;
    double second = 0;
    double firstFirst = 0;
    double both = 0;
    double secondSecond = 0;
    for (int i = 0; i < count; i++) {
      double a = z[i][one];
      double b = z[i][other];
      first += weight[i] * a;
      second += weight[i] * b;
      firstFirst += weight[i] * a * a;
      both += weight[i] * a * b;
      secondSecond += weight[i] * b * b;
    }
    return new Lesson.Spread(
        first,
        second,
        firstFirst - first * first,
        both - first * second,
        secondSecond - second * second);
  }

  /** Weighted variance along an axis; 1 before any test in an untaught shop. */
  double variance(Axis axis) {
    double[] mean = new double[axes];
    double[] sd = new double[axes];
    moments(mean, sd);
    return sd[axis.index()] * sd[axis.index()];
  }
}
