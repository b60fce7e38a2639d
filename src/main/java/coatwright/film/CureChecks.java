package coatwright.film;

import coatwright.quantity.OutOfRange;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;

/** Checks that all kinds of curing finish share. */
final class CureChecks {
  private CureChecks() {}

  /** The thresholds in the order of their milestones; each no less than the one before it. */
  static Map<Milestone, Double> rising(
      String unit, Map<Milestone, Double> thresholds, double low, double high) {
    Map<Milestone, Double> inOrder = complete(thresholds);
    double before = 0;
    for (Map.Entry<Milestone, Double> t : inOrder.entrySet()) {
      OutOfRange.check("threshold of " + t.getKey(), t.getValue(), unit, low, high);
      if (t.getValue() < before) {
        throw new OutOfRange(
            "threshold of %s is %s %s, less than that of the milestone before it, %s %s; raise it"
                .formatted(t.getKey(), t.getValue(), unit, before, unit));
      }
      before = t.getValue();
    }
    return inOrder;
  }

  /** The same map in order, every milestone that files set being there and no other. */
  static <T> Map<Milestone, T> complete(Map<Milestone, T> thresholds) {
    EnumMap<Milestone, T> inOrder = new EnumMap<>(Milestone.class);
    inOrder.putAll(thresholds);
    Set<Milestone> needed = CureKeys.BY_MILESTONE.keySet();
    if (!inOrder.keySet().equals(needed)) {
      throw new OutOfRange(
          "a curing finish needs a threshold for each of %s; it has those for %s"
              .formatted(needed, inOrder.keySet()));
    }
    return Collections.unmodifiableMap(inOrder);
  }
}
