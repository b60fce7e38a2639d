package coatwright.sensors;

import java.nio.charset.Charset;
import java.util.List;
import java.util.Optional;

/**
 * How a payload is taken apart.
 *
 * @param form what only one form of payload needs
 * @param charset how bytes become text
 * @param each JSON Pointer whose children are taken one by one
 * @param when conditions a payload (or child) must meet to be this source's
 * @param sensorAt places that together name the sensor
 * @param sequenceAt place of a counter
 * @param stripNul one trailing NUL is taken off and flagged, instead of holding the value back
 * @param batteryLow place and value that mean a low battery
 */
public record PayloadRules(
    PayloadKind kind,
    FormRules form,
    Charset charset,
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

  /**
   * What belongs to one form of payload each.
   *
   * @param pattern for {@code pattern}: the regular expression, already found to be of the safe
   *     kind
   * @param separator for {@code columns}
   * @param header for {@code columns}: the first line names the columns
   * @param layout for {@code hex}
   * @param hexAt for {@code hex}: JSON Pointer of the digits; empty when they are the payload
   * @param modbus for {@code modbus-rtu}
   * @param presence for {@code word}
   */
  public record FormRules(
      Optional<SafePattern> pattern,
      char separator,
      boolean header,
      Optional<ByteLayout> layout,
      String hexAt,
      Optional<ModbusRules> modbus,
      Optional<Transport.Presence> presence) {}

  /** The request to send, where the payload is an answer to one. */
  public Optional<ModbusRules> modbus() {
    return form.modbus();
  }

  /** The same without a time of the payload's own. */
  public PayloadRules withoutTime() {
    return new PayloadRules(
        kind,
        form,
        charset,
        each,
        when,
        sensorAt,
        readings,
        Optional.empty(),
        sequenceAt,
        stripNul,
        batteryLow);
  }

  /** The same read in another charset. */
  PayloadRules in(Charset other) {
    return new PayloadRules(
        kind, form, other, each, when, sensorAt, readings, time, sequenceAt, stripNul, batteryLow);
  }
}
