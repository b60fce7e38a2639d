package coatwright.solvent;

import coatwright.quantity.OutOfRange;

/**
 * How much harder spirit and water press to leave a mixture than their share says.
 *
 * <p>ln γ_spirit = A (B xw / (A xa + B xw))², ln γ_water = B (A xa / (A xa + B xw))², with A 1.6798
 * and B 0.9227: van Laar constants for ethanol(1)-water(2) at 1 atm, Perry's Chemical Engineers'
 * Handbook. Fitted at 70 to 100 °C and used at room temperature, where no better two-constant set
 * is at hand.
 */
public final class VanLaar {
  /** A, spirit in water. */
  public static final double A = 1.6798;

  /** B, water in spirit. */
  public static final double B = 0.9227;

  private VanLaar() {}

  /** Natural logarithm of the spirit's activity coefficient at a mole fraction of water, 0 to 1. */
  public static double lnGammaSpirit(double waterFraction) {
    double xw = OutOfRange.check("mole fraction of water", waterFraction, "", 0, 1);
    double part = B * xw / (A * (1 - xw) + B * xw);
    return A * part * part;
  }

  /** Natural logarithm of the water's activity coefficient at a mole fraction of water, 0 to 1. */
  public static double lnGammaWater(double waterFraction) {
    double xw = OutOfRange.check("mole fraction of water", waterFraction, "", 0, 1);
    double part = A * (1 - xw) / (A * (1 - xw) + B * xw);
    return B * part * part;
  }
}
