package coatwright.climate.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class RidgeTest {
  /**
   * Sums of squares of a 3 × 3 lesson: with inputs (1,0,0), (0,1,0), (0,0,1) and answers 3, 5, 7
   * the system is diagonal and solved in the head, the first lesson faded twice, the second once.
   */
  @Test
  void solvesADiagonalSystemAsOneDoesInTheHead() {
    Ridge ridge = new Ridge(3, 3);
    ridge.learn(new double[] {1, 0, 0}, 3);
    ridge.learn(new double[] {0, 1, 0}, 5);
    ridge.learn(new double[] {0, 0, 1}, 7);
    double[] x = new double[3];

    ridge.solve(1, new double[6], x);

    double k = Math.exp(-1 / 1080.0);
    assertThat(x[0]).isCloseTo(3 * k * k / (k * k + 1), within(1e-12));
    assertThat(x[1]).isCloseTo(5 * k / (k + 1), within(1e-12));
    assertThat(x[2]).isCloseTo(3.5, within(1e-12));
  }

  /** Gaussian elimination, written apart from Cholesky's factor, must find the same. */
  @Test
  void solvesAFullSystemAsGaussianEliminationDoes() {
    int n = 10;
    Ridge ridge = new Ridge(n, n);
    double[][] a = new double[n][n + 1];
    double k = Math.exp(-1 / 1080.0);
    java.util.SplittableRandom random = new java.util.SplittableRandom(20_261_125L);
    for (int lesson = 0; lesson < 60; lesson++) {
      double[] u = random.doubles(n, -1, 1).toArray();
      double y = random.nextDouble(-2, 2);
      ridge.learn(u, y);
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          a[i][j] = k * a[i][j] + u[i] * u[j];
        }
        a[i][n] = k * a[i][n] + u[i] * y;
      }
    }
    for (int i = 0; i < n; i++) {
      a[i][i] += 0.5;
    }
    double[] x = new double[n];

    ridge.solve(0.5, new double[n * (n + 1) / 2], x);

    double[] expected = eliminated(a);
    for (int i = 0; i < n; i++) {
      assertThat(x[i]).isCloseTo(expected[i], within(1e-10));
    }
  }

  private static double[] eliminated(double[][] a) {
    int n = a.length;
    for (int i = 0; i < n; i++) {
      for (int r = 0; r < n; r++) {
        if (r != i) {
          double by = a[r][i] / a[i][i];
          for (int c = i; c <= n; c++) {
            a[r][c] -= by * a[i][c];
          }
        }
      }
    }
    double[] x = new double[n];
    for (int i = 0; i < n; i++) {
      x[i] = a[i][n] / a[i][i];
    }
    return x;
  }

  @Test
  void leavesOutInputsThatNeverSpoke() {
    Ridge few = new Ridge(3, 2);
    Ridge many = new Ridge(3, 3);
    double[] input = {0.4, -1.2, 0};
    for (int i = 0; i < 20; i++) {
      few.learn(input, i % 3);
      many.learn(input, i % 3);
    }
    double[] factor = new double[6];
    double[] x = new double[3];

    assertThat(few.value(input, 0.1, factor, x))
        .isCloseTo(many.value(input, 0.1, factor, x), within(1e-12));
  }
}
