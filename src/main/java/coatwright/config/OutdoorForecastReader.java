package coatwright.config;

import coatwright.config.Settings.Outdoor;
import coatwright.quantity.Quantities;
import coatwright.sensors.outdoor.OutdoorMapping;
import java.net.URI;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Reads the section {@code outdoor-forecast}; where it is not written there is none. */
final class OutdoorForecastReader {
  private static final Duration USUAL = Duration.ofHours(1);
  private static final Duration LEAST = Duration.ofMinutes(1);
  private static final String TIME = "time";

  private final Section section;
  private final Path beside;
  private final Set<String> brokers;

  OutdoorForecastReader(Section section, Path beside, Set<String> brokers) {
    this.section = section;
    this.beside = beside;
    this.brokers = brokers;
  }

  Optional<Outdoor> read() {
    if (!section.isWritten()) {
      return Optional.empty();
    }
    Optional<Path> file = section.optional("file").map(beside::resolve);
    Optional<URI> url = section.optional("url").flatMap(this::address);
    Optional<String> broker = section.optional("broker");
    Optional<String> topic = section.optional("topic");
    int ways = (file.isPresent() ? 1 : 0) + (url.isPresent() ? 1 : 0) + (topic.isPresent() ? 1 : 0);
    if (ways != 1) {
      section.fault("file", "one of file, url and topic says where it is from", "give one of them");
    }
    if (topic.isPresent() != broker.isPresent()) {
      section.fault("topic", "a topic goes with a broker", "give both broker and topic");
    }
    broker
        .filter(name -> !brokers.contains(name))
        .ifPresent(
            name ->
                section.fault(
                    "broker", "no such broker", "name one of: " + String.join(", ", brokers)));
    Duration every = section.quantity("every", USUAL, Quantities::duration);
    if (every.compareTo(LEAST) < 0) {
      section.fault("every", "once a minute is often enough", "write it like 1h");
    }
    return mapping().map(read -> new Outdoor(file, url, broker, topic, every, read));
  }

  private Optional<URI> address(String text) {
    try {
      URI address = URI.create(text);
      if (List.of("http", "https").contains(String.valueOf(address.getScheme()))
          && address.getHost() != null) {
        return Optional.of(address);
      }
    } catch (IllegalArgumentException unreadable) {
      section.fault("url", "no address: " + unreadable.getMessage(), "write it like https://…");
      return Optional.empty();
    }
    section.fault("url", "http:// or https:// and a host are expected", "write it whole");
    return Optional.empty();
  }

  private Optional<OutdoorMapping> mapping() {
    boolean json = section.choice("payload", "json", List.of("json", "columns")).equals("json");
    Optional<String> dewPoint = section.optional("dew-point");
    Optional<String> humidity = section.optional("humidity");
    String rows = section.optional("rows").orElse("");
    if (!rows.isEmpty() && !rows.startsWith("/")) {
      section.fault("rows", "a JSON pointer begins with /", "write it like /hourly");
      rows = "";
    }
    boolean fahrenheit = section.choice("unit", "C", List.of("C", "F")).equals("F");
    String time = section.text(TIME, TIME);
    String temperature = section.text("temperature", "temperature");
    Optional<ZoneId> zone = section.optional("zone").flatMap(this::zone);
    section.refuseOthers();
    if (dewPoint.isPresent() == humidity.isPresent()) {
      section.fault("dew-point", "one of dew-point and humidity names a word", "give one of them");
      return Optional.empty();
    }
    return Optional.of(
        new OutdoorMapping(json, rows, time, temperature, dewPoint, humidity, fahrenheit, zone));
  }

  private Optional<ZoneId> zone(String name) {
    try {
      return Optional.of(ZoneId.of(name));
    } catch (DateTimeException unknown) {
      section.fault("zone", "no such time zone", "write it like Europe/Lisbon or UTC");
      return Optional.empty();
    }
  }
}
