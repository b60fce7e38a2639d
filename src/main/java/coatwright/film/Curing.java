package coatwright.film;

import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * A finish that hardens by a reaction or by its particles flowing together, not by its solvent
 * alone. It does not melt into the coat beneath, so its recoat window may have a late end, and its
 * milestones go by a clock of its own: how fast that clock runs in which air is what the kinds
 * differ in. Hand it to {@link CureEnsemble} in a {@link CureJob}.
 */
public sealed interface Curing extends Drying permits OxidativeCure, WaterborneCure, TwoPartCure {

  /** What all kinds share: solids, reference air, limits, and where every figure is from. */
  CureFacts facts();

  /** The milestones it is asked for; the others are not defined for it. */
  Set<Milestone> milestones();

  /** Whether its recoat window closes by itself. */
  boolean hasLateEnd();

  /** Hours a mixed pot stays workable in this air, where it is mixed of two parts. */
  OptionalDouble potLifeH(double airTempC);

  /**
   * The same finish with its thresholds moved so that the model gives the times a data sheet states
   * in the air it states them for. What the sheet does not state moves along by the middle factor
   * of what it does, and counts as assumed.
   *
   * @throws coatwright.quantity.OutOfRange where the times cannot be met by this model
   */
  Curing fitted(StatedTimes stated);

  @Override
  default Basis basisOf(String key) {
    return facts().basisOf(key);
  }

  /** Keys of all milestones a file can set, with the milestone. */
  static Map<Milestone, String> keys() {
    return CureKeys.BY_MILESTONE;
  }
}
