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
  private final double[] factor;
  private final double[] loosening;
  private final double[] volume;
  private final double[] heatPerM3;
  private final double resinHeatPerM3;

  private final double[] mobility;
  private final double[] expTerm;
  private final double[] resinShare;
  private final double[] mobilityByFilm;
  private final double[] slopes;
  private final double[] flow;
  private final double[] still;
  private final double[] nudged;
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
    Species species = solution.species;
    factor = species.speed;
    loosening = species.loosening;
    volume = species.volume;
    heatPerM3 = species.heatPerM3;
    resinHeatPerM3 = species.resinHeatPerM3;
    flow = new double[grid.species];
    still = new double[grid.species];
    nudged = new double[grid.species];
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

  /** Diffusivity at factor 1 in this composition at this temperature, m²/s; for the tests. */
  double diffusivity(double[] u, double filmK) {
    double e = 0;
    for (int i = 0; i < u.length; i++) {
      e += loosening[i] * u[i];
    }
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
    double warm = ns == 2 ? cellsOfTwo(y, f, n, inverse) : cellsOfMany(y, f, n, inverse);
    heat = Species.BASE_HEAT + resinHeatPerM3 * grid.resinM + warm;
    int top = film - ns;
    gas.flux(y, top, tf);
    double thin = 1 / grid.thickness[n - 1];
    for (int i = 0; i < ns; i++) {
      f[top + i] = (-gas.moles[i] * volume[i] - flow[i]) * thin;
    }
    temperatures(y, f, film, tf);
  }

  /**
   * Flow between the cells into f, what crosses the last face into {@link #flow}; the heat capacity
   * of all volatiles, J/(m² K).
   */
  private double cellsOfMany(double[] y, double[] f, int n, double inverse) {
    int ns = grid.species;
    double[] thickness = grid.thickness;
    double heats = 0;
    double below = 1;
    double belowB = 0;
    Arrays.fill(flow, 0);
    for (int j = 0; j < n; j++) {
      int p = j * ns;
      double all = 0;
      double loose = 0;
      double warm = 0;
      for (int i = 0; i < ns; i++) {
        double v = Math.max(y[p + i], 0);
        all += v;
        loose += loosening[i] * v;
        warm += heatPerM3[i] * v;
      }
      double thick = thickness[j];
      heats += thick * warm;
      double b = mobility(j, all, loose, inverse);
      if (j > 0) {
        double g = (b + belowB) / (thick + below);
        double perBelow = 1 / below;
        for (int i = 0; i < ns; i++) {
          double up = factor[i] * g * (y[p + i] - y[p - ns + i]);
          f[p - ns + i] = (up - flow[i]) * perBelow;
          flow[i] = up;
        }
      }
      below = thick;
      belowB = b;
    }
    return heats;
  }

  /** The same for plain spirit, written out: most of the work of most answers is done here. */
  private double cellsOfTwo(double[] y, double[] f, int n, double inverse) {
    double[] thickness = grid.thickness;
    double loosenE = loosening[0];
    double loosenW = loosening[1];
    double heatE = heatPerM3[0];
    double heatW = heatPerM3[1];
    double factorE = factor[0];
    double factorW = factor[1];
    double heats = 0;
    double flowE = 0;
    double flowW = 0;
    double below = 1;
    double belowB = 0;
    for (int j = 0; j < n; j++) {
      int p = 2 * j;
      double e = Math.max(y[p], 0);
      double w = Math.max(y[p + 1], 0);
      double thick = thickness[j];
      heats += thick * (e * heatE + w * heatW);
      double b = mobility(j, e + w, loosenE * e + loosenW * w, inverse);
      if (j > 0) {
        double g = (b + belowB) / (thick + below);
        double perBelow = 1 / below;
        double upE = factorE * g * (y[p] - y[p - 2]);
        double upW = factorW * g * (y[p + 1] - y[p - 1]);
        f[p - 2] = (upE - flowE) * perBelow;
        f[p - 1] = (upW - flowW) * perBelow;
        flowE = upE;
        flowW = upW;
      }
      below = thick;
      belowB = b;
    }
    flow[0] = flowE;
    flow[1] = flowW;
    return heats;
  }

  /** D φp² of a cell, m²/s; keeps what the Jacobian needs of it. */
  private double mobility(int cell, double all, double loose, double inverse) {
    double q = loose / (1 + loose);
    double ex = Math.exp(-steepness * q);
    double resin = 1 / (1 + all);
    double b =
        Math.exp(lnGlass + rise * (1 - ex) - (glassEnergy - energyDrop * q) * inverse)
            * resin
            * resin;
    mobility[cell] = b;
    expTerm[cell] = ex;
    resinShare[cell] = resin;
    return b;
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
      double loose = 0;
      for (int i = 0; i < ns; i++) {
        loose += loosening[i] * Math.max(y[p + i], 0);
      }
      double rest = 1 / (1 + loose);
      double q = loose * rest;
      double b = mobility[j];
      double byQ = (rise * steepness * expTerm[j] + energyDrop * inverse) * rest * rest;
      double dilution = 2 * resinShare[j];
      double share = -f[film] * grid.thickness[j] * perHeat;
      for (int i = 0; i < ns; i++) {
        boolean there = y[p + i] > 0;
        slopes[p + i] = there ? b * (byQ * loosening[i] - dilution) : 0;
        a.row[p + i] = there ? share * heatPerM3[i] : 0;
      }
      mobilityByFilm[j] = b * (glassEnergy - energyDrop * q) / (tf * tf);
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
    double thin = 1 / grid.thickness[n - 1];
    gas.flux(y, top, tf);
    System.arraycopy(gas.moles, 0, still, 0, ns);
    System.arraycopy(y, top, nudged, 0, ns);
    double latent = gas.latentWPerM2();
    int block = (n - 1) * ns * ns;
    for (int k = 0; k < ns; k++) {
      double d = NUDGE * Math.abs(y[top + k]) + LEAST_NUDGE;
      nudged[k] = y[top + k] + d;
      gas.flux(nudged, 0, tf);
      nudged[k] = y[top + k];
      double per = thin / d;
      for (int i = 0; i < ns; i++) {
        a.diagonal[block + i * ns + k] -= (gas.moles[i] - still[i]) * volume[i] * per;
      }
      a.row[top + k] -= (gas.latentWPerM2() - latent) / d * perHeat;
    }
    gas.flux(y, top, tf + NUDGE_K);
    double per = thin / NUDGE_K;
    for (int i = 0; i < ns; i++) {
      a.column[top + i] -= (gas.moles[i] - still[i]) * volume[i] * per;
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
   * @param slope top-cell rates first, then the film temperature
   */
  void climateSlope(double atS, double[] y, double[] slope) {
    int ns = grid.species;
    int film = grid.cells * ns;
    int top = film - ns;
    double tf = y[film];
    airAt(atS - CLIMATE_NUDGE_S);
    gas.flux(y, top, tf);
    System.arraycopy(gas.moles, 0, still, 0, ns);
    double warm = heatGain(tf);
    airAt(atS + CLIMATE_NUDGE_S);
    gas.flux(y, top, tf);
    double per = 1 / (2 * CLIMATE_NUDGE_S * grid.thickness[grid.cells - 1]);
    for (int i = 0; i < ns; i++) {
      slope[i] = -(gas.moles[i] - still[i]) * volume[i] * per;
    }
    slope[ns] = (heatGain(tf) - warm) / (2 * CLIMATE_NUDGE_S * heat);
    airAt(atS);
  }

  /** What air, walls and vapour bring to a film at this temperature, W/m². */
  private double heatGain(double filmK) {
    double transfer = gas.heatTransfer + gas.radiation(filmK);
    return transfer * (gas.airK - filmK) - gas.latentWPerM2();
  }

  /**
   * Volume of one volatile leaving the surface per second at a state, m/s; for the balance test.
   */
  double evaporation(double atS, double[] y, int species) {
    airAt(atS);
    int film = grid.film();
    gas.flux(y, film - grid.species, y[film]);
    return gas.moles[species] * volume[species];
  }
}
