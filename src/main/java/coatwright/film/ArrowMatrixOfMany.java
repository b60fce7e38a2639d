package coatwright.film;

/** Any number of volatiles a cell: the blocks in loops, inverted by elimination with pivots. */
final class ArrowMatrixOfMany extends ArrowMatrix {
  private final double[] block;
  private final double[] col;
  private final double[] rowLeft;
  private final double[] was;

  ArrowMatrixOfMany(int species, int mostCells) {
    super(species, mostCells);
    block = new double[bb];
    col = new double[ns];
    rowLeft = new double[ns];
    was = new double[ns];
  }

  @Override
  void factorCells(double shift) {
    for (int i = 0; i < ns; i++) {
      col[i] = -column[i];
      rowLeft[i] = -row[i];
    }
    for (int i = 0; i < bb; i++) {
      block[i] = -diagonal[i];
    }
    for (int j = 0; ; j++) {
      int b = bb * j;
      int p = ns * j;
      for (int i = 0; i < ns; i++) {
        block[i * ns + i] += shift;
      }
      invert(b);
      for (int k = 0; k < ns; k++) {
        columnLeft[p + k] = col[k];
        double s = 0;
        for (int i = 0; i < ns; i++) {
          s += rowLeft[i] * inverse[b + i * ns + k];
        }
        rowScaled[p + k] = s;
        schur -= s * col[k];
      }
      if (j == cells - 1) {
        return;
      }
      next(b, p);
    }
  }

  /** Block, column and row of the next cell once this one is eliminated. */
  private void next(int b, int p) {
    int n = b + bb;
    System.arraycopy(col, 0, was, 0, ns);
    for (int i = 0; i < ns; i++) {
      int r = n + i * ns;
      double c = -column[p + ns + i];
      for (int k = 0; k < ns; k++) {
        double m = 0;
        for (int l = 0; l < ns; l++) {
          m += lower[r + l] * inverse[b + l * ns + k];
        }
        carry[r + k] = m;
        c += m * was[k];
      }
      col[i] = c;
      for (int k = 0; k < ns; k++) {
        double s = -diagonal[r + k];
        for (int l = 0; l < ns; l++) {
          s -= carry[r + l] * upper[b + l * ns + k];
        }
        block[i * ns + k] = s;
      }
    }
    for (int k = 0; k < ns; k++) {
      double s = -row[p + ns + k];
      for (int l = 0; l < ns; l++) {
        s += rowScaled[p + l] * upper[b + l * ns + k];
      }
      rowLeft[k] = s;
    }
  }

  /** Gauss and Jordan on the block, the largest pivot of each column; leaves the block used up. */
  private void invert(int b) {
    for (int i = 0; i < bb; i++) {
      inverse[b + i] = 0;
    }
    for (int i = 0; i < ns; i++) {
      inverse[b + i * ns + i] = 1;
    }
    for (int k = 0; k < ns; k++) {
      int best = k;
      for (int i = k + 1; i < ns; i++) {
        if (Math.abs(block[i * ns + k]) > Math.abs(block[best * ns + k])) {
          best = i;
        }
      }
      if (best != k) {
        swap(b, k, best);
      }
      double f = 1 / block[k * ns + k];
      for (int j = 0; j < ns; j++) {
        block[k * ns + j] *= f;
        inverse[b + k * ns + j] *= f;
      }
      for (int i = 0; i < ns; i++) {
        double m = i == k ? 0 : block[i * ns + k];
        for (int j = 0; j < ns && m != 0; j++) {
          block[i * ns + j] -= m * block[k * ns + j];
          inverse[b + i * ns + j] -= m * inverse[b + k * ns + j];
        }
      }
    }
  }

  private void swap(int b, int one, int other) {
    for (int j = 0; j < ns; j++) {
      int p = one * ns + j;
      int q = other * ns + j;
      double t = block[p];
      block[p] = block[q];
      block[q] = t;
      t = inverse[b + p];
      inverse[b + p] = inverse[b + q];
      inverse[b + q] = t;
    }
  }

  @Override
  double forwardCells(double[] x) {
    double taken = 0;
    for (int j = 0; j < cells; j++) {
      int p = ns * j;
      for (int i = 0; i < ns; i++) {
        double s = x[p + i];
        for (int k = 0; k < ns && j > 0; k++) {
          s += carry[bb * j + i * ns + k] * x[p - ns + k];
        }
        x[p + i] = s;
        taken += rowScaled[p + i] * s;
      }
    }
    return taken;
  }

  @Override
  void backwardCells(double[] x, double film) {
    for (int j = cells - 1; j >= 0; j--) {
      int b = bb * j;
      int p = ns * j;
      for (int i = 0; i < ns; i++) {
        double s = x[p + i] - columnLeft[p + i] * film;
        for (int k = 0; k < ns && j < cells - 1; k++) {
          s += upper[b + i * ns + k] * x[p + ns + k];
        }
        was[i] = s;
      }
      for (int i = 0; i < ns; i++) {
        double s = 0;
        for (int k = 0; k < ns; k++) {
          s += inverse[b + i * ns + k] * was[k];
        }
        x[p + i] = s;
      }
    }
  }
}
