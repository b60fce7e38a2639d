package coatwright.climate.forecast;

import java.util.Arrays;

/**
 * A linear regression that forgets slowly and is pulled back to nought: coefficients solve (A + λ
 * I) x = b, with A and b sums over what was seen, fading. Solved by Cholesky's method, written out
 * here because three times 74 of these small systems are solved every hour and thousands of hours
 * are gone through at a start: it allocates nothing.
 */
final class Ridge {
  /** Days over which what was seen fades to 1/e. */
  private static final double MEMORY_H = 45 * 24;

  private static final double KEPT = Math.exp(-1 / MEMORY_H);

  private final int inputs;
  private final double[] gram;
  private final double[] moment;
  private int active;

  /**
   * @param inputs how many there may be
   * @param own how many there always are; those after are left out until one of them spoke
   */
  Ridge(int inputs, int own) {
    this.inputs = inputs;
    this.active = own;
    gram = new double[inputs * (inputs + 1) / 2];
    moment = new double[inputs];
  }

  /** Learns that these inputs were followed by that value. */
  void learn(double[] input, double value) {
    for (int i = active; i < inputs; i++) {
      if (input[i] != 0) {
        active = inputs;
      }
    }
    int at = 0;
    for (int i = 0; i < active; i++) {
      for (int j = 0; j <= i; j++) {
        gram[at] = KEPT * gram[at] + input[i] * input[j];
        at++;
      }
      moment[i] = KEPT * moment[i] + input[i] * value;
    }
  }

  /**
   * What the coefficients say of these inputs.
   *
   * @param pull λ, above 0
   * @param factor room for the factor, as long as a packed triangle
   * @param solution room for the coefficients
   */
  double value(double[] input, double pull, double[] factor, double[] solution) {
    solve(pull, factor, solution);
    double sum = 0;
    for (int i = 0; i < active; i++) {
      sum += solution[i] * input[i];
    }
    return sum;
  }

  /** Coefficients, the first ones; the rest are 0. */
  void solve(double pull, double[] factor, double[] x) {
    Arrays.fill(x, 0);
    int rowStart = 0;
    for (int i = 0; i < active; i++) {
      int columnStart = 0;
      double sum = moment[i];
      for (int j = 0; j <= i; j++) {
        double entry = gram[rowStart + j];
        for (int k = 0; k < j; k++) {
          entry -= factor[rowStart + k] * factor[columnStart + k];
        }
        if (j < i) {
          entry /= factor[columnStart + j];
          sum -= entry * x[j];
        } else {
          entry = Math.sqrt(Math.max(entry, 0) + pull);
        }
        factor[rowStart + j] = entry;
        columnStart += j + 1;
      }
      x[i] = sum / factor[rowStart + i];
      rowStart += i + 1;
    }
    for (int i = active - 1; i >= 0; i--) {
      double sum = x[i];
      int at = i * (i + 1) / 2 + i;
      int below = at + i + 1;
      for (int k = i + 1; k < active; k++) {
        sum -= factor[below] * x[k];
        below += k + 1;
      }
      x[i] = sum / factor[at];
    }
  }
}
