package coatwright.film;

/** Three volatiles a cell, with the retarder: 3×3 blocks through their adjugate. */
final class ArrowMatrixOfThree extends ArrowMatrix {
  private final double[] block = new double[9];
  private final double[] col = new double[3];
  private final double[] rowLeft = new double[3];
  private final double[] was = new double[3];

  ArrowMatrixOfThree(int mostCells) {
    super(3, mostCells);
  }

  @Override
  void factorCells(double shift) {
    for (int i = 0; i < 3; i++) {
      col[i] = -column[i];
      rowLeft[i] = -row[i];
    }
    for (int i = 0; i < 9; i++) {
      block[i] = -diagonal[i];
    }
    shift(shift);
    for (int j = 0; ; j++) {
      int b = 9 * j;
      int p = 3 * j;
      invert(b);
      for (int k = 0; k < 3; k++) {
        columnLeft[p + k] = col[k];
        double s =
            rowLeft[0] * inverse[b + k]
                + rowLeft[1] * inverse[b + 3 + k]
                + rowLeft[2] * inverse[b + 6 + k];
        rowScaled[p + k] = s;
        schur -= s * col[k];
      }
      if (j == cells - 1) {
        return;
      }
      next(b, p);
      shift(shift);
    }
  }

  private void shift(double shift) {
    block[0] += shift;
    block[4] += shift;
    block[8] += shift;
  }

  private void next(int b, int p) {
    int n = b + 9;
    was[0] = col[0];
    was[1] = col[1];
    was[2] = col[2];
    for (int i = 0; i < 3; i++) {
      int r = n + 3 * i;
      double l0 = lower[r];
      double l1 = lower[r + 1];
      double l2 = lower[r + 2];
      double m0 = l0 * inverse[b] + l1 * inverse[b + 3] + l2 * inverse[b + 6];
      double m1 = l0 * inverse[b + 1] + l1 * inverse[b + 4] + l2 * inverse[b + 7];
      double m2 = l0 * inverse[b + 2] + l1 * inverse[b + 5] + l2 * inverse[b + 8];
      carry[r] = m0;
      carry[r + 1] = m1;
      carry[r + 2] = m2;
      for (int k = 0; k < 3; k++) {
        block[3 * i + k] =
            -diagonal[r + k] - (m0 * upper[b + k] + m1 * upper[b + 3 + k] + m2 * upper[b + 6 + k]);
      }
      col[i] = -column[p + 3 + i] + m0 * was[0] + m1 * was[1] + m2 * was[2];
    }
    for (int k = 0; k < 3; k++) {
      rowLeft[k] =
          -row[p + 3 + k]
              + rowScaled[p] * upper[b + k]
              + rowScaled[p + 1] * upper[b + 3 + k]
              + rowScaled[p + 2] * upper[b + 6 + k];
    }
  }

  private void invert(int b) {
    double c00 = block[4] * block[8] - block[5] * block[7];
    double c01 = block[5] * block[6] - block[3] * block[8];
    double c02 = block[3] * block[7] - block[4] * block[6];
    double f = 1 / (block[0] * c00 + block[1] * c01 + block[2] * c02);
    inverse[b] = c00 * f;
    inverse[b + 1] = (block[2] * block[7] - block[1] * block[8]) * f;
    inverse[b + 2] = (block[1] * block[5] - block[2] * block[4]) * f;
    inverse[b + 3] = c01 * f;
    inverse[b + 4] = (block[0] * block[8] - block[2] * block[6]) * f;
    inverse[b + 5] = (block[2] * block[3] - block[0] * block[5]) * f;
    inverse[b + 6] = c02 * f;
    inverse[b + 7] = (block[1] * block[6] - block[0] * block[7]) * f;
    inverse[b + 8] = (block[0] * block[4] - block[1] * block[3]) * f;
  }

  @Override
  double forwardCells(double[] x) {
    double a = x[0];
    double b = x[1];
    double c = x[2];
    double taken = rowScaled[0] * a + rowScaled[1] * b + rowScaled[2] * c;
    for (int j = 1; j < cells; j++) {
      int n = 9 * j;
      int p = 3 * j;
      double x0 = x[p] + carry[n] * a + carry[n + 1] * b + carry[n + 2] * c;
      double x1 = x[p + 1] + carry[n + 3] * a + carry[n + 4] * b + carry[n + 5] * c;
      double x2 = x[p + 2] + carry[n + 6] * a + carry[n + 7] * b + carry[n + 8] * c;
      x[p] = x0;
      x[p + 1] = x1;
      x[p + 2] = x2;
      taken += rowScaled[p] * x0 + rowScaled[p + 1] * x1 + rowScaled[p + 2] * x2;
      a = x0;
      b = x1;
      c = x2;
    }
    return taken;
  }

  @Override
  void backwardCells(double[] x, double film) {
    double a = 0;
    double b = 0;
    double c = 0;
    for (int j = cells - 1; j >= 0; j--) {
      int n = 9 * j;
      int p = 3 * j;
      double f0 = x[p] - columnLeft[p] * film;
      double f1 = x[p + 1] - columnLeft[p + 1] * film;
      double f2 = x[p + 2] - columnLeft[p + 2] * film;
      if (j < cells - 1) {
        f0 += upper[n] * a + upper[n + 1] * b + upper[n + 2] * c;
        f1 += upper[n + 3] * a + upper[n + 4] * b + upper[n + 5] * c;
        f2 += upper[n + 6] * a + upper[n + 7] * b + upper[n + 8] * c;
      }
      a = inverse[n] * f0 + inverse[n + 1] * f1 + inverse[n + 2] * f2;
      b = inverse[n + 3] * f0 + inverse[n + 4] * f1 + inverse[n + 5] * f2;
      c = inverse[n + 6] * f0 + inverse[n + 7] * f1 + inverse[n + 8] * f2;
      x[p] = a;
      x[p + 1] = b;
      x[p + 2] = c;
    }
  }
}
