package coatwright.film;

/** Two volatiles a cell, spirit and water: 2×2 blocks, written out. */
final class ArrowMatrixOfTwo extends ArrowMatrix {

  ArrowMatrixOfTwo(int mostCells) {
    super(2, mostCells);
  }

  // Off-diagonal blocks of shift·I − J are −upper, −lower, −column, −row; the signs are carried
  // below.
  @Override
  void factorCells(double shift) {
    double r0 = -row[0];
    double r1 = -row[1];
    double c0 = -column[0];
    double c1 = -column[1];
    double d00 = shift - diagonal[0];
    double d01 = -diagonal[1];
    double d10 = -diagonal[2];
    double d11 = shift - diagonal[3];
    for (int j = 0; ; j++) {
      int b = 4 * j;
      int p = 2 * j;
      double f = 1 / (d00 * d11 - d01 * d10);
      double i00 = d11 * f;
      double i01 = -d01 * f;
      double i10 = -d10 * f;
      double i11 = d00 * f;
      inverse[b] = i00;
      inverse[b + 1] = i01;
      inverse[b + 2] = i10;
      inverse[b + 3] = i11;
      columnLeft[p] = c0;
      columnLeft[p + 1] = c1;
      double s0 = r0 * i00 + r1 * i10;
      double s1 = r0 * i01 + r1 * i11;
      rowScaled[p] = s0;
      rowScaled[p + 1] = s1;
      schur -= s0 * c0 + s1 * c1;
      if (j == cells - 1) {
        return;
      }
      int n = b + 4;
      // carry = −L of the next row times this inverse
      double l00 = lower[n];
      double l01 = lower[n + 1];
      double l10 = lower[n + 2];
      double l11 = lower[n + 3];
      double m00 = l00 * i00 + l01 * i10;
      double m01 = l00 * i01 + l01 * i11;
      double m10 = l10 * i00 + l11 * i10;
      double m11 = l10 * i01 + l11 * i11;
      carry[n] = m00;
      carry[n + 1] = m01;
      carry[n + 2] = m10;
      carry[n + 3] = m11;
      double u00 = upper[b];
      double u01 = upper[b + 1];
      double u10 = upper[b + 2];
      double u11 = upper[b + 3];
      d00 = shift - diagonal[n] - (m00 * u00 + m01 * u10);
      d01 = -diagonal[n + 1] - (m00 * u01 + m01 * u11);
      d10 = -diagonal[n + 2] - (m10 * u00 + m11 * u10);
      d11 = shift - diagonal[n + 3] - (m10 * u01 + m11 * u11);
      double k0 = c0;
      c0 = -column[p + 2] + m00 * k0 + m01 * c1;
      c1 = -column[p + 3] + m10 * k0 + m11 * c1;
      r0 = -row[p + 2] + s0 * u00 + s1 * u10;
      r1 = -row[p + 3] + s0 * u01 + s1 * u11;
    }
  }

  @Override
  double forwardCells(double[] x) {
    double a = x[0];
    double b = x[1];
    double taken = rowScaled[0] * a + rowScaled[1] * b;
    for (int j = 1; j < cells; j++) {
      int n = 4 * j;
      int p = 2 * j;
      double k = a;
      a = x[p] + carry[n] * k + carry[n + 1] * b;
      b = x[p + 1] + carry[n + 2] * k + carry[n + 3] * b;
      x[p] = a;
      x[p + 1] = b;
      taken += rowScaled[p] * a + rowScaled[p + 1] * b;
    }
    return taken;
  }

  @Override
  void backwardCells(double[] x, double film) {
    double a = 0;
    double b = 0;
    for (int j = cells - 1; j >= 0; j--) {
      int n = 4 * j;
      int p = 2 * j;
      double f0 = x[p] - columnLeft[p] * film;
      double f1 = x[p + 1] - columnLeft[p + 1] * film;
      if (j < cells - 1) {
        f0 += upper[n] * a + upper[n + 1] * b;
        f1 += upper[n + 2] * a + upper[n + 3] * b;
      }
      a = inverse[n] * f0 + inverse[n + 1] * f1;
      b = inverse[n + 2] * f0 + inverse[n + 3] * f1;
      x[p] = a;
      x[p + 1] = b;
    }
  }
}
