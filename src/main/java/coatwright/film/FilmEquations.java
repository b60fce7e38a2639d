package coatwright.film;

import coatwright.solvent.AirFlow;
import java.util.Arrays;

/**
 * The film's equations of motion, F(t, y), and their exact Jacobian.
 *
 * <p>Diffusion in the resin's own frame, du/dt = d/dξ (f D φp² du/dξ), with the face value the
 * arithmetic mean of the two cells (a harmonic mean would throttle the front that softens an old
 * coat). At the wood nothing passes; at the surface the gas side takes its flux. The film has one
 * temperature, the board ten. Diffusivities use the film's temperature, which is why it borders the
 * whole Jacobian.
 */
final class FilmEquations {
  private static final double REFERENCE_K = 293.15;
  private static final double NUDGE = 1e-7;
  private static final double LEAST_NUDGE = 1e-10;
  private static final double NUDGE_K = 1e-5;
  private static final double CLIMATE_NUDGE_S = 1;

  private final FilmGrid grid;
  final GasSide gas;
  private AirCursor cursor = AirCursor.still();
  private final FilmParameters.Surroundings around;

  private final double lnGlass;
  private final double rise;
  private final double steepness;
  private final double glassEnergy;
  private final double energyDrop;
  private final double loosening;
  private final double[] factor = new double[3];

  private final double[] mobility;
  private final double[] expTerm;
  private final double[] resinShare;
  private final double[] mobilityByFilm;
  private final double[] slopes;
  private final double[] perWood = new double[FilmGrid.WOOD_CELLS];
  private final double[] woodFace = new double[FilmGrid.WOOD_CELLS];
  private double filmToWood;
  private double heat;
  private double airAtS = Double.NaN;

  FilmEquations(FilmParameters p, FilmGrid grid, FilmSolution solution) {
    this.grid = grid;
    around = p.surroundings();
    gas = new GasSide(solution, around);
    FilmParameters.Diffusion d = p.diffusion();
    lnGlass = Math.log(d.glassM2PerS());
    steepness = d.steepness();
    rise = Math.log(d.liquidM2PerS() / d.glassM2PerS()) / (1 - Math.exp(-steepness));
    glassEnergy = d.glassEnergyJPerMol() / AirFlow.GAS_CONSTANT;
    energyDrop = (d.glassEnergyJPerMol() - d.liquidEnergyJPerMol()) / AirFlow.GAS_CONSTANT;
    loosening = d.waterLoosening();
    factor[Species.ETHANOL] = 1;
    factor[Species.WATER] = d.waterFactor();
    factor[Species.RETARDER] = d.retarderFactor();
    int most = grid.thickness.length;
    mobility = new double[most];
    expTerm = new double[most];
    resinShare = new double[most];
    mobilityByFilm = new double[most];
    slopes = new double[most * grid.species];
  }

  void prepare(FilmJob job, AirCursor airCursor) {
    cursor = airCursor;
    airAtS = Double.NaN;
    gas.prepare(job.saturation(), job.air().draughtMPerS());
    double volumetric = around.woodDensityKgPerM3() * around.woodHeatJPerKgK();
    double k = around.woodConductivityWPerMK();
    filmToWood = k / (grid.wood[0] / 2);
    for (int i = 0; i < FilmGrid.WOOD_CELLS; i++) {
      perWood[i] = 1 / (volumetric * grid.wood[i]);
      woodFace[i] = i + 1 < FilmGrid.WOOD_CELLS ? k / (0.5 * (grid.wood[i] + grid.wood[i + 1])) : 0;
    }
  }

  /** Diffusivity of spirit at this loosening share and temperature, m²/s; for the tests. */
  double diffusivity(double uE, double uW, double uR, double filmK) {
    double e = uE + uR + loosening * uW;
    double q = e / (1 + e);
    return Math.exp(
        lnGlass
            + rise * (1 - Math.exp(-steepness * q))
            - (glassEnergy - energyDrop * q) * (1 / filmK - 1 / REFERENCE_K));
  }

