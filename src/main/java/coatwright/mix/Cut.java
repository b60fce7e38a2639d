package coatwright.mix;

import coatwright.quantity.Conversions;
import coatwright.quantity.OutOfRange;
import coatwright.solvent.SpiritStrength;

/**
 * How much dry resin there is to a volume of spirit: the trade's "2 lb cut".
 *
 * <p>It is counted against the spirit before the flakes go in, never against the mixture: a gallon
 * of 2 lb cut holds about 1.65 lb. Spirit volumes are at 20 °C.
 *
 * @param gPerL grams of dry flakes per litre of spirit, 0 to 1000
 */
public record Cut(double gPerL) {
  /** Thickest cut taken, g/L; beyond 8 lb a US gallon flakes make a paste. */
  public static final double MOST_G_PER_L = 1000;

  private static final double REFERENCE_C = 20;

  public Cut {
    OutOfRange.check("cut", gPerL, "g/L", 0, MOST_G_PER_L);
  }

  /** From pounds per US gallon of spirit. */
  public static Cut ofLbPerUsGal(double lb) {
    return new Cut(lb * Conversions.G_PER_L_PER_LB_US_GAL);
  }

  /** From pounds per imperial gallon of spirit. */
  public static Cut ofLbPerImpGal(double lb) {
    return new Cut(lb * Conversions.G_PER_L_PER_LB_IMP_GAL);
  }

  /**
   * From the share of the mixture's weight that stays when it has dried: c = ρ w / (1 − w), ρ the
   * spirit's density at 20 °C.
   *
   * @param solidsMassPct resin by weight of the mixture, 0 to 55 %
   * @param strengthVolPct of the spirit, per cent by volume
   */
  public static Cut ofSolidsMassPct(double solidsMassPct, double strengthVolPct) {
    double w = OutOfRange.check("solids by weight", solidsMassPct, "%", 0, 55) / 100;
    return new Cut(spiritGPerL(strengthVolPct) * w / (1 - w));
  }

  /** Pounds per US gallon of spirit. */
  public double lbPerUsGal() {
    return gPerL / Conversions.G_PER_L_PER_LB_US_GAL;
  }

  /** Pounds per imperial gallon of spirit. */
  public double lbPerImpGal() {
    return gPerL / Conversions.G_PER_L_PER_LB_IMP_GAL;
  }

  /** Resin by weight of the mixture, per cent, in spirit of that strength (% vol). */
  public double solidsMassPct(double strengthVolPct) {
    return 100 * gPerL / (gPerL + spiritGPerL(strengthVolPct));
  }

  /** Resin by volume of the mixture, per cent; ideal mixing. */
  public double solidsVolumePct() {
    return 100 * FilmBuild.solidsFraction(gPerL);
  }

  /** Volume of mixture that one volume of spirit makes; ideal mixing. */
  public double swell() {
    return 1 + gPerL / FilmBuild.RESIN_KG_PER_M3;
  }

  static double spiritGPerL(double strengthVolPct) {
    return new SpiritStrength(strengthVolPct).densityKgPerM3(REFERENCE_C);
  }
}
