package coatwright.film;

/** Reads a state vector as a {@link FilmSample}. */
final class FilmSampler {
  private FilmSampler() {}

  static FilmSample sample(
      double atS, double airC, double[] y, FilmGrid grid, FilmSolution solution, double hazeMean) {
    int ns = grid.species;
    int n = grid.cells;
    double[] mean = new double[ns];
    double[] skin = new double[ns];
    double[] newest = new double[ns];
    double largest = 0;
    double weighted = 0;
    double hazeLargest = 0;
    for (int j = 0; j < n; j++) {
      double thick = grid.thickness[j];
      for (int s = 0; s < ns; s++) {
        double u = Math.max(y[j * ns + s], 0);
        mean[s] += u * thick / grid.resinM;
        skin[s] += u * grid.skinShare[j];
        newest[s] += j >= grid.newestFrom ? u * thick / grid.newestM : 0;
      }
      hazeLargest = Math.max(hazeLargest, grid.haze[j]);
      if (j >= grid.newestFrom) {
        double s = solution.blush(y, j * ns);
        largest = Math.max(largest, s);
        weighted += s * thick / grid.newestM;
      }
    }
    boolean spirit = solution instanceof SpiritSolution;
    double tgMeanC = glassC(mean, solution);
    double tgBottomC = solution.glassK(y, 0) - Species.KELVIN;
    return new FilmSample(
        atS,
        y[n * ns] - Species.KELVIN,
        y[n * ns + 1] - Species.KELVIN,
        airC,
        airC - tgMeanC,
        spirit ? mean[0] : solution.residue(mean, 0),
        mean[Species.WATER],
        spirit && ns > Species.RETARDER ? mean[Species.RETARDER] : 0,
        tgMeanC,
        glassC(skin, solution),
        tgBottomC,
        glassC(newest, solution),
        solution.blush(y, (n - 1) * ns),
        largest,
        weighted,
        hazeMean,
        hazeLargest);
  }

  private static double glassC(double[] u, FilmSolution solution) {
    return solution.glassK(u, 0) - Species.KELVIN;
  }
}
