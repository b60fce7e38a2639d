package coatwright.film;

import coatwright.air.SaturationFunction;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** The jobs the reference figures were computed for. */
final class Jobs {
  /** A pound per US gallon as the reference program has it, g/L. */
  static final double POUND_CUT = 119.826;

  static final double USUAL_CUT = 1.5 * POUND_CUT;
  static final double[] SIX_COATS_S = {0, 900, 1800, 2700, 6300, 8700};
  static final double DAY_S = 86400;

  private Jobs() {}

  static LaidCoat usualCoat() {
    return LaidCoat.plain(0, 75, USUAL_CUT, 95);
  }

  static LaidCoat coat(double wetUm, double cutLb, double strengthPct, double retarderPct) {
    return new LaidCoat(
        0, wetUm, cutLb * POUND_CUT, strengthPct, retarderPct, OptionalDouble.empty());
  }

  /** Lacquer as sprayed: a fifth resin, 100 µm wet. */
  static LaidCoat lacquer(LacquerBlend blend) {
    return LaidCoat.lacquer(0, 100, 20, blend, 0);
  }

  /** Four solvents; five volatiles with the water. */
  static LaidCoat slowLacquer() {
    return lacquer(LacquerBlend.SLOWED);
  }

  static FilmJob oneOfLacquer(LacquerBlend blend, double airC, double rh) {
    return job(List.of(lacquer(blend)), airC, rh, SaturationFunction.HYLAND_WEXLER_WATER);
  }

  /** Three coats an hour apart. */
  static FilmJob threeOfLacquer(LacquerBlend blend, double airC, double rh) {
    LaidCoat coat = lacquer(blend);
    return job(
        List.of(coat, coat.at(3600), coat.at(7200)),
        airC,
        rh,
        SaturationFunction.HYLAND_WEXLER_WATER);
  }

  static List<LaidCoat> sixTimes(LaidCoat coat) {
    List<LaidCoat> coats = new ArrayList<>();
    for (double at : SIX_COATS_S) {
      coats.add(coat.at(at));
    }
    return coats;
  }

  static FilmJob oneCoat(double airC, double rh) {
    return job(List.of(usualCoat()), airC, rh, SaturationFunction.HYLAND_WEXLER_WATER);
  }

  static FilmJob sixCoats(double airC, double rh) {
    return job(sixTimes(usualCoat()), airC, rh, SaturationFunction.HYLAND_WEXLER_WATER);
  }

  static FilmJob job(List<LaidCoat> coats, double airC, double rh, SaturationFunction saturation) {
    return new FilmJob(
        coats, AirCourse.steady(airC, rh, 0.1), airC, FilmJob.USUAL_BOARD_MM, saturation);
  }

  /** The volatiles of spirit: two, or three with the retarder. */
  static Species spirit(FilmParameters p, int count) {
    return Species.ofSpirit(p, count > 2);
  }

  static FilmParameters set(String name) {
    return name.equals("shellac") ? FilmParameters.SHELLAC : FilmParameters.REFERENCE;
  }

  /**
   * The set with the clock and the recoat softness the reference tables were made with, and rub-out
   * by residue alone, as they timed it.
   */
  static FilmParameters asTabulated(String name) {
    FilmParameters.Criteria c = FilmParameters.REFERENCE.criteria();
    return set(name)
        .withCriteria(
            new FilmParameters.Criteria(
                c.touchXK(),
                c.recoatXK(),
                c.restedXK(),
                c.dryHardXK(),
                c.rubOutResidue(),
                c.wrapResidue(),
                c.fullResidue(),
                -20,
                false));
  }
}
