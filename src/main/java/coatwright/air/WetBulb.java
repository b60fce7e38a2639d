package coatwright.air;

import java.util.function.DoubleUnaryOperator;

/**
 * The temperature of a wetted wick in moving air, and the humidity it implies.
 *
 * <p>Source: ASHRAE Handbook Fundamentals (2017), chapter 1, equation 33 for a wick of liquid water
 * and 35 for one of ice. The two do not meet at 0 °C, so a small band of states near freezing has a
 * solution on each side; the liquid wick is taken, since a wet wick cools from above and meets that
 * one first.
 *
 * <p>Below freezing the wick carries ice. Air humid enough to be over-saturated against ice
 * (relative humidity here is over liquid water) deposits frost on it, so such a wick stands a
 * little above the air.
 */
final class WetBulb {
  private static final double CP_DRY_AIR = 1.006;
  private static final double NARROW_K = 1e-11;
  private static final double HAIR = 1e-12;

  private WetBulb() {}

  static double wetBulbC(MoistAir air) {
    double target = air.humidityRatio();
    double dryC = air.airTempC();
    double pressurePa = air.pressurePa();
    // The hair's breadth lets air saturated at exactly 0 °C count as liquid in spite of rounding.
    if (dryC >= 0 && overLiquid(dryC, 0, pressurePa) <= target * (1 + HAIR)) {
      return rootOfRising(wetC -> overLiquid(dryC, wetC, pressurePa) - target, 0, dryC);
    }
    return rootOfRising(
        wetC -> overIce(dryC, wetC, pressurePa) - target, SaturationPressure.COLDEST_C, 0);
  }

  /** Humidity ratio, kg/kg, of air at this dry and wet bulb. */
  static double humidityRatio(double dryC, double wetC, double pressurePa) {
    return wetC >= 0 ? overLiquid(dryC, wetC, pressurePa) : overIce(dryC, wetC, pressurePa);
  }

  /** Equation 33. */
  private static double overLiquid(double dryC, double wetC, double pressurePa) {
    double saturated = MoistAir.humidityRatio(SaturationPressure.overWaterPa(wetC), pressurePa);
    return ((2501 - 2.326 * wetC) * saturated - CP_DRY_AIR * (dryC - wetC))
        / (2501 + 1.86 * dryC - 4.186 * wetC);
  }

  /** Equation 35. */
  private static double overIce(double dryC, double wetC, double pressurePa) {
    double saturated = MoistAir.humidityRatio(SaturationPressure.overIcePa(wetC), pressurePa);
    return ((2830 - 0.24 * wetC) * saturated - CP_DRY_AIR * (dryC - wetC))
        / (2830 + 1.86 * dryC - 2.1 * wetC);
  }

  /** Bisection: some fifty steps, no derivative, and it cannot miss. */
  private static double rootOfRising(DoubleUnaryOperator function, double low, double high) {
    double below = low;
    double above = high;
    while (above - below > NARROW_K) {
      double middle = 0.5 * (below + above);
      if (function.applyAsDouble(middle) > 0) {
        above = middle;
      } else {
        below = middle;
      }
    }
    return 0.5 * (below + above);
  }
}
