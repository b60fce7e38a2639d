package coatwright.film;

import java.util.Arrays;

/**
 * The stack of cells and the board beneath, and where each unknown lies in the state vector: cells
 * bottom to top (the volatiles of each), then the film temperature, then the wood from the surface
 * down.
 */
final class FilmGrid {
  static final int WOOD_CELLS = 10;
  private static final double WOOD_RATIO = 1.5;
  private static final double SKIN_M = 1e-6;
  private static final int KEPT = 2;

  final int species;
  private final Species volatiles;
  private final SimulationOptions options;

  int cells;
  int newestFrom;
  int coats;
  double resinM;
  double newestM;
  final double[] thickness;
  final double[] haze;
  final double[] skinShare;
  final double[] wood = new double[WOOD_CELLS];

  FilmGrid(Species volatiles, int mostCoats, SimulationOptions options) {
    this.volatiles = volatiles;
    species = volatiles.count;
    this.options = options;
    int most =
        options.mergeOldCoats()
            ? options.cellsPerCoat() + (KEPT + 1) * (mostCoats - 1)
            : options.cellsPerCoat() * mostCoats;
    thickness = new double[most];
    haze = new double[most];
    skinShare = new double[most];
  }

  void clear(double boardM) {
    cells = 0;
    coats = 0;
    newestFrom = 0;
    resinM = 0;
    double sum = 0;
    double size = 1;
    for (int i = 0; i < WOOD_CELLS; i++) {
      wood[i] = size;
      sum += size;
      size *= WOOD_RATIO;
    }
    for (int i = 0; i < WOOD_CELLS; i++) {
      wood[i] *= boardM / sum;
    }
  }

  int mostUnknowns() {
    return thickness.length * species + 1 + WOOD_CELLS;
  }

  int unknowns() {
    return cells * species + 1 + WOOD_CELLS;
  }

  int film() {
    return cells * species;
  }

  /**
   * Lays a coat: merges the one beneath, adds the new cells and fills in the new state.
   *
   * @param y state before and after; temperatures are moved to their new place
   */
  void lay(LaidCoat coat, double[] y) {
    double film = coats == 0 ? 0 : y[film()];
    double[] woodTemps = Arrays.copyOfRange(y, film() + 1, film() + 1 + WOOD_CELLS);
    if (options.mergeOldCoats() && coats > 0) {
      mergeNewest(y);
    }
    double dryM = coat.dryFilmUm() * 1e-6;
    int n = options.cellsPerCoat();
    double sum = 0;
    double size = 1;
    for (int i = 0; i < n; i++) {
      thickness[cells + n - 1 - i] = size;
      sum += size;
      size *= options.ratio();
    }
    newestFrom = cells;
    for (int i = newestFrom; i < newestFrom + n; i++) {
      thickness[i] *= dryM / sum;
      haze[i] = 0;
    }
    for (int s = 0; s < species; s++) {
      double poured = coat.poured().perResin(volatiles.solvent[s]);
      for (int i = newestFrom; i < newestFrom + n; i++) {
        y[i * species + s] = poured;
      }
    }
    cells += n;
    coats++;
    resinM += dryM;
    newestM = dryM;
    y[film()] = film;
    System.arraycopy(woodTemps, 0, y, film() + 1, WOOD_CELLS);
    weighSkin();
  }

  /** A covered coat keeps its two lowest cells; the rest become one, volumes conserved. */
  private void mergeNewest(double[] y) {
    int into = newestFrom + KEPT;
    if (cells - into < 2) {
      return;
    }
    double sum = 0;
    double hazeSum = 0;
    for (int j = into; j < cells; j++) {
      sum += thickness[j];
      hazeSum += haze[j] * thickness[j];
    }
    for (int s = 0; s < species; s++) {
      double volume = 0;
      for (int j = into; j < cells; j++) {
        volume += y[j * species + s] * thickness[j];
      }
      y[into * species + s] = volume / sum;
    }
    thickness[into] = sum;
    haze[into] = hazeSum / sum;
    cells = into + 1;
  }

  /**
   * Shares of each cell in the skin, the top micrometre of resin: a cell counts by its thickness,
   * less as its upper edge lies deeper, down to nothing at a micrometre.
   */
  private void weighSkin() {
    double above = 0;
    double total = 0;
    for (int j = cells - 1; j >= 0; j--) {
      double weight = thickness[j] * Math.max(0, 1 - above / SKIN_M);
      skinShare[j] = weight;
      total += weight;
      above += thickness[j];
    }
    for (int j = 0; j < cells; j++) {
      skinShare[j] /= total;
    }
  }
}
