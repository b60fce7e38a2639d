package coatwright.sensors.outdoor;

import coatwright.sensors.mqtt.Broker;
import java.net.URI;
import java.nio.file.Path;

/** Where an outdoor forecast comes from. */
public sealed interface OutdoorSource {
  /** A file that somebody writes anew. */
  record OfFile(Path file) implements OutdoorSource {}

  /** An address that is asked, {@code http} or {@code https}. */
  record OfAddress(URI address) implements OutdoorSource {}

  /** A topic of a broker, as it speaks or as it is retained. */
  record OfTopic(Broker broker, String topic) implements OutdoorSource {}

  /** {@code file}, {@code http} or {@code mqtt}. */
  default String transport() {
    if (this instanceof OfFile) {
      return "file";
    }
    return this instanceof OfAddress ? "http" : "mqtt";
  }

  /** What people know it by. */
  default String named() {
    if (this instanceof OfFile file) {
      return file.file().toString();
    }
    if (this instanceof OfAddress asked) {
      // What follows the path may hold a key.
      return asked.address().getScheme()
          + "://"
          + asked.address().getAuthority()
          + asked.address().getPath();
    }
    return ((OfTopic) this).topic();
  }
}
