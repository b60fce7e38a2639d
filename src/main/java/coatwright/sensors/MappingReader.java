package coatwright.sensors;

import coatwright.climate.Role;
import coatwright.quantity.Fault;
import coatwright.quantity.RefusedInput;
import coatwright.sensors.SourceMapping.Placing;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Reads a source's settings into a {@link SourceMapping}. Every fault is found before any is
 * reported; an unknown word is a fault, never passed over.
 */
public final class MappingReader {
  private static final Set<String> WORDS =
      Set.of(
          "source",
          "transport",
          "filter",
          "filters",
          "captures",
          "retained",
          "presence",
          "device",
          "line",
          "settle",
          "payload",
          "charset",
          "each",
          "when",
          "sensorAt",
          "readings",
          "time",
          "sequenceAt",
          "every",
          "correct",
          "limits",
          "role",
          "room",
          "part",
          "broker",
          "chip",
          "nul",
          "resolution",
          "separator",
          "header",
          "batteryLowAt",
          "lowWhen",
          "pattern",
          "records",
          "address",
          "function",
          "base",
          "start",
          "count",
          "layout",
          "at");

  private static final List<String> OF_MODBUS =
      List.of("address", "function", "base", "start", "count");
  private static final Duration USUAL_EVERY = Duration.ofMinutes(1);

  private MappingReader() {}

  /**
   * The mapping of a source of the house: it must say its transport, and its room unless it stands
   * outside.
   *
   * @throws RefusedInput with every fault
   */
  public static SourceMapping read(Setting setting) {
    return read(setting, "source", true);
  }

  /**
   * Named mappings used to read recordings, as {@code listen --mappings} takes them: the name is
   * the source's, transport and room may be absent. One that cannot be used does not spoil the
   * rest.
   *
   * @throws RefusedInput when these are not named groups at all
   */
  public static RecordedMappings readForRecordings(Setting setting) {
    if (!(setting instanceof Setting.MapOf named)) {
      throw RefusedInput.of("mappings", "are not named groups", "write {name: {payload: ...}}");
    }
    Map<String, SourceMapping> usable = new LinkedHashMap<>();
    Map<String, RefusedInput> refused = new LinkedHashMap<>();
    named
        .values()
        .forEach(
            (name, value) -> {
              try {
                usable.put(name, read(value, name, false));
              } catch (RefusedInput faults) {
                refused.put(name, faults);
              }
            });
    return new RecordedMappings(usable, refused);
  }

  /**
   * Mappings by name.
   *
   * @param refused those that cannot be used, and why
   */
  public record RecordedMappings(
      Map<String, SourceMapping> usable, Map<String, RefusedInput> refused) {
    public RecordedMappings {
      usable = Map.copyOf(usable);
      refused = Map.copyOf(refused);
    }
  }

  /** One mapping; {@code live} asks for all that a source of the running house needs. */
  public static SourceMapping read(Setting setting, String name, boolean live) {
    List<Fault> faults = new ArrayList<>();
    if (!(setting instanceof Setting.MapOf map)) {
      throw RefusedInput.of(name, "is not a group of named values", "write source: and the rest");
    }
    String source = name;
    if (map.values().get("source") instanceof Setting.Text text) {
      source = text.value();
    }
    Fields fields = new Fields(source, map, faults);
    fields.refuseUnknown(WORDS);
    if (live) {
      fields.requiredText("source", "give the source a short name of its own");
    }
    Optional<Transport> transport = new TransportReader(fields, live).read();
    Placing placing = placing(fields, live);
    PayloadRules payload = new PayloadReader(fields, placing, live).read();
    modbusWordsOnlyForModbus(fields, payload, transport);
    Duration every = fields.duration("every").orElse(USUAL_EVERY);
    if (every.compareTo(Duration.ofSeconds(1)) < 0 || every.compareTo(Duration.ofDays(1)) > 0) {
      fields.fault("every", "is not between a second and a day", "write it like PT1M");
    }
    Map<Quantity, Limits> limits = limits(fields, placing);
    Map<Quantity, Double> resolution = resolution(fields);
    List<Correction> corrections = corrections(fields);
    if (!faults.isEmpty()) {
      throw new RefusedInput(faults);
    }
    return new SourceMapping(
        source,
        transport,
        placing,
        payload,
        every,
        fields.has("every"),
        limits,
        resolution,
        corrections);
  }

  private static void modbusWordsOnlyForModbus(
      Fields fields, PayloadRules payload, Optional<Transport> transport) {
    if (payload.kind() != PayloadKind.MODBUS_RTU) {
      for (String word : OF_MODBUS) {
        if (fields.has(word)) {
          fields.fault(word, "belongs to payload modbus-rtu", "take it out");
        }
      }
    } else if (transport.orElse(null) instanceof Transport.Mqtt) {
      fields.fault("payload", "needs a serial line", "write transport: serial and its device");
    }
  }

