package coatwright.sensors;

import java.nio.charset.StandardCharsets;
import java.time.Instant;

/**
 * A payload as it came.
 *
 * @param channel topic or device
 * @param octets the bytes, one character (0 to 255) each
 * @param retained the broker kept it from earlier
 */
public record RawReading(String channel, String octets, Instant arrivedAt, boolean retained) {
  /** From bytes. */
  public static RawReading of(String channel, byte[] bytes, Instant arrivedAt, boolean retained) {
    return new RawReading(
        channel, new String(bytes, StandardCharsets.ISO_8859_1), arrivedAt, retained);
  }

  byte[] bytes() {
    return octets.getBytes(StandardCharsets.ISO_8859_1);
  }
}