  void airAt(double atS) {
    if (atS != airAtS) {
      airAtS = atS;
      gas.air(cursor.tempC(atS), cursor.rhFraction(atS));
    }
  }

  /** F(t, y) into f. */
  void rates(double atS, double[] y, double[] f) {
    airAt(atS);
    int ns = grid.species;
    int n = grid.cells;
    int film = n * ns;
    double tf = y[film];
    double inverse = 1 / tf - 1 / REFERENCE_K;
    heat = Species.BASE_HEAT + Species.RESIN_HEAT_PER_M3 * grid.resinM;
    double flowE = 0;
    double flowW = 0;
    double flowR = 0;
    double fW = factor[Species.WATER];
    double fR = factor[Species.RETARDER];
    for (int j = 0; j < n; j++) {
      int p = j * ns;
      double e = Math.max(y[p], 0);
      double w = Math.max(y[p + 1], 0);
      double r = ns > 2 ? Math.max(y[p + 2], 0) : 0;
      double thick = grid.thickness[j];
      heat +=
          thick * (e * Species.heatPerM3(0) + w * Species.heatPerM3(1) + r * Species.heatPerM3(2));
      double loose = e + r + loosening * w;
      double q = loose / (1 + loose);
      double ex = Math.exp(-steepness * q);
      double resin = 1 / (1 + e + w + r);
      double b =
          Math.exp(lnGlass + rise * (1 - ex) - (glassEnergy - energyDrop * q) * inverse)
              * resin
              * resin;
      mobility[j] = b;
      expTerm[j] = ex;
      resinShare[j] = resin;
      if (j > 0) {
        double g = (b + mobility[j - 1]) / (thick + grid.thickness[j - 1]);
        double below = 1 / grid.thickness[j - 1];
        double upE = g * (y[p] - y[p - ns]);
        double upW = fW * g * (y[p + 1] - y[p - ns + 1]);
        f[p - ns] = (upE - flowE) * below;
        f[p - ns + 1] = (upW - flowW) * below;
        flowE = upE;
        flowW = upW;
        if (ns > 2) {
          double upR = fR * g * (y[p + 2] - y[p - 1]);
          f[p - 1] = (upR - flowR) * below;
          flowR = upR;
        }
      }
    }
    int top = film - ns;
    gas.flux(y[top], y[top + 1], ns > 2 ? y[top + 2] : 0, tf);
    double thin = 1 / grid.thickness[n - 1];
    f[top] = (-gas.nE * Species.VOL_E - flowE) * thin;
    f[top + 1] = (-gas.nW * Species.VOL_W - flowW) * thin;
    if (ns > 2) {
      f[top + 2] = (-gas.nR * Species.VOL_R - flowR) * thin;
    }
    temperatures(y, f, film, tf);
  }

  private void temperatures(double[] y, double[] f, int film, double tf) {
    int wood = film + 1;
    double down = filmToWood * (tf - y[wood]);
    f[film] = (heatGain(tf) - down) / heat;
    for (int i = 0; i < FilmGrid.WOOD_CELLS; i++) {
      double next = i + 1 < FilmGrid.WOOD_CELLS ? woodFace[i] * (y[wood + i] - y[wood + i + 1]) : 0;
      f[wood + i] = (down - next) * perWood[i];
      down = next;
    }
  }

