package coatwright.film;

/**
 * Hardens by what carries the resin leaving; the film model computes it, and coats melt together.
 */
public sealed interface SolventDrying extends Drying permits SpiritDrying, LacquerDrying {
  /** The film model's set. */
  FilmParameters parameters();

  @Override
  default ModelStamp stamp() {
    return parameters().stamp();
  }
}
