package coatwright.film;

import coatwright.quantity.OutOfRange;

/**
 * Resin in a blend of solvents: it dries by their leaving, the quick ones first, and melts into
 * what lies beneath.
 *
 * @param parameters the film model's set
 * @param blend what carries it, where the can does not say
 * @param solidsVolPct resin by volume as it is laid, per cent, 3 to 60
 * @param solidsLnSd spread of that, natural log, 0 to 2
 */
public record LacquerDrying(
    FilmParameters parameters, LacquerBlend blend, double solidsVolPct, double solidsLnSd)
    implements SolventDrying {
  public LacquerDrying {
    OutOfRange.check("solids by volume", solidsVolPct, "%", 3, 60);
    OutOfRange.check("spread of the solids", solidsLnSd, "", 0, 2);
    if (!(parameters.medium() instanceof Medium.Lacquer)) {
      throw new IllegalArgumentException(
          "a lacquer needs a set for lacquers; " + parameters.name() + " is none");
    }
  }

  @Override
  public String family() {
    return "lacquer";
  }

  /** Recoat and rub-out were set to what finishers see; the others have no criterion of its own. */
  @Override
  public Basis basisOf(String key) {
    return switch (key) {
      case "recoat", "rub-out" -> Basis.CALIBRATED;
      default -> Basis.ASSUMED;
    };
  }

  /** The liquid as it usually is, laid as it comes. */
  public Poured poured() {
    return new Poured.Lacquer(solidsVolPct, blend, 0, blend);
  }
}
