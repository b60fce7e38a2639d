package coatwright.air;

import static coatwright.quantity.Conversions.ZERO_CELSIUS_K;
import static java.lang.Math.exp;
import static java.lang.Math.log;

import coatwright.quantity.OutOfRange;

/**
 * Saturation vapour pressure of water over liquid and over ice, and its exact inverse.
 *
 * <p>Source: Hyland and Wexler (1983) as printed in ASHRAE Handbook Fundamentals (2017), chapter 1,
 * equations 5 (ice, -100 to 0 °C) and 6 (liquid, 0 to 200 °C). Below 0 °C the liquid equation is
 * used as an extrapolation to supercooled water, outside the printed range: against the WMO Magnus
 * form it differs there by at most 0.3 %, or 0.03 K of dew point, down to -40 °C; colder than that
 * it serves only to state the dew point of very dry air. Left out: the enhancement factor of moist
 * air, 0.4 % at 20 °C, which multiplies both sides of the dew-point balance and so nearly cancels.
 */
public final class SaturationPressure {
  /** Coldest temperature of either formula, °C; the liquid one is extrapolated this far. */
  static final double COLDEST_C = -100;

  private static final double HOTTEST_WATER_C = 200;
  private static final double WARMEST_ICE_C = 0;

  /**
   * A step so small leaves less than 1e-13 K, for the error of each is a thousandth of its square.
   */
  private static final double LAST_STEP_K = 1e-5;

  private static final int MOST_STEPS = 60;

  private static final double LOG_MAGNUS_PA = log(611.2);

  private static final double LEAST_WATER_PA = overWaterPa(COLDEST_C);
  private static final double MOST_WATER_PA = overWaterPa(HOTTEST_WATER_C);

  private SaturationPressure() {}

  /**
   * Over liquid water, ASHRAE equation 6; supercooled below 0 °C.
   *
   * @param tempC °C, -100 to 200
   * @return Pa
   */
  public static double overWaterPa(double tempC) {
    OutOfRange.check("temperature over water", tempC, "°C", COLDEST_C, HOTTEST_WATER_C);
    return exp(logOverWater(tempC + ZERO_CELSIUS_K));
  }

  /**
   * Over ice, ASHRAE equation 5.
   *
   * @param tempC °C, -100 to 0
   * @return Pa
   */
  public static double overIcePa(double tempC) {
    OutOfRange.check("temperature over ice", tempC, "°C", COLDEST_C, WARMEST_ICE_C);
    return exp(logOverIce(tempC + ZERO_CELSIUS_K));
  }

  /**
   * The temperature at which this vapour pressure saturates over liquid water: equation 6 inverted
   * by Newton's method, not a fitted dew-point formula.
   *
   * @param vapourPressurePa from saturation at -100 °C (0.0036 Pa) to saturation at 200 °C
   * @return °C
   */
  public static double dewPointC(double vapourPressurePa) {
    OutOfRange.check("vapour pressure", vapourPressurePa, "Pa", LEAST_WATER_PA, MOST_WATER_PA);
    double target = log(vapourPressurePa);
    double kelvin = magnusDewPointK(target);
    for (int step = 0; step < MOST_STEPS; step++) {
      double change = (logOverWater(kelvin) - target) / slopeOverWater(kelvin);
      kelvin = stepped(kelvin, change);
      if (Math.abs(change) < LAST_STEP_K) {
        break;
      }
    }
    return kelvin - ZERO_CELSIUS_K;
  }

  /**
   * The temperature at which this vapour pressure saturates over ice: equation 5 inverted likewise.
   *
   * @param vapourPressurePa from saturation over ice at -100 °C (0.0014 Pa) to that at 0 °C (611.2
   *     Pa)
   * @return °C
   */
  public static double frostPointC(double vapourPressurePa) {
    OutOfRange.check(
        "vapour pressure over ice",
        vapourPressurePa,
        "Pa",
        overIcePa(COLDEST_C),
        overIcePa(WARMEST_ICE_C));
    double target = log(vapourPressurePa);
    double kelvin = magnusDewPointK(target);
    for (int step = 0; step < MOST_STEPS; step++) {
      double change = (logOverIce(kelvin) - target) / slopeOverIce(kelvin);
      kelvin = stepped(kelvin, change);
      if (Math.abs(change) < LAST_STEP_K) {
        break;
      }
    }
    return kelvin - ZERO_CELSIUS_K;
  }

  /** Newton's step taken in 1/T, in which the logarithm of the pressure is all but straight. */
  private static double stepped(double kelvin, double change) {
    return kelvin / (1 + change / kelvin);
  }

  static double magnusOverWaterPa(double tempC) {
    OutOfRange.check("temperature over water", tempC, "°C", COLDEST_C, HOTTEST_WATER_C);
    return 611.2 * exp(17.62 * tempC / (243.12 + tempC));
  }

  /** A first guess only; within a few kelvin over the whole range. */
  private static double magnusDewPointK(double logPa) {
    double x = logPa - LOG_MAGNUS_PA;
    return 243.12 * x / (17.62 - x) + ZERO_CELSIUS_K;
  }

  private static double logOverWater(double kelvin) {
    return -5.8002206e3 / kelvin
        + 1.3914993
        + kelvin * (-4.8640239e-2 + kelvin * (4.1764768e-5 - kelvin * 1.4452093e-8))
        + 6.5459673 * log(kelvin);
  }

  /** Slope of the pressure's logarithm, 1/K. */
  static double slopeOverWater(double kelvin) {
    return 5.8002206e3 / (kelvin * kelvin)
        - 4.8640239e-2
        + kelvin * (2 * 4.1764768e-5 - 3 * kelvin * 1.4452093e-8)
        + 6.5459673 / kelvin;
  }

  /** Slope of that slope, 1/K². */
  static double bendOverWater(double kelvin) {
    return -2 * 5.8002206e3 / (kelvin * kelvin * kelvin)
        + 2 * 4.1764768e-5
        - 6 * kelvin * 1.4452093e-8
        - 6.5459673 / (kelvin * kelvin);
  }

  private static double logOverIce(double kelvin) {
    return -5.6745359e3 / kelvin
        + 6.3925247
        + kelvin
            * (-9.677843e-3
                + kelvin * (6.2215701e-7 + kelvin * (2.0747825e-9 - kelvin * 9.484024e-13)))
        + 4.1635019 * log(kelvin);
  }

  /** Slope of the pressure's logarithm, 1/K. */
  static double slopeOverIce(double kelvin) {
    return 5.6745359e3 / (kelvin * kelvin)
        - 9.677843e-3
        + kelvin * (2 * 6.2215701e-7 + kelvin * (3 * 2.0747825e-9 - 4 * kelvin * 9.484024e-13))
        + 4.1635019 / kelvin;
  }

  /** Slope of that slope, 1/K². */
  static double bendOverIce(double kelvin) {
    return -2 * 5.6745359e3 / (kelvin * kelvin * kelvin)
        + 2 * 6.2215701e-7
        + kelvin * (6 * 2.0747825e-9 - 12 * kelvin * 9.484024e-13)
        - 4.1635019 / (kelvin * kelvin);
  }
}
