package coatwright.sensors;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where one quantity stands in a payload, and in what unit.
 *
 * @param filter the topic filter it holds for, where the short form gave it
 * @param at JSON Pointer, group name, column name or record name; offset of a register or byte;
 *     empty for a payload that is the number itself
 * @param encoding how it lies in registers or bytes, where it does
 * @param scale factor from the number sent to the number meant, in {@code unit}
 * @param unit the unit the sender uses unless the payload says otherwise
 * @param unitAt where the payload names its unit
 * @param unitMap the sender's unit texts and what they mean; beats {@code unit}
 * @param decimal {@code .} or {@code ,}
 * @param missing exact raw values that mean "no value", as sent: before scaling and in its unit
 */
public record ReadingRule(
    Optional<String> filter,
    Quantity quantity,
    String at,
    Optional<Encoding> encoding,
    BigDecimal scale,
    Unit unit,
    Optional<String> unitAt,
    Map<String, Unit> unitMap,
    char decimal,
    List<String> missing) {
  public ReadingRule {
    unitMap = Map.copyOf(unitMap);
    missing = List.copyOf(missing);
  }

  /** A number sent as it is meant, in one unit. */
  static ReadingRule plain(Quantity quantity, String at, Unit unit) {
    return new ReadingRule(
        Optional.empty(),
        quantity,
        at,
        Optional.empty(),
        BigDecimal.ONE,
        unit,
        Optional.empty(),
        Map.of(),
        '.',
        List.of());
  }

  /** What the form looks it up by: one offset may be read in several encodings. */
  String place() {
    return encoding.map(how -> at + " " + how).orElse(at);
  }

  /** The number meant, in the sender's unit. */
  double scaled(double sent) {
    boolean plain = scale.compareTo(BigDecimal.ONE) == 0 || !Double.isFinite(sent);
    return plain ? sent : BigDecimal.valueOf(sent).multiply(scale).doubleValue();
  }
}
