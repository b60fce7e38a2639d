package coatwright.solvent;

import static coatwright.quantity.Conversions.ZERO_CELSIUS_K;

import coatwright.quantity.OutOfRange;

/**
 * A surface of pure liquid drying steadily into moving air: how cold it gets and how fast it goes.
 *
 * <p>Heat in from air and walls balances heat carried off by vapour; transfer by the
 * Chilton-Colburn analogy with Stefan's factor, air properties at the mean of surface and air.
 *
 * @param liquid what evaporates
 * @param airTempC air and walls, −20 to 60 °C
 * @param roomVapourPa the liquid's vapour already in the air, Pa, 0 to 20 000
 * @param heatTransferWPerM2K convective, 0.5 to 200 W/(m² K)
 * @param radiationWPerM2K radiative, 0 to 20 W/(m² K)
 */
public record EvaporatingSurface(
    Solvent liquid,
    double airTempC,
    double roomVapourPa,
    double heatTransferWPerM2K,
    double radiationWPerM2K) {
  private static final double MOST_COOLING_K = 60;
  private static final double MOST_WARMING_K = 20;
  private static final int HALVINGS = 60;

  public EvaporatingSurface {
    OutOfRange.check("air temperature", airTempC, "°C", -20, 60);
    OutOfRange.check("vapour in the room", roomVapourPa, "Pa", 0, 20_000);
    OutOfRange.check("heat transfer", heatTransferWPerM2K, "W/(m² K)", 0.5, 200);
    OutOfRange.check("radiation", radiationWPerM2K, "W/(m² K)", 0, 20);
  }

  /** Vapour leaving at a surface temperature, mol/(m² s); negative while vapour condenses. */
  public double fluxMolPerM2S(double surfaceC) {
    double meanK = 0.5 * (surfaceC + airTempC) + ZERO_CELSIUS_K;
    double surfacePa = liquid.vapourPressurePa(surfaceC);
    double speed = new AirFlow(meanK).massTransferMPerS(heatTransferWPerM2K, liquid);
    return speed
        / (AirFlow.GAS_CONSTANT * meanK)
        * (surfacePa - roomVapourPa)
        * AirFlow.stefanFactor(surfacePa, roomVapourPa);
  }

  /** Temperature at which heat in and heat out balance, °C: this liquid's wet bulb. */
  public double steadyTemperatureC() {
    double low = Math.max(airTempC - MOST_COOLING_K, VapourPressure.LOWEST_C);
    double high = airTempC + MOST_WARMING_K;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = 0.5 * (low + high);
      if (heatGainWPerM2(middle) > 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return 0.5 * (low + high);
  }

  private double heatGainWPerM2(double surfaceC) {
    double gain = (heatTransferWPerM2K + radiationWPerM2K) * (airTempC - surfaceC);
    return gain - fluxMolPerM2S(surfaceC) * liquid.latentHeatJPerMol();
  }

  /** Liquid lost at a surface temperature, metres of depth per second. */
  public double recessionMPerS(double surfaceC) {
    return fluxMolPerM2S(surfaceC) * liquid.molarVolumeM3();
  }
}
