package coatwright.film;

/**
 * How a finish hardens, and what is assumed of it when the jar does not say. Every kind has a model
 * of its own; what they share is that each answers with the same milestones.
 */
public sealed interface Drying permits SpiritDrying {
  /** The family's word, as a finish file writes it: {@code evaporative} … */
  String family();

  /** Which model and which set of figures its numbers come from. */
  ModelStamp stamp();
}