  private static Placing placing(Fields fields, boolean live) {
    Role role = Role.ROOM;
    Optional<String> word = fields.text("role");
    if (word.isPresent()) {
      Optional<Role> known = Words.among(Role.values(), word.get());
      if (known.isEmpty()) {
        fields.fault("role", "is not a role", Words.remedy(word.get(), Role.values()));
      }
      role = known.orElse(role);
    }
    Optional<String> room = fields.text("room");
    if (live && room.isEmpty() && role != Role.OUTSIDE) {
      fields.fault("room", "is missing", "name the room the sensor stands in");
    }
    Optional<String> part = fields.text("part");
    if (part.isPresent() && !part.get().contains("/")) {
      fields.fault("part", "is not a part", "write it as piece/part");
    }
    return new Placing(role, room, part, chip(fields));
  }

  private static Chip chip(Fields fields) {
    Optional<String> named = fields.text("chip");
    if (named.isEmpty()) {
      return Chip.UNKNOWN;
    }
    Optional<Chip> known = Chip.of(named.get());
    if (known.isEmpty()) {
      fields.fault("chip", "is not a known type", Nearest.remedy(named.get(), Chip.known()));
    }
    return known.orElse(Chip.UNKNOWN);
  }

  private static Map<Quantity, Limits> limits(Fields fields, Placing placing) {
    Map<Quantity, Limits> limits = new EnumMap<>(Quantity.class);
    limits.putAll(Limits.usual(placing.role(), placing.chip()));
    fields
        .named("limits")
        .forEach(
            (word, value) -> {
              Optional<Quantity> quantity = Words.among(Quantity.values(), word);
              if (quantity.isEmpty() || !(value instanceof Setting.MapOf pairs)) {
                fields.fault(
                    "limits",
                    word + " is not a quantity with its pairs",
                    "write {air-temperature: {hard: [-40, 85], plausible: [-10, 45]}}");
                return;
              }
              Fields inner = fields.inside("limits " + word, pairs);
              inner.refuseUnknown(Set.of("hard", "plausible"));
              override(inner, limits, quantity.get());
            });
    return limits;
  }

  private static void override(Fields inner, Map<Quantity, Limits> limits, Quantity quantity) {
    Limits usual = limits.getOrDefault(quantity, new Limits(-1e9, 1e9, -1e9, 1e9));
    double[] hard = pair(inner, "hard", usual.hardLow(), usual.hardHigh());
    double[] plausible = pair(inner, "plausible", usual.plausibleLow(), usual.plausibleHigh());
    try {
      limits.put(quantity, new Limits(hard[0], hard[1], plausible[0], plausible[1]));
    } catch (IllegalArgumentException e) {
      inner.fault(
          "plausible",
          String.valueOf(e.getMessage()),
          "put the plausible pair inside the hard one");
    }
  }

  private static double[] pair(Fields inner, String word, double low, double high) {
    List<Setting> values = inner.settings(word);
    if (values.isEmpty()) {
      return new double[] {low, high};
    }
    if (values.size() == 2
        && values.get(0) instanceof Setting.Num first
        && values.get(1) instanceof Setting.Num second) {
      return new double[] {first.value().doubleValue(), second.value().doubleValue()};
    }
    inner.fault(word, "is not a pair of numbers", "write the lowest and the highest: [-10, 45]");
    return new double[] {low, high};
  }

  private static Map<Quantity, Double> resolution(Fields fields) {
    Map<Quantity, Double> resolution = new EnumMap<>(Quantity.class);
    fields
        .named("resolution")
        .forEach(
            (word, value) -> {
              Optional<Quantity> quantity = Words.among(Quantity.values(), word);
              if (quantity.isPresent()
                  && value instanceof Setting.Num step
                  && step.value().signum() > 0) {
                resolution.put(quantity.get(), step.value().doubleValue());
              } else {
                fields.fault(
                    "resolution",
                    word + " is not a quantity with its step",
                    "write {air-temperature: 1, relative-humidity: 1}");
              }
            });
    return resolution;
  }

  private static List<Correction> corrections(Fields fields) {
    List<Correction> corrections = new ArrayList<>();
    for (Fields entry : fields.groups("correct")) {
      entry.refuseUnknown(Set.of("quantity", "gain", "offset", "from", "note"));
      String word = entry.requiredText("quantity", "name the quantity it corrects");
      Optional<Quantity> quantity = Words.among(Quantity.values(), word);
      if (!word.isEmpty() && (quantity.isEmpty() || quantity.get().ofBattery())) {
        entry.fault("quantity", "cannot be corrected", "use a temperature or relative-humidity");
      }
      double gain = entry.number("gain", 1);
      if (gain < 0.5 || gain > 2) {
        entry.fault("gain", "is not between 0.5 and 2", "replace the sensor, or check the figure");
      }
      double offset = entry.number("offset", 0);
      if (Math.abs(offset) > 30) {
        entry.fault("offset", "is more than 30", "replace the sensor, or check the figure");
      }
      Instant from = day(entry);
      String note = entry.text("note").orElse("");
      quantity.ifPresent(known -> corrections.add(new Correction(known, gain, offset, from, note)));
    }
    corrections.sort(Comparator.comparing(Correction::from));
    return corrections;
  }

  private static Instant day(Fields entry) {
    String text = entry.requiredText("from", "write the day it holds from, like 2026-03-01");
    try {
      return text.isEmpty()
          ? Instant.EPOCH
          : LocalDate.parse(text).atStartOfDay(ZoneOffset.UTC).toInstant();
    } catch (DateTimeParseException e) {
      entry.fault("from", "is not a day", "write it like 2026-03-01");
      return Instant.EPOCH;
    }
  }
}
