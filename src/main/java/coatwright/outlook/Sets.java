package coatwright.outlook;

import coatwright.film.FilmParameters;
import coatwright.film.Finish;
import coatwright.film.LacquerDrying;
import coatwright.film.SpiritDrying;
import coatwright.quantity.OutOfRange;

/** What a finish says of its drying, where the film model computes it. */
final class Sets {
  private Sets() {}

  /** The film model's parameter set a finish names. */
  static FilmParameters of(Finish finish) {
    return finish.drying() instanceof LacquerDrying lacquer
        ? lacquer.parameters()
        : spirit(finish).parameters();
  }

  static SpiritDrying spirit(Finish finish) {
    if (finish.drying() instanceof SpiritDrying spirit) {
      return spirit;
    }
    throw new OutOfRange(
        finish.title() + " is no spirit finish; ask for its own drying model instead");
  }
}
