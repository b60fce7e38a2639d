package coatwright.air;

import static coatwright.quantity.Conversions.ZERO_CELSIUS_K;

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
enum WetBulb {
  /** Equation 33. */
  LIQUID(2501, 2.326, 4.186) {
    @Override
    double pressurePa(double wetC) {
      return SaturationPressure.overWaterPa(wetC);
    }

    @Override
    double slope(double kelvin) {
      return SaturationPressure.slopeOverWater(kelvin);
    }

    @Override
    double bend(double kelvin) {
      return SaturationPressure.bendOverWater(kelvin);
    }
  },

  /** Equation 35. */
  ICE(2830, 0.24, 2.1) {
    @Override
    double pressurePa(double wetC) {
      return SaturationPressure.overIcePa(wetC);
    }

    @Override
    double slope(double kelvin) {
      return SaturationPressure.slopeOverIce(kelvin);
    }

    @Override
    double bend(double kelvin) {
      return SaturationPressure.bendOverIce(kelvin);
    }
  };

  private static final double CP_DRY_AIR = 1.006;
  private static final double CP_VAPOUR = 1.86;
  private static final double HAIR = 1e-12;
  private static final double FREEZING_PA = SaturationPressure.overWaterPa(0);

  /** A step so small leaves less than 1e-11 K: the error of each is a hundredth of its cube. */
  private static final double LAST_STEP_K = 1e-3;

  private static final int MOST_STEPS = 200;

  private final double heatKjKg;
  private final double heatPerK;
  private final double wickPerK;

  WetBulb(double heatKjKg, double heatPerK, double wickPerK) {
    this.heatKjKg = heatKjKg;
    this.heatPerK = heatPerK;
    this.wickPerK = wickPerK;
  }

  /** Saturation over what the wick carries, Pa. */
  abstract double pressurePa(double wetC);

  abstract double slope(double kelvin);

  abstract double bend(double kelvin);

  static double wetBulbC(MoistAir air) {
    double dryC = air.airTempC();
    double pressurePa = air.pressurePa();
    double saturatedPa = SaturationPressure.overWaterPa(dryC);
    double ratio = MoistAir.humidityRatio(air.rhPct() / 100 * saturatedPa, pressurePa);
    // The hair's breadth lets air saturated at exactly 0 °C count as liquid in spite of rounding.
    if (dryC >= 0 && LIQUID.humidityRatio(dryC, 0, FREEZING_PA, pressurePa) <= ratio * (1 + HAIR)) {
      return LIQUID.wetC(dryC, ratio, pressurePa, 0, dryC, dryC, saturatedPa);
    }
    double startC = Math.min(dryC, 0);
    double startPa = ICE.pressurePa(startC);
    return ICE.wetC(dryC, ratio, pressurePa, SaturationPressure.COLDEST_C, 0, startC, startPa);
  }

  /** Humidity ratio, kg/kg, of air at this dry and wet bulb. */
  static double humidityRatio(double dryC, double wetC, double pressurePa) {
    WetBulb wick = wetC >= 0 ? LIQUID : ICE;
    return wick.humidityRatio(dryC, wetC, wick.pressurePa(wetC), pressurePa);
  }

  private double humidityRatio(double dryC, double wetC, double saturatedPa, double pressurePa) {
    double saturated = MoistAir.humidityRatio(saturatedPa, pressurePa);
    return ((heatKjKg - heatPerK * wetC) * saturated - CP_DRY_AIR * (dryC - wetC))
        / (heatKjKg + CP_VAPOUR * dryC - wickPerK * wetC);
  }

  /**
   * The wick that stands in air of this humidity ratio: Halley's method on the equation without its
   * fraction, which rises with the wick, kept between two temperatures that enclose the root.
   *
   * @param startC where the search begins, with the saturation pressure there
   */
  private double wetC(
      double dryC,
      double ratio,
      double pressurePa,
      double coldestC,
      double warmestC,
      double startC,
      double startPa) {
    double low = coldestC;
    double high = warmestC;
    double wet = startC;
    double vapourPa = startPa;
    for (int step = 0; step < MOST_STEPS; step++) {
      double kelvin = wet + ZERO_CELSIUS_K;
      double slope = slope(kelvin);
      double heat = heatKjKg - heatPerK * wet;
      double thinned = pressurePa / (pressurePa - vapourPa);
      double saturated = MoistAir.humidityRatio(vapourPa, pressurePa);
      double rises = saturated * slope * thinned;
      double bends = saturated * thinned * (bend(kelvin) + slope * slope * (2 * thinned - 1));
      double above =
          heat * saturated
              - CP_DRY_AIR * (dryC - wet)
              - ratio * (heatKjKg + CP_VAPOUR * dryC - wickPerK * wet);
      double aboveRises = heat * rises - heatPerK * saturated + CP_DRY_AIR + ratio * wickPerK;
      double aboveBends = heat * bends - 2 * heatPerK * rises;
      double change = above / (aboveRises - 0.5 * above * aboveBends / aboveRises);
      if (Math.abs(change) < LAST_STEP_K) {
        return Math.max(coldestC, Math.min(warmestC, wet - change));
      }
      if (above > 0) {
        high = wet;
      } else {
        low = wet;
      }
      double next = wet - change;
      wet = next > low && next < high ? next : 0.5 * (low + high);
      vapourPa = pressurePa(wet);
    }
    return wet;
  }
}
