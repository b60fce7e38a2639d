package coatwright.film;

/**
 * The Jacobian of the film and its factors.
 *
 * <p>Its shape is an arrow: cells couple to their neighbours (small dense blocks, block
 * tridiagonal), wood to its neighbours (tridiagonal), and the film temperature to all of them (a
 * last column and a last row). Eliminated in the order cells bottom to top, wood from the back to
 * the surface, film temperature last, nothing fills in. Blocks are stored row by row.
 */
abstract sealed class ArrowMatrix permits ArrowMatrixOfTwo, ArrowMatrixOfThree, ArrowMatrixOfMany {
  final int ns;
  final int bb;
  int cells;

  // The Jacobian itself.
  final double[] diagonal;
  final double[] upper;
  final double[] lower;
  final double[] column;
  final double[] row;
  double corner;
  final double[] woodDiagonal = new double[FilmGrid.WOOD_CELLS];
  final double[] woodUp = new double[FilmGrid.WOOD_CELLS];
  final double[] woodDown = new double[FilmGrid.WOOD_CELLS];
  double filmFromWood;
  double woodFromFilm;

  // Factors of shift·I − J.
  final double[] inverse;
  final double[] carry;
  final double[] columnLeft;
  final double[] rowScaled;
  private final double[] woodPivot = new double[FilmGrid.WOOD_CELLS];
  private final double[] woodCarry = new double[FilmGrid.WOOD_CELLS];
  private double pivot;
  double schur;

  ArrowMatrix(int species, int mostCells) {
    ns = species;
    bb = species * species;
    diagonal = new double[mostCells * bb];
    upper = new double[mostCells * bb];
    lower = new double[mostCells * bb];
    inverse = new double[mostCells * bb];
    carry = new double[mostCells * bb];
    column = new double[mostCells * ns];
    row = new double[mostCells * ns];
    columnLeft = new double[mostCells * ns];
    rowScaled = new double[mostCells * ns];
  }

  static ArrowMatrix of(int species, int mostCells) {
    return switch (species) {
      case 2 -> new ArrowMatrixOfTwo(mostCells);
      case 3 -> new ArrowMatrixOfThree(mostCells);
      default -> new ArrowMatrixOfMany(species, mostCells);
    };
  }

  /** Factors shift·I − J, cells first; adds their share to {@link #schur}. */
  abstract void factorCells(double shift);

  /**
   * Forward through the cells; returns what they take from the film temperature's right-hand side.
   */
  abstract double forwardCells(double[] x);

  /** Back through the cells once the film temperature is known. */
  abstract void backwardCells(double[] x, double film);

  final void factor(double shift) {
    schur = shift - corner;
    factorCells(shift);
    int last = FilmGrid.WOOD_CELLS - 1;
    woodPivot[last] = 1 / (shift - woodDiagonal[last]);
    for (int i = last - 1; i >= 0; i--) {
      woodCarry[i] = woodDown[i] * woodPivot[i + 1];
      woodPivot[i] = 1 / (shift - woodDiagonal[i] - woodCarry[i] * woodUp[i + 1]);
    }
    schur -= filmFromWood * woodPivot[0] * woodFromFilm;
    pivot = 1 / schur;
  }

  /** Solves (shift·I − J) x = b in place. */
  final void solve(double[] x) {
    int film = cells * ns;
    int wood = film + 1;
    double taken = forwardCells(x);
    for (int i = FilmGrid.WOOD_CELLS - 2; i >= 0; i--) {
      x[wood + i] += woodCarry[i] * x[wood + i + 1];
    }
    double tf = (x[film] - taken + filmFromWood * woodPivot[0] * x[wood]) * pivot;
    x[film] = tf;
    backwardCells(x, tf);
    x[wood] = (x[wood] + woodFromFilm * tf) * woodPivot[0];
    for (int i = 1; i < FilmGrid.WOOD_CELLS; i++) {
      x[wood + i] = (x[wood + i] + woodUp[i] * x[wood + i - 1]) * woodPivot[i];
    }
  }

  /** J v, for the tests. */
  final void multiply(double[] v, double[] out) {
    int film = cells * ns;
    double sum = corner * v[film] + filmFromWood * v[film + 1];
    for (int j = 0; j < cells; j++) {
      for (int i = 0; i < ns; i++) {
        int p = j * ns + i;
        double s = column[p] * v[film];
        for (int k = 0; k < ns; k++) {
          int q = j * bb + i * ns + k;
          s += diagonal[q] * v[j * ns + k];
          s += j + 1 < cells ? upper[q] * v[(j + 1) * ns + k] : 0;
          s += j > 0 ? lower[q] * v[(j - 1) * ns + k] : 0;
        }
        out[p] = s;
        sum += row[p] * v[p];
      }
    }
    out[film] = sum;
    int wood = film + 1;
    for (int i = 0; i < FilmGrid.WOOD_CELLS; i++) {
      double s = woodDiagonal[i] * v[wood + i];
      s += i == 0 ? woodFromFilm * v[film] : woodUp[i] * v[wood + i - 1];
      s += i + 1 < FilmGrid.WOOD_CELLS ? woodDown[i] * v[wood + i + 1] : 0;
      out[wood + i] = s;
    }
  }
}
