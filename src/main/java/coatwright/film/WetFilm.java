package coatwright.film;

import coatwright.air.SaturationFunction;
import coatwright.quantity.OutOfRange;
import coatwright.solvent.AirFlow;
import coatwright.solvent.EvaporatingSurface;
import coatwright.solvent.Solvent;

/**
 * A film of water drying steadily on wood: how cold it stands and how fast its water leaves.
 *
 * <p>Heat from air, walls and wood balances what the vapour carries off; the gas side is {@link
 * EvaporatingSurface}. The resin's share in the water is left out until the water is gone.
 *
 * @param tempC of the film, °C
 * @param waterKgPerM2S leaving; 0 while water condenses
 */
record WetFilm(double tempC, double waterKgPerM2S) {
  private static final double ZERO_C_K = 273.15;
  private static final double MOST_COOLING_K = 40;
  private static final double PRECISION_K = 1e-7;

  /**
   * The balance in this air.
   *
   * @param airTempC −15 to 55 °C
   * @param rhFraction 0 to 1
   * @param woodTempC −15 to 60 °C
   * @param draughtMPerS 0 to 3 m/s
   */
  static WetFilm in(
      WaterborneCure cure,
      double airTempC,
      double rhFraction,
      double woodTempC,
      double draughtMPerS) {
    OutOfRange.check("relative humidity", rhFraction, "(fraction)", 0, 1);
    WaterborneCure.Surface s = cure.surface();
    double h =
        new AirFlow(airTempC + ZERO_C_K)
            .heatTransferWPerM2K(draughtMPerS, s.lengthM(), s.stillAirWPerM2K());
    double roomPa = rhFraction * SaturationFunction.HYLAND_WEXLER_WATER.pressurePa(airTempC);
    EvaporatingSurface wet =
        new EvaporatingSurface(Solvent.WATER, airTempC, roomPa, h, s.radiationWPerM2K());
    double low = Math.min(airTempC, woodTempC) - MOST_COOLING_K;
    double high = Math.max(airTempC, woodTempC) + 1;
    double filmC = balance(wet, s, woodTempC, low, high);
    double kgPerM2S = wet.fluxMolPerM2S(filmC) * Solvent.WATER.molarMassKgPerMol();
    return new WetFilm(filmC, Math.max(0, kgPerM2S));
  }

  /** Regula falsi with the stale end's value halved (Illinois rule). */
  private static double balance(
      EvaporatingSurface wet, WaterborneCure.Surface s, double woodTempC, double from, double to) {
    double low = from;
    double high = to;
    double gainLow = gain(wet, s, woodTempC, low);
    double gainHigh = gain(wet, s, woodTempC, high);
    double middle = high;
    int side = 0;
    for (int i = 0; i < 200 && high - low > PRECISION_K; i++) {
      double next = (low * gainHigh - high * gainLow) / (gainHigh - gainLow);
      boolean settled = Math.abs(next - middle) < PRECISION_K;
      middle = next;
      double gain = gain(wet, s, woodTempC, middle);
      if (settled || gain == 0) {
        break;
      }
      if (gain > 0) {
        low = middle;
        gainLow = gain;
        gainHigh = side == 1 ? gainHigh / 2 : gainHigh;
        side = 1;
      } else {
        high = middle;
        gainHigh = gain;
        gainLow = side == -1 ? gainLow / 2 : gainLow;
        side = -1;
      }
    }
    return middle;
  }

  private static double gain(
      EvaporatingSurface wet, WaterborneCure.Surface s, double woodTempC, double filmC) {
    return (wet.heatTransferWPerM2K() + s.radiationWPerM2K()) * (wet.airTempC() - filmC)
        + s.woodWPerM2K() * (woodTempC - filmC)
        - wet.fluxMolPerM2S(filmC) * Solvent.WATER.latentHeatJPerMol();
  }
}
