package coatwright.sensors;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where one quantity stands in a payload, and in what unit.
 *
 * @param filter the topic filter it holds for, where the short form gave it
 * @param at JSON Pointer, group name or column name; empty for a payload that is the number itself
 * @param unit the unit the sender uses unless the payload says otherwise
 * @param unitAt where the payload names its unit
 * @param unitMap the sender's unit texts and what they mean; beats {@code unit}
 * @param decimal {@code .} or {@code ,}
 * @param missing exact raw values that mean "no value", in the sender's unit
 */
public record ReadingRule(
    Optional<String> filter,
    Quantity quantity,
    String at,
    Unit unit,
    Optional<String> unitAt,
    Map<String, Unit> unitMap,
    char decimal,
    List<String> missing) {
  public ReadingRule {
    unitMap = Map.copyOf(unitMap);
    missing = List.copyOf(missing);
  }
}
