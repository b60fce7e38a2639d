package coatwright.mix;

import coatwright.quantity.OutOfRange;

/**
 * How thick a film has become: wet thickness times the volume share of solids.
 *
 * <p>Arithmetic of conserved resin; volumes of spirit and resin are taken to add.
 */
public final class FilmBuild {
  /** Density of dewaxed shellac resin, kg/m³ (handbook specific gravity 1.14). */
  public static final double RESIN_KG_PER_M3 = 1140;

  private FilmBuild() {}

  /**
   * Volume share of resin in the liquid: v/(1+v), v = cut/1140 kg/m³.
   *
   * @param cutGPerL dry flakes per litre of spirit, 0 to 1000 g/L
   */
  public static double solidsFraction(double cutGPerL) {
    double v = OutOfRange.check("cut", cutGPerL, "g/L", 0, 1000) / RESIN_KG_PER_M3;
    return v / (1 + v);
  }

  /**
   * Dry thickness of one coat, µm.
   *
   * @param wetFilmUm wet thickness, 0 to 1000 µm
   * @param cutGPerL dry flakes per litre of spirit, 0 to 1000 g/L
   */
  public static double dryFilmUm(double wetFilmUm, double cutGPerL) {
    return OutOfRange.check("wet film", wetFilmUm, "µm", 0, 1000) * solidsFraction(cutGPerL);
  }

  /**
   * Wet thickness that leaves a wanted dry one, µm.
   *
   * @param dryFilmUm wanted, 0 to 500 µm
   * @param solidsFraction volume share of solids, 0.01 to 1
   */
  public static double wetFilmUm(double dryFilmUm, double solidsFraction) {
    OutOfRange.check("dry film", dryFilmUm, "µm", 0, 500);
    return dryFilmUm / OutOfRange.check("solids by volume", solidsFraction, "(fraction)", 0.01, 1);
  }

  /**
   * Wet thickness from consumption: litres spread over an area, µm.
   *
   * @param litres 0 to 100 L
   * @param areaM2 0.001 to 1000 m²
   */
  public static double wetFilmUmFromConsumption(double litres, double areaM2) {
    OutOfRange.check("liquid used", litres, "L", 0, 100);
    return 1000 * litres / OutOfRange.check("area", areaM2, "m²", 0.001, 1000);
  }

  /**
   * Volume share of solids after thinning with a thinner that leaves nothing: φ/(1 + t).
   *
   * @param solidsFraction before, 0 to 1
   * @param thinnerPct volume of thinner per volume of mixture, 0 to 1000 %
   */
  public static double thinnedSolidsFraction(double solidsFraction, double thinnerPct) {
    OutOfRange.check("solids by volume", solidsFraction, "(fraction)", 0, 1);
    return solidsFraction / (1 + OutOfRange.check("thinner", thinnerPct, "%", 0, 1000) / 100);
  }

  /**
   * Area a litre covers at a dry thickness with nothing wasted, m²/L.
   *
   * @param dryFilmUm 0.1 to 500 µm
   * @param solidsFraction volume share of solids, 0.01 to 1
   */
  public static double coverageM2PerL(double dryFilmUm, double solidsFraction) {
    OutOfRange.check("dry film", dryFilmUm, "µm", 0.1, 500);
    return 1000 / wetFilmUm(dryFilmUm, solidsFraction);
  }

  /**
   * Mixture to make for a dry film over an area, mL; of it the wasted share stays in brush, pad,
   * jar or air.
   *
   * @param areaM2 0.001 to 1000 m²
   * @param dryFilmUm of all coats together, 0 to 500 µm
   * @param solidsFraction volume share of solids, 0.01 to 1
   * @param wastePct share of what is mixed that does not reach the wood, 0 to 90 %
   */
  public static double mixtureMl(
      double areaM2, double dryFilmUm, double solidsFraction, double wastePct) {
    OutOfRange.check("area", areaM2, "m²", 0.001, 1000);
    OutOfRange.check("waste", wastePct, "%", 0, 90);
    return areaM2 * wetFilmUm(dryFilmUm, solidsFraction) / (1 - wastePct / 100);
  }
}
