package coatwright.sensors;

import coatwright.climate.RawText;
import java.nio.charset.StandardCharsets;
import java.time.Instant;

/**
 * A payload as it came.
 *
 * @param channel topic or device
 * @param octets the bytes, one character (0 to 255) each
 * @param way how it came
 */
public record RawReading(String channel, String octets, Instant arrivedAt, Way way) {
  /** How a payload came, which decides what may have happened to it on the way. */
  public enum Way {
    /** A message as it was sent. */
    MESSAGE,
    /** A message the broker kept from earlier. */
    RETAINED,
    /** One of several that were kept somewhere and let go together: only their order is known. */
    BACKLOG,
    /** A line of a stream, which nobody keeps or delivers twice. */
    LINE
  }

  /** From bytes. */
  public static RawReading of(String channel, byte[] bytes, Instant arrivedAt, Way way) {
    return new RawReading(channel, new String(bytes, StandardCharsets.ISO_8859_1), arrivedAt, way);
  }

  /** The same, known to have been kept somewhere on its way. */
  RawReading fromBacklog() {
    return new RawReading(channel, octets, arrivedAt, Way.BACKLOG);
  }

  /** A text the house kept, as it came; bytes were kept as hexadecimal digits. */
  public static RawReading kept(SourceMapping mapping, RawText text) {
    boolean binary = mapping.payload().kind().binary();
    String octets =
        binary
            ? HexForm.bytes(text.text())
                .map(bytes -> new String(Chunks.ofBytes(bytes), StandardCharsets.ISO_8859_1))
                .orElse("")
            : new String(text.text().getBytes(StandardCharsets.UTF_8), StandardCharsets.ISO_8859_1);
    return new RawReading(text.channel(), octets, text.arrivedAt(), Way.MESSAGE);
  }
}
