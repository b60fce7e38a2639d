package coatwright.film;

import coatwright.air.SaturationFunction;
import coatwright.solvent.AirFlow;
import java.util.Arrays;

/**
 * The air above the film: what it takes from the surface and what heat it brings.
 *
 * <p>Transfer coefficients are taken at the air temperature and so change only with the climate;
 * they are kept until it does. Flux of a volatile, mol/(m² s): kc/(R Tm) (a·psat(Tf) − p_room) ·
 * Stefan, Tm the mean of film and air.
 */
final class GasSide {
  /** Outside this the film's temperature is an overshoot of the integrator, not a state, °C. */
  private static final double COLDEST_FILM_C = -29;

  private static final double HOTTEST_FILM_C = 90;
  private static final double MOST_VAPOUR_PA = 9e4;

  private final FilmSolution solution;
  private final FilmParameters.Surroundings around;
  private SaturationFunction saturation = SaturationFunction.HYLAND_WEXLER_WATER;
  private double draughtMPerS;

  private double airC = Double.NaN;
  private double saturatedPa;

  /** All diffusivities grow with the same power of temperature, so their ratios are constant. */
  private final double[] perFirst;

  private final double[] coefficient;
  private final double[] activity;
  private final double[] pressurePa;

  /** Set by {@link #air}. */
  double airK;

  double roomWaterPa;
  double heatTransfer;

  /** Set by {@link #flux}; mol/(m² s), positive outward. */
  final double[] moles;

  private final Species species;

  GasSide(FilmSolution solution, FilmParameters.Surroundings around) {
    this.solution = solution;
    this.around = around;
    species = solution.species;
    int ns = species.count;
    perFirst = new double[ns];
    coefficient = new double[ns];
    activity = new double[ns];
    pressurePa = new double[ns];
    moles = new double[ns];
    AirFlow any = new AirFlow(293.15);
    double first = any.massTransferMPerS(1, species.solvent[0]);
    for (int i = 0; i < ns; i++) {
      perFirst[i] = any.massTransferMPerS(1, species.solvent[i]) / first;
    }
  }

  void prepare(SaturationFunction function, double draught) {
    saturation = function;
    draughtMPerS = draught;
    airC = Double.NaN;
  }

  void air(double tempC, double rhFraction) {
    if (tempC != airC) {
      airC = tempC;
      airK = tempC + Species.KELVIN;
      saturatedPa = saturation.pressurePa(tempC);
      AirFlow flow = new AirFlow(airK);
      heatTransfer =
          flow.heatTransferWPerM2K(draughtMPerS, around.plateLengthM(), around.stillAirWPerM2K());
      double first =
          flow.massTransferMPerS(heatTransfer, species.solvent[0]) / AirFlow.GAS_CONSTANT;
      for (int i = 0; i < coefficient.length; i++) {
        coefficient[i] = first * perFirst[i];
      }
    }
    roomWaterPa = rhFraction * saturatedPa;
  }

  /**
   * Fluxes over this surface into {@link #moles}; not-a-number when the film temperature is
   * impossible.
   */
  void flux(double[] u, int at, double filmK) {
    int ns = moles.length;
    double filmC = filmK - Species.KELVIN;
    if (!(filmC > COLDEST_FILM_C && filmC < HOTTEST_FILM_C)) {
      Arrays.fill(moles, Double.NaN);
      return;
    }
    solution.activities(u, at, activity);
    double all = 0;
    for (int i = 0; i < ns; i++) {
      double p = 0;
      if (u[at + i] != 0) {
        double saturated =
            i == Species.WATER
                ? saturation.pressurePa(filmC)
                : species.solvent[i].vapourPressurePa(filmC);
        p = activity[i] * saturated;
      }
      pressurePa[i] = p;
      all += p;
    }
    double a = AirFlow.PRESSURE_PA - Math.min(all, MOST_VAPOUR_PA);
    double b = AirFlow.PRESSURE_PA - roomWaterPa;
    double stefan =
        Math.abs(b - a) < 1e-6
            ? AirFlow.PRESSURE_PA / a
            : AirFlow.PRESSURE_PA * Math.log(b / a) / (b - a);
    double outward = stefan / (0.5 * (airK + filmK));
    pressurePa[Species.WATER] -= roomWaterPa;
    for (int i = 0; i < ns; i++) {
      moles[i] = coefficient[i] * outward * pressurePa[i];
    }
  }

  /** Radiative heat transfer at this film temperature, W/(m² K); the walls are at the air's. */
  double radiation(double filmK) {
    double mean = 0.5 * (airK + filmK);
    return 4 * around.emissivity() * AirFlow.RADIATION * mean * mean * mean;
  }

  /** Derivative of {@link #radiation} by film temperature. */
  double radiationSlope(double filmK) {
    double mean = 0.5 * (airK + filmK);
    return 6 * around.emissivity() * AirFlow.RADIATION * mean * mean;
  }

  /** Heat carried off by the fluxes last computed, W/m². */
  double latentWPerM2() {
    double sum = 0;
    for (int i = 0; i < moles.length; i++) {
      sum += moles[i] * species.latent[i];
    }
    return sum;
  }

  /** Where the room's vapour would begin to wet a surface, °C: the saturation function inverted. */
  double dewPointC() {
    double low = -100;
    double high = 60;
    double guess = airC;
    for (int i = 0; i < 60; i++) {
      double p = saturation.pressurePa(guess);
      double step = 0.01;
      double slope = Math.log(saturation.pressurePa(guess + step) / p) / step;
      if (p > roomWaterPa) {
        high = guess;
      } else {
        low = guess;
      }
      double next = guess - Math.log(p / roomWaterPa) / slope;
      if (!(next > low && next < high)) {
        next = 0.5 * (low + high);
      }
      if (Math.abs(next - guess) < 1e-9) {
        return next;
      }
      guess = next;
    }
    return guess;
  }
}