  /**
   * The Jacobian at the state {@link #rates} was last called with; reuses its exponentials.
   *
   * @param f the rates found there
   */
  void jacobian(double[] y, double[] f, ArrowMatrix a) {
    int ns = grid.species;
    int n = grid.cells;
    int film = n * ns;
    double tf = y[film];
    a.cells = n;
    double inverse = 1 / tf - 1 / REFERENCE_K;
    double perHeat = 1 / heat;
    for (int j = 0; j < n; j++) {
      int p = j * ns;
      double e = Math.max(y[p], 0);
      double w = Math.max(y[p + 1], 0);
      double r = ns > 2 ? Math.max(y[p + 2], 0) : 0;
      double loose = e + r + loosening * w;
      double rest = 1 / (1 + loose);
      double q = loose * rest;
      double b = mobility[j];
      double byQ = (rise * steepness * expTerm[j] + energyDrop * inverse) * rest * rest;
      double dilution = 2 * resinShare[j];
      slopes[p] = y[p] > 0 ? b * (byQ - dilution) : 0;
      slopes[p + 1] = y[p + 1] > 0 ? b * (byQ * loosening - dilution) : 0;
      if (ns > 2) {
        slopes[p + 2] = y[p + 2] > 0 ? b * (byQ - dilution) : 0;
      }
      mobilityByFilm[j] = b * (glassEnergy - energyDrop * q) / (tf * tf);
      double share = -f[film] * grid.thickness[j] * perHeat;
      for (int i = 0; i < ns; i++) {
        a.row[p + i] = y[p + i] > 0 ? share * Species.heatPerM3(i) : 0;
      }
    }
    blocks(y, a);
    surface(y, a, perHeat);
    wood(a, perHeat);
  }

  private void blocks(double[] y, ArrowMatrix a) {
    int ns = grid.species;
    int n = grid.cells;
    int bb = ns * ns;
    Arrays.fill(a.diagonal, 0, n * bb, 0);
    Arrays.fill(a.column, 0, n * ns, 0);
    for (int j = 0; j + 1 < n; j++) {
      int p = j * ns;
      int q = p + ns;
      double between = 1 / (grid.thickness[j] + grid.thickness[j + 1]);
      double g = (mobility[j] + mobility[j + 1]) * between;
      double byFilm = (mobilityByFilm[j] + mobilityByFilm[j + 1]) * between;
      double perBelow = 1 / grid.thickness[j];
      double perAbove = 1 / grid.thickness[j + 1];
      for (int i = 0; i < ns; i++) {
        double difference = factor[i] * (y[q + i] - y[p + i]);
        double own = factor[i] * g;
        double weighted = difference * between;
        a.column[p + i] += difference * byFilm * perBelow;
        a.column[q + i] -= difference * byFilm * perAbove;
        int below = j * bb + i * ns;
        int above = below + bb;
        for (int k = 0; k < ns; k++) {
          double self = i == k ? own : 0;
          double byLower = weighted * slopes[p + k] - self;
          double byUpper = weighted * slopes[q + k] + self;
          a.diagonal[below + k] += byLower * perBelow;
          a.upper[below + k] = byUpper * perBelow;
          a.lower[above + k] = -byLower * perAbove;
          a.diagonal[above + k] -= byUpper * perAbove;
        }
      }
    }
  }

