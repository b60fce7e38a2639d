package coatwright.film;

/**
 * How a finish hardens, and what is assumed of it when the jar does not say. Every kind has a model
 * of its own; what they share is that each answers with the same milestones.
 */
public sealed interface Drying permits SolventDrying, Curing {
  /** The family's word, as a finish file writes it: {@code evaporative} … */
  String family();

  /** Which model and which set of figures its numbers come from. */
  ModelStamp stamp();

  /**
   * Where the figure under a key of the finish file comes from; assumed where nobody said. The keys
   * of the milestones are {@code touch}, {@code recoat}, {@code sand}, {@code rub-out}, {@code
   * wrap} and {@code full-hardness}.
   */
  Basis basisOf(String key);
}
