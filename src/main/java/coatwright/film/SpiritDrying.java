package coatwright.film;

import coatwright.quantity.OutOfRange;

/**
 * Resin in spirit: it dries by its spirit leaving, and melts into what lies beneath.
 *
 * @param parameters the film model's set
 * @param usualCutGPerL cut assumed when the jar's is unknown, grams of flakes per litre of spirit,
 *     20 to 600
 * @param cutLnSd spread of that assumption, natural log, 0 to 2
 * @param strengthVolPct spirit strength assumed, per cent by volume, 80 to 99.95
 */
public record SpiritDrying(
    FilmParameters parameters, double usualCutGPerL, double cutLnSd, double strengthVolPct)
    implements SolventDrying {
  public SpiritDrying {
    OutOfRange.check("usual cut", usualCutGPerL, "g/L", 20, 600);
    OutOfRange.check("spread of the cut", cutLnSd, "", 0, 2);
    OutOfRange.check("spirit strength", strengthVolPct, "% by volume", 80, 99.95);
  }

  @Override
  public String family() {
    return "evaporative";
  }

  /**
   * Touch, recoat and rub-out were set to what finishers see; dry hard, wrap and full hardness have
   * no criterion with a source.
   */
  @Override
  public Basis basisOf(String key) {
    return switch (key) {
      case "touch", "recoat", "rub-out" -> Basis.CALIBRATED;
      default -> Basis.ASSUMED;
    };
  }
}
