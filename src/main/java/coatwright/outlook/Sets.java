package coatwright.outlook;

import coatwright.film.FilmParameters;
import coatwright.film.Finish;
import coatwright.film.SolventDrying;
import coatwright.film.SpiritDrying;
import coatwright.quantity.OutOfRange;

/** What a finish says of its drying, where the film model computes it. */
final class Sets {
  private Sets() {}

  /** The film model's parameter set a finish names. */
  static FilmParameters of(Finish finish) {
    if (finish.drying() instanceof SolventDrying drying) {
      return drying.parameters();
    }
    throw new OutOfRange(
        finish.title() + " does not dry by its solvents; ask for its own drying model instead");
  }

  /**
   * The set by whose clock a record of the air is thinned and averaged: the finish's own, and
   * shellac's under a finish that cures, which has none.
   */
  static FilmParameters clockOf(Finish finish) {
    return finish.drying() instanceof SolventDrying drying
        ? drying.parameters()
        : FilmParameters.SHELLAC;
  }

  static SpiritDrying spirit(Finish finish) {
    if (finish.drying() instanceof SpiritDrying spirit) {
      return spirit;
    }
    throw new OutOfRange(
        finish.title() + " is no spirit finish; ask for its own drying model instead");
  }
}
