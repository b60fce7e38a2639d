package coatwright.sensors.proposal;

import java.util.LinkedHashMap;
import java.util.Map;

/** Where the payloads were heard, which becomes the source's transport. */
public sealed interface Origin {
  /** A broker of the settings. */
  record Broker(String name) implements Origin {}

  /** A serial device and its line, like {@code 9600 8N1}. */
  record Device(String path, String line) implements Origin {}

  /** A file of texts: the transport is left for the person to write. */
  record File() implements Origin {}

  /** The words of the settings that say so. */
  default Map<String, Object> words() {
    Map<String, Object> words = new LinkedHashMap<>();
    if (this instanceof Broker broker) {
      words.put("transport", "mqtt");
      words.put("broker", broker.name());
    } else if (this instanceof Device device) {
      words.put("transport", "serial");
      words.put("device", device.path().replaceFirst("^/dev/serial/", ""));
      words.put("line", device.line());
    }
    return words;
  }
}
