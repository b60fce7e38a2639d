package coatwright.film;

/**
 * How a reaction's speed goes with temperature: exp(−Ea/R (1/T − 1/293.15 K)), 1 at 20 °C.
 *
 * <p>Source: Arrhenius 1889; R from the SI definition. Holds as long as one step limits the
 * reaction, which for films is an approximation.
 */
final class Arrhenius {
  private static final double GAS_CONSTANT = 8.314462618;
  private static final double ZERO_C_K = 273.15;
  private static final double REFERENCE_K = 293.15;

  private Arrhenius() {}

  /** Speed against that at 20 °C. */
  static double factor(double energyJPerMol, double tempC) {
    return Math.exp(-energyJPerMol / GAS_CONSTANT * (1 / (tempC + ZERO_C_K) - 1 / REFERENCE_K));
  }
}