  /** The gas side's share, by one-sided differences of the flux. */
  private void surface(double[] y, ArrowMatrix a, double perHeat) {
    int ns = grid.species;
    int n = grid.cells;
    int film = n * ns;
    int top = film - ns;
    double tf = y[film];
    double uE = y[top];
    double uW = y[top + 1];
    double uR = ns > 2 ? y[top + 2] : 0;
    double thin = 1 / grid.thickness[n - 1];
    gas.flux(uE, uW, uR, tf);
    double nE = gas.nE;
    double nW = gas.nW;
    double nR = gas.nR;
    double latent = gas.latentWPerM2();
    int block = (n - 1) * ns * ns;
    for (int k = 0; k < ns; k++) {
      double d = NUDGE * Math.abs(y[top + k]) + LEAST_NUDGE;
      gas.flux(k == 0 ? uE + d : uE, k == 1 ? uW + d : uW, k == 2 ? uR + d : uR, tf);
      double per = thin / d;
      a.diagonal[block + k] -= (gas.nE - nE) * Species.VOL_E * per;
      a.diagonal[block + ns + k] -= (gas.nW - nW) * Species.VOL_W * per;
      if (ns > 2) {
        a.diagonal[block + 2 * ns + k] -= (gas.nR - nR) * Species.VOL_R * per;
      }
      a.row[top + k] -= (gas.latentWPerM2() - latent) / d * perHeat;
    }
    gas.flux(uE, uW, uR, tf + NUDGE_K);
    double per = thin / NUDGE_K;
    a.column[top] -= (gas.nE - nE) * Species.VOL_E * per;
    a.column[top + 1] -= (gas.nW - nW) * Species.VOL_W * per;
    if (ns > 2) {
      a.column[top + 2] -= (gas.nR - nR) * Species.VOL_R * per;
    }
    double latentSlope = (gas.latentWPerM2() - latent) / NUDGE_K;
    a.corner =
        (-gas.heatTransfer
                - gas.radiation(tf)
                + gas.radiationSlope(tf) * (gas.airK - tf)
                - latentSlope
                - filmToWood)
            * perHeat;
  }

  private void wood(ArrowMatrix a, double perHeat) {
    a.filmFromWood = filmToWood * perHeat;
    a.woodFromFilm = filmToWood * perWood[0];
    for (int i = 0; i < FilmGrid.WOOD_CELLS; i++) {
      double above = i == 0 ? filmToWood : woodFace[i - 1];
      a.woodUp[i] = above * perWood[i];
      a.woodDown[i] = woodFace[i] * perWood[i];
      a.woodDiagonal[i] = -(above + woodFace[i]) * perWood[i];
    }
  }

  boolean climateChanging() {
    return cursor.changing();
  }

  /**
   * ∂F/∂t at a fixed state while the climate moves along its line; only the surface and the film
   * temperature feel it. Entries not listed are zero and are left untouched by the caller.
   *
   * @param slope top-cell rates in 0..2, film temperature in 3
   */
  void climateSlope(double atS, double[] y, double[] slope) {
    int ns = grid.species;
    int film = grid.cells * ns;
    int top = film - ns;
    double tf = y[film];
    double uR = ns > 2 ? y[top + 2] : 0;
    airAt(atS - CLIMATE_NUDGE_S);
    gas.flux(y[top], y[top + 1], uR, tf);
    double nE = gas.nE;
    double nW = gas.nW;
    double nR = gas.nR;
    double warm = heatGain(tf);
    airAt(atS + CLIMATE_NUDGE_S);
    gas.flux(y[top], y[top + 1], uR, tf);
    double per = 1 / (2 * CLIMATE_NUDGE_S * grid.thickness[grid.cells - 1]);
    slope[0] = -(gas.nE - nE) * Species.VOL_E * per;
    slope[1] = -(gas.nW - nW) * Species.VOL_W * per;
    slope[2] = -(gas.nR - nR) * Species.VOL_R * per;
    slope[3] = (heatGain(tf) - warm) / (2 * CLIMATE_NUDGE_S * heat);
    airAt(atS);
  }

  /** What air, walls and vapour bring to a film at this temperature, W/m². */
  private double heatGain(double filmK) {
    double transfer = gas.heatTransfer + gas.radiation(filmK);
    return transfer * (gas.airK - filmK) - gas.latentWPerM2();
  }

  /** Volume leaving the surface per second at a state, all volatiles, m/s; for the balance test. */
  double evaporation(double atS, double[] y, int species) {
    airAt(atS);
    int ns = grid.species;
    int top = grid.cells * ns - ns;
    gas.flux(y[top], y[top + 1], ns > 2 ? y[top + 2] : 0, y[grid.cells * ns]);
    double moles = species == Species.ETHANOL ? gas.nE : species == Species.WATER ? gas.nW : gas.nR;
    return moles * Species.molarVolume(species);
  }
}
