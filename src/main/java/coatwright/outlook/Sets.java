package coatwright.outlook;

import coatwright.film.FilmParameters;
import coatwright.film.Finish;
import coatwright.quantity.OutOfRange;

/** The film model's parameter set a finish names. */
final class Sets {
  private Sets() {}

  static FilmParameters of(Finish finish) {
    if (finish.dryingSet().equals(FilmParameters.SHELLAC.name())) {
      return FilmParameters.SHELLAC;
    }
    throw new OutOfRange(
        "finish \""
            + finish.name()
            + "\" asks for the drying set \""
            + finish.dryingSet()
            + "\"; the film model has one, shellac");
  }
}
