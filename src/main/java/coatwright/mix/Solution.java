package coatwright.mix;

import coatwright.quantity.OutOfRange;

/**
 * Flakes in spirit, by weight and volume at 20 °C.
 *
 * <p>Ideal mixing: the flakes take the volume they had as solid resin, so one pound a US gallon
 * swells the spirit by a tenth. No measured contraction of shellac in spirit is published.
 *
 * @param flakesG dry resin, g, 0 to 1 t
 * @param spiritMl spirit before mixing, mL, above 0 to 1000 L
 * @param strengthVolPct strength of that spirit, per cent by volume, 0 to 100
 * @param resinKgPerM3 density of the resin, kg/m³, 1000 to 1300
 */
public record Solution(
    double flakesG, double spiritMl, double strengthVolPct, double resinKgPerM3) {
  private static final double ML_PER_L = 1000;
  private static final double MOST = 1e6;

  /** Cuts this close are the same: a mixture's own cut is a quotient and carries its rounding. */
  private static final double SAME = 1e-9;

  public Solution {
    OutOfRange.check("flakes", flakesG, "g", 0, MOST);
    OutOfRange.check("spirit", spiritMl, "mL", 1e-3, MOST);
    OutOfRange.check("spirit strength", strengthVolPct, "% vol", 0, 100);
    OutOfRange.check("resin density", resinKgPerM3, "kg/m³", 1000, 1300);
    new Cut(flakesG / spiritMl * ML_PER_L);
  }

  /** What so much spirit makes at a cut. */
  public static Solution ofSpirit(Cut cut, double spiritMl, double strengthVolPct) {
    return new Solution(
        cut.gPerL() * spiritMl / ML_PER_L, spiritMl, strengthVolPct, FilmBuild.RESIN_KG_PER_M3);
  }

  /** What fills a jar to a volume at a cut. */
  public static Solution ofVolume(Cut cut, double volumeMl, double strengthVolPct) {
    return ofSpirit(cut, volumeMl / cut.swell(), strengthVolPct);
  }

  /** What so many flakes make at a cut above nothing. */
  public static Solution ofFlakes(Cut cut, double flakesG, double strengthVolPct) {
    OutOfRange.check("cut", cut.gPerL(), "g/L", 1, Cut.MOST_G_PER_L);
    return ofSpirit(cut, flakesG / cut.gPerL() * ML_PER_L, strengthVolPct);
  }

  /** The same flakes and spirit, of a resin of another density. */
  public Solution withResin(double kgPerM3) {
    return new Solution(flakesG, spiritMl, strengthVolPct, kgPerM3);
  }

  /** Its cut. */
  public Cut cut() {
    return new Cut(flakesG / spiritMl * ML_PER_L);
  }

  /** Volume of the mixture, mL. */
  public double volumeMl() {
    return spiritMl + flakesG / resinKgPerM3 * ML_PER_L;
  }

  /** Weight of the spirit, g. */
  public double spiritG() {
    return spiritMl * Cut.spiritGPerL(strengthVolPct) / ML_PER_L;
  }

  /** Density of the mixture, kg/m³. */
  public double densityKgPerM3() {
    return (flakesG + spiritG()) / volumeMl() * ML_PER_L;
  }

  /** Resin by weight of the mixture, per cent. */
  public double solidsMassPct() {
    return 100 * flakesG / (flakesG + spiritG());
  }

  /** Resin by volume of the mixture, per cent. */
  public double solidsVolumePct() {
    return 100 * flakesG / resinKgPerM3 * ML_PER_L / volumeMl();
  }

  /** Resin in a litre of the mixture, g; the number a pound cut is often mistaken for. */
  public double flakesGPerLOfMixture() {
    return flakesG / volumeMl() * ML_PER_L;
  }

  /**
   * The same flakes with spirit of the same strength added until the cut is reached.
   *
   * @throws OutOfRange if the wanted cut is not thinner
   */
  public Solution thinnedTo(Cut wanted) {
    if (!(wanted.gPerL() > 0 && wanted.gPerL() <= cut().gPerL() * (1 + SAME))) {
      throw new OutOfRange(
          "%.0f g/L cannot be thinned to %.0f g/L; more spirit only makes it thinner, so add flakes"
              .formatted(cut().gPerL(), wanted.gPerL()));
    }
    return new Solution(flakesG, flakesG / wanted.gPerL() * ML_PER_L, strengthVolPct, resinKgPerM3);
  }

  /**
   * The same spirit with flakes added until the cut is reached.
   *
   * @throws OutOfRange if the wanted cut is not thicker
   */
  public Solution strengthenedTo(Cut wanted) {
    if (wanted.gPerL() < cut().gPerL() * (1 - SAME)) {
      throw new OutOfRange(
          "%.0f g/L cannot be brought to %.0f g/L with flakes; they only make it thicker, so add spirit"
              .formatted(cut().gPerL(), wanted.gPerL()));
    }
    return new Solution(
        wanted.gPerL() * spiritMl / ML_PER_L, spiritMl, strengthVolPct, resinKgPerM3);
  }
}
