package coatwright.wood;

import static coatwright.quantity.Conversions.ZERO_CELSIUS_K;

import coatwright.quantity.OutOfRange;

/**
 * How wood conducts and stores heat, and what it weighs.
 *
 * <p>Source: Wood Handbook FPL-GTR-190, chapter 4. Specific gravity G is dry mass over volume at
 * the wood's own moisture content. Single boards differ from these averages by up to 20 %.
 */
public final class WoodThermal {
  private static final double DRIEST_PCT = 0;
  private static final double WETTEST_PCT = 25;

  private WoodThermal() {}

  /**
   * Thermal conductivity across the grain near 24 °C, equation 4-15: k = G (0.1941 + 0.004064 M) +
   * 0.01864. Along the grain it is about 1.8 times as much; it rises 2 to 3 % for each 10 K, which
   * is left out.
   *
   * @param specificGravity 0.3 to 1.2
   * @param moisturePct moisture content, %, 0 to 25
   * @return W/(m K)
   */
  public static double conductivityWPerMK(double specificGravity, double moisturePct) {
    checkWood(specificGravity, moisturePct);
    return specificGravity * (0.1941 + 0.004064 * moisturePct) + 0.01864;
  }

  /**
   * Heat capacity of moist wood, equations 4-16a, 4-17 and 4-18. The handbook gives them from 7 °C
   * up; the straight line is carried on to -20 °C for a cold board.
   *
   * @param tempC °C, -20 to 100
   * @param moisturePct %, 0 to 25
   * @return J per kg of moist wood per K
   */
  public static double heatCapacityJPerKgK(double tempC, double moisturePct) {
    OutOfRange.check("wood temperature", tempC, "°C", -20, 100);
    OutOfRange.check("wood moisture", moisturePct, "%", DRIEST_PCT, WETTEST_PCT);
    double kelvin = tempC + ZERO_CELSIUS_K;
    double dry = 0.1031 + 0.003867 * kelvin;
    double share = moisturePct / 100;
    double bond = moisturePct * (-0.06191 + 2.36e-4 * kelvin - 1.33e-4 * moisturePct);
    return 1000 * ((dry + 4.18 * share) / (1 + share) + bond);
  }

  /**
   * Density of moist wood: 1000 G (1 + M/100).
   *
   * @param specificGravity 0.3 to 1.2
   * @param moisturePct %, 0 to 25
   * @return kg/m³
   */
  public static double densityKgPerM3(double specificGravity, double moisturePct) {
    checkWood(specificGravity, moisturePct);
    return 1000 * specificGravity * (1 + moisturePct / 100);
  }

  private static void checkWood(double specificGravity, double moisturePct) {
    OutOfRange.check("specific gravity of the wood", specificGravity, "", 0.3, 1.2);
    OutOfRange.check("wood moisture", moisturePct, "%", DRIEST_PCT, WETTEST_PCT);
  }
}
