package coatwright.film;

import coatwright.quantity.OutOfRange;

/**
 * A coat of a curing finish.
 *
 * @param atS when it went on, s on the job's clock
 * @param wetFilmUm what stays on the wood, wiping off included, µm, 1 to 1000
 * @param reducedPct thinner or water added to the finish, per cent of it by volume, 0 to 300
 */
public record CureCoat(double atS, double wetFilmUm, double reducedPct) {
  public CureCoat {
    OutOfRange.check("time of a coat", atS, "s", -1e10, 1e10);
    OutOfRange.check("wet film", wetFilmUm, "µm", 1, 1000);
    OutOfRange.check("thinner added", reducedPct, "% by volume", 0, 300);
  }

  /** A coat of the finish as it comes. */
  public static CureCoat unthinned(double atS, double wetFilmUm) {
    return new CureCoat(atS, wetFilmUm, 0);
  }
}
