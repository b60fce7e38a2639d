package coatwright.sensors;

import java.nio.charset.Charset;
import java.util.List;
import java.util.Optional;

/**
 * How a payload is taken apart.
 *
 * @param pattern for {@code pattern}: the regular expression, already found to be of the safe kind
 * @param separator for {@code columns}
 * @param header for {@code columns}: the first line names the columns
 * @param each JSON Pointer whose children are taken one by one
 * @param when conditions a payload (or child) must meet to be this source's
 * @param sensorAt places that together name the sensor
 * @param sequenceAt place of a counter
 * @param stripNul one trailing NUL is taken off and flagged, instead of holding the value back
 * @param batteryLow place and value that mean a low battery
 */
public record PayloadRules(
    PayloadKind kind,
    Charset charset,
    Optional<SafePattern> pattern,
    char separator,
    boolean header,
    Optional<String> each,
    List<Condition> when,
    List<String> sensorAt,
    List<ReadingRule> readings,
    Optional<TimeRule> time,
    Optional<String> sequenceAt,
    boolean stripNul,
    Optional<Condition> batteryLow) {
  public PayloadRules {
    when = List.copyOf(when);
    sensorAt = List.copyOf(sensorAt);
    readings = List.copyOf(readings);
  }

  /** A place and the text it must hold; numbers are compared as numbers. */
  public record Condition(String at, String equals) {}
}
