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
  private static final int MOST_STEPS = 200;

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

  /**
   * False position in Illinois' form: as sure as bisection, since the root stays enclosed, in eight
   * evaluations rather than forty. A root at an end, to within rounding, is that end.
   */
  private static double rootOfRising(DoubleUnaryOperator function, double low, double high) {
    double below = low;
    double above = high;
    double fBelow = function.applyAsDouble(below);
    double fAbove = function.applyAsDouble(above);
    if (!(fBelow < 0) || !(fAbove > 0)) {
      return fBelow < 0 ? high : low;
    }
    int side = 0;
    double last = below;
    for (int step = 0; step < MOST_STEPS; step++) {
      double next = (fBelow * above - fAbove * below) / (fBelow - fAbove);
      double value = function.applyAsDouble(next);
      if (value == 0 || Math.abs(next - last) < NARROW_K) {
        return next;
      }
      last = next;
      if (value > 0) {
        above = next;
        fAbove = value;
        fBelow = side == 1 ? fBelow / 2 : fBelow;
        side = 1;
      } else {
        below = next;
        fBelow = value;
        fAbove = side == -1 ? fAbove / 2 : fAbove;
        side = -1;
      }
    }
    return 0.5 * (below + above);
  }
}
