package coatwright.film;

import coatwright.mix.FilmBuild;
import coatwright.quantity.OutOfRange;

/** Whether a liquid is close to clouding before it has met any weather. */
public final class JarCheck {
  private JarCheck() {}

  /**
   * The blush number S of the liquid in the jar. Above {@link CoatOutcome#WEAK_SPIRIT_S} the spirit
   * is too weak: it is near 0.3 at 95 % and 1.5 lb, 0.75 at 88 %.
   *
   * @param cutGPerL dry flakes per litre of spirit, 20 to 600 g/L
   * @param strengthVolPct spirit by volume in the solvent, 50 to 100 %
   * @param retarderVolPct 2-butoxyethanol by volume of the solvent, 0 to 10 %
   */
  public static double blushNumber(
      FilmParameters parameters, double cutGPerL, double strengthVolPct, double retarderVolPct) {
    OutOfRange.check("cut", cutGPerL, "g/L", 20, 600);
    OutOfRange.check("spirit strength", strengthVolPct, "% vol", 50, 100);
    OutOfRange.check("2-butoxyethanol", retarderVolPct, "% vol", 0, 10);
    double solids = FilmBuild.solidsFraction(cutGPerL);
    double liquid = (1 - solids) / solids;
    double retarder = retarderVolPct / 100;
    double strength = strengthVolPct / 100;
    Species species = Species.ofSpirit(parameters, true);
    double[] poured = {
      liquid * strength * (1 - retarder),
      liquid * (1 - strength) * (1 - retarder),
      liquid * retarder
    };
    return new SpiritSolution(parameters.solution(), species).blush(poured, 0);
  }
}
