package coatwright.sensors.proposal;

import coatwright.json.Json;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;

/**
 * A payload as it was heard.
 *
 * @param channel topic or device; empty when it came from a file that names none
 * @param octets its bytes, one character (0 to 255) each
 */
public record Overheard(String channel, String octets) {
  /**
   * A line of a file: a recording with {@code raw} and, where known, {@code topic}, or the payload
   * itself.
   *
   * @param line its bytes, one character each
   */
  public static Overheard ofLine(String line) {
    try {
      JsonNode node = Json.mapper().readTree(text(line));
      return node != null && node.path("raw").isTextual()
          ? new Overheard(node.path("topic").asText(""), octets(node.path("raw").textValue()))
          : new Overheard("", line);
    } catch (JsonProcessingException noRecording) {
      return new Overheard("", line);
    }
  }

  private static String text(String octets) {
    return new String(octets.getBytes(StandardCharsets.ISO_8859_1), StandardCharsets.UTF_8);
  }

  /** Characters up to 255 are bytes; others were kept as text. */
  private static String octets(String raw) {
    return raw.chars().allMatch(c -> c <= 0xFF)
        ? raw
        : new String(raw.getBytes(StandardCharsets.UTF_8), StandardCharsets.ISO_8859_1);
  }
}
