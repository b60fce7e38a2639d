package coatwright.wood;

import coatwright.air.MoistAir;
import coatwright.quantity.OutOfRange;
import java.util.OptionalDouble;

/**
 * The moisture content wood settles at when it is left long enough in air that does not change.
 *
 * <p>Source: Simpson, "Equilibrium moisture content of wood in outdoor locations", FPL-RN-0268
 * (1998), and Wood Handbook FPL-GTR-190, equation 4-5 with its Celsius coefficients. The handbook's
 * table runs from -1.1 °C and from 5 to 95 % relative humidity; between 95 and 100 % this is the
 * equation's own continuation. Species, and whether the wood was drier or wetter before, move the
 * truth by a point or two.
 */
public final class EquilibriumMoisture {
  private static final double COLDEST_C = -1.2;
  private static final double WARMEST_C = 60;
  private static final double NARROW_PCT = 1e-10;

  private EquilibriumMoisture() {}

  /**
   * Moisture content in equilibrium with this air.
   *
   * @param tempC °C, -1.2 to 60
   * @param rhPct relative humidity, %, 0 to 100
   * @return mass of water per mass of dry wood, %
   */
  public static double pct(double tempC, double rhPct) {
    OutOfRange.check("wood temperature", tempC, "°C", COLDEST_C, WARMEST_C);
    OutOfRange.check("relative humidity", rhPct, "%", 0, 100);
    double w = 349 + tempC * (1.29 + 0.0135 * tempC);
    double k = 0.805 + tempC * (0.000736 - 0.00000273 * tempC);
    double k1 = 6.27 + tempC * (-0.00938 - 0.000303 * tempC);
    double k2 = 1.91 + tempC * (0.0407 - 0.000293 * tempC);
    double kh = k * rhPct / 100;
    double bound = k1 * kh;
    double twice = k1 * k2 * kh * kh;
    return 1800 / w * (kh / (1 - kh) + (bound + 2 * twice) / (1 + bound + twice));
  }

  /** The same for a record of air; absent where the table was never measured, below -1.2 °C. */
  public static OptionalDouble ofAir(MoistAir air) {
    return air.airTempC() < COLDEST_C
        ? OptionalDouble.empty()
        : OptionalDouble.of(pct(air.airTempC(), air.rhPct()));
  }

  /**
   * The relative humidity of air in which wood keeps this moisture content: {@link #pct} inverted
   * by bisection.
   *
   * @param tempC °C, -1.2 to 60
   * @param moisturePct from 0 to what {@link #pct} gives at 100 %
   * @return %
   */
  public static double rhPct(double tempC, double moisturePct) {
    OutOfRange.check("wood moisture", moisturePct, "%", 0, pct(tempC, 100));
    double low = 0;
    double high = 100;
    while (high - low > NARROW_PCT) {
      double middle = 0.5 * (low + high);
      if (pct(tempC, middle) > moisturePct) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return 0.5 * (low + high);
  }
}
