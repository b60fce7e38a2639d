package coatwright.air;

/**
 * Saturation vapour pressure of water over a liquid surface, as a formula to be chosen.
 *
 * <p>The house uses {@link #HYLAND_WEXLER_WATER} everywhere; the film model takes the function as
 * an argument so that it can be checked against results computed with the other.
 */
@FunctionalInterface
public interface SaturationFunction {
  /** Hyland and Wexler over liquid water, see {@link SaturationPressure#overWaterPa}. */
  SaturationFunction HYLAND_WEXLER_WATER = SaturationPressure::overWaterPa;

  /**
   * Magnus form over liquid water, e = 611.2 exp(17.62 t / (243.12 + t)) Pa, t in °C. Source:
   * WMO-No. 8, Guide to Instruments and Methods of Observation (2008), annex 4.B.
   */
  SaturationFunction MAGNUS_WATER = SaturationPressure::magnusOverWaterPa;

  /** Pressure of saturated vapour, Pa, over liquid water at this temperature. */
  double pressurePa(double temperatureC);
}
