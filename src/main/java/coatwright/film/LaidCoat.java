package coatwright.film;

import coatwright.quantity.OutOfRange;
import java.util.OptionalDouble;

/**
 * One coat as it left the brush.
 *
 * @param atS seconds on the job's own clock
 * @param wetFilmUm wet thickness, µm, 10 to 300
 * @param cutGPerL dry flakes per litre of spirit, g/L, 20 to 600
 * @param strengthVolPct spirit by volume in the solvent, %, 80 to 99.95
 * @param retarderVolPct 2-butoxyethanol by volume of the solvent, %, 0 to 10; no other is known to
 *     the model
 * @param liquidTempC temperature of the liquid, °C; absent means the air's
 */
public record LaidCoat(
    double atS,
    double wetFilmUm,
    double cutGPerL,
    double strengthVolPct,
    double retarderVolPct,
    OptionalDouble liquidTempC) {

  public LaidCoat {
    OutOfRange.check("time of the coat", atS, "s", -1e10, 1e10);
    OutOfRange.check("wet film", wetFilmUm, "µm", 10, 300);
    OutOfRange.check("cut", cutGPerL, "g/L", 20, 600);
    OutOfRange.check("spirit strength", strengthVolPct, "% vol", 80, 99.95);
    OutOfRange.check("2-butoxyethanol", retarderVolPct, "% vol", 0, 10);
    if (liquidTempC.isPresent()) {
      OutOfRange.check("liquid temperature", liquidTempC.getAsDouble(), "°C", 0, 45);
    }
  }

  /** A coat without retarder, at the air's temperature. */
  public static LaidCoat plain(
      double atS, double wetFilmUm, double cutGPerL, double strengthVolPct) {
    return new LaidCoat(atS, wetFilmUm, cutGPerL, strengthVolPct, 0, OptionalDouble.empty());
  }

  /** The same coat laid at another time. */
  public LaidCoat at(double newAtS) {
    return new LaidCoat(newAtS, wetFilmUm, cutGPerL, strengthVolPct, retarderVolPct, liquidTempC);
  }
}
