package coatwright.film;

import coatwright.quantity.OutOfRange;
import coatwright.solvent.Solvent;

/**
 * A liquid as it behaves in one resin.
 *
 * @param solvent the pure liquid
 * @param glassK its glass transition, K, 50 to 300; by Fox's rule it softens the resin
 * @param chi resin-liquid interaction (Flory-Huggins), 0 to 5
 * @param speed it creeps through the resin this many times as fast as the set's diffusivity says,
 *     0.001 to 100
 * @param loosening the part of it that counts as loosening the resin, 0 to 1
 * @param waterCoefficient activity coefficient of a trace of water in this liquid, 0.1 to 10 000;
 *     large where water and the liquid do not mix. 1 for water itself; not used by spirit, which
 *     has van Laar's equations
 */
public record FilmLiquid(
    Solvent solvent,
    double glassK,
    double chi,
    double speed,
    double loosening,
    double waterCoefficient) {
  public FilmLiquid {
    OutOfRange.check("glass transition of a liquid", glassK, "K", 50, 300);
    OutOfRange.check("resin-liquid interaction", chi, "", 0, 5);
    OutOfRange.check("a liquid's speed", speed, "", 0.001, 100);
    OutOfRange.check("loosening by a liquid", loosening, "", 0, 1);
    OutOfRange.check("activity coefficient of water", waterCoefficient, "", 0.1, 1e4);
  }

  FilmLiquid withWaterTimes(double factor) {
    return new FilmLiquid(solvent, glassK, chi, speed, loosening, waterCoefficient * factor);
  }
}
