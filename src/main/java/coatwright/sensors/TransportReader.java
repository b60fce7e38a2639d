package coatwright.sensors;

import coatwright.sensors.mqtt.TopicFilter;
import coatwright.sensors.serial.SerialSettings;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Reads how a source's payloads come in. */
final class TransportReader {
  private static final Duration USUAL_SETTLE = Duration.ofSeconds(3);
  private static final List<String> OF_MQTT =
      List.of("filter", "captures", "retained", "presence", "broker");
  private static final List<String> OF_SERIAL = List.of("device", "line", "settle");

  private final Fields fields;
  private final boolean live;

  TransportReader(Fields fields, boolean live) {
    this.fields = fields;
    this.live = live;
  }

  Optional<Transport> read() {
    Optional<String> word = fields.text("transport");
    if (word.isEmpty()) {
      if (live) {
        fields.fault("transport", "is missing", "write mqtt or serial");
      }
      return Optional.empty();
    }
    return switch (word.get()) {
      case "mqtt" -> Optional.of(mqtt());
      case "serial" -> Optional.of(serial());
      default -> {
        fields.fault("transport", "is not a transport", "write mqtt or serial");
        yield Optional.empty();
      }
    };
  }

  private Transport mqtt() {
    refuse(OF_SERIAL, "serial");
    List<String> filters = new ArrayList<>(fields.texts("filter"));
    filters.addAll(fields.named("filters").keySet());
    if (live && filters.isEmpty()) {
      fields.fault("filter", "is missing", "write the topic, like shop/bench/temperature");
    }
    for (String filter : filters) {
      TopicFilter.faultOf(filter)
          .ifPresent(
              rule -> fields.fault("filter", "\"" + filter + "\" " + rule, "narrow the filter"));
    }
    return new Transport.Mqtt(
        fields.text("broker").orElse("shop"), filters, captures(filters), retained(), presence());
  }

  private List<String> captures(List<String> filters) {
    List<String> names = fields.texts("captures");
    for (String filter : filters) {
      long levels = List.of(filter.split("/", -1)).stream().filter("+"::equals).count();
      if (!names.isEmpty() && names.size() != levels) {
        fields.fault(
            "captures",
            "names %d levels, and \"%s\" has %d".formatted(names.size(), filter, levels),
            "name every + in order; the one named sensor tells the sensors apart");
      }
    }
    return names;
  }

  private Transport.Retained retained() {
    Optional<String> word = fields.text("retained");
    if (word.isEmpty()) {
      return Transport.Retained.LAST_KNOWN;
    }
    Optional<Transport.Retained> known = Words.among(Transport.Retained.values(), word.get());
    if (known.isEmpty()) {
      fields.fault(
          "retained", "is not known", Words.remedy(word.get(), Transport.Retained.values()));
    }
    return known.orElse(Transport.Retained.LAST_KNOWN);
  }

  /** The presence topic; a source whose payloads are the words themselves needs none. */
  private Optional<Transport.Presence> presence() {
    boolean isThePayload = fields.text("payload").filter("word"::equals).isPresent();
    return isThePayload ? Optional.empty() : presence(fields, true);
  }

  /**
   * @param ofTopic the words come on a topic of their own, which must be named
   */
  static Optional<Transport.Presence> presence(Fields fields, boolean ofTopic) {
    Optional<Fields> group = fields.group("presence");
    if (group.isEmpty()) {
      return Optional.empty();
    }
    Fields inner = group.get();
    inner.refuseUnknown(Set.of("filter", "present", "absent", "ignoreCase"));
    String filter =
        ofTopic
            ? inner.requiredText("filter", "write the topic that says present or absent")
            : inner.text("filter").orElse("");
    if (!filter.isEmpty()) {
      TopicFilter.faultOf(filter)
          .ifPresent(rule -> inner.fault("filter", rule, "narrow the filter"));
    }
    List<String> present = inner.texts("present");
    List<String> absent = inner.texts("absent");
    if (absent.isEmpty()) {
      inner.fault("absent", "is missing", "write the word that means the node is gone");
    }
    return Optional.of(
        new Transport.Presence(filter, present, absent, inner.flag("ignoreCase", false)));
  }

  private Transport serial() {
    refuse(OF_MQTT, "mqtt");
    String device = fields.text("device").orElse("");
    if (device.isBlank() && live) {
      fields.fault("device", "is missing", "write the stable path, like by-id/usb-...");
    }
    if (device.contains("..")) {
      fields.fault("device", "climbs out of its folder", "write the path as it is under /dev");
    }
    SerialSettings line = SerialSettings.USUAL;
    Optional<String> written = fields.text("line");
    if (written.isPresent()) {
      Optional<SerialSettings> parsed = SerialSettings.parse(written.get());
      if (parsed.isEmpty()) {
        fields.fault("line", "is not a speed and a form", "write it like 9600 8N1");
      }
      line = parsed.orElse(line);
    }
    Duration settle = fields.duration("settle").orElse(USUAL_SETTLE);
    if (settle.isNegative() || settle.compareTo(Duration.ofMinutes(2)) > 0) {
      fields.fault("settle", "is not between nothing and two minutes", "write it like PT3S");
    }
    return new Transport.Serial(device, line, settle);
  }

  private void refuse(List<String> words, String transport) {
    for (String word : words) {
      if (fields.has(word)) {
        fields.fault(word, "belongs to transport " + transport, "take it out");
      }
    }
  }
}
