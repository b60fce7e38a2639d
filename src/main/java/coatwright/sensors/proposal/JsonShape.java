package coatwright.sensors.proposal;

import coatwright.sensors.proposal.Guess.Numbers;
import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What JSON payloads of one sender have in common, made into the words of a mapping. */
final class JsonShape {
  private static final int DEEPEST = 8;
  private static final int MOST_LEAVES = 200;
  private static final Set<String> IDENTITIES =
      Set.of(
          "id", "rom", "mac", "address", "addr", "serial", "name", "sensor", "model", "channel",
          "node");
  private static final Set<String> TIMES =
      Set.of("time", "timestamp", "ts", "datetime", "date", "when", "at", "utc");
  private static final Set<String> COUNTERS = Set.of("seq", "sequence", "counter", "n", "count");
  private static final Set<String> UNITS =
      Set.of("unit", "units", "u", "tempunit", "temperatureunit");

  private final List<JsonNode> payloads;
  private final Draft draft;

  JsonShape(List<JsonNode> payloads, Draft draft) {
    this.payloads = payloads;
    this.draft = draft;
  }

  /** Fills the draft; false when nothing in the payloads is a reading. */
  boolean propose() {
    if (payloads.stream().allMatch(JsonShape::isPack)) {
      return pack();
    }
    draft.word("payload", "json");
    Optional<String> each =
        payloads.stream().map(JsonShape::each).flatMap(Optional::stream).findFirst();
    List<JsonNode> records = payloads;
    if (each.isPresent()) {
      String parent = each.get();
      draft.word("each", parent + "/*");
      records = new ArrayList<>();
      for (JsonNode payload : payloads) {
        payload.at(parent).forEach(records::add);
      }
    }
    Map<String, List<JsonNode>> leaves = leaves(records);
    identity(leaves, each.isPresent());
    readings(leaves, each.orElse(""));
    time(each.isPresent() ? merged(leaves, leaves(payloads), each.get()) : leaves);
    return !draft.isEmpty();
  }

  /** RFC 8428: a list of objects with a name or base name, one of them with a value. */
  private static boolean isPack(JsonNode payload) {
    boolean pack = payload.isArray() && !payload.isEmpty();
    boolean value = false;
    for (JsonNode record : payload) {
      pack &= record.isObject() && (record.has("n") || record.has("bn"));
      value |= record.has("v");
    }
    return pack && value;
  }

  private boolean pack() {
    draft.word("payload", "senml");
    Set<String> seen = new HashSet<>();
    for (JsonNode payload : payloads) {
      String baseUnit = "";
      for (JsonNode record : payload) {
        baseUnit = record.path("bu").asText(baseUnit);
        String name = record.path("n").asText("");
        if (name.isEmpty() || !record.has("v") || !seen.add(name)) {
          continue;
        }
        record(name, record.path("u").asText(baseUnit));
      }
    }
    return !draft.isEmpty();
  }

  private void record(String name, String unit) {
    List<String> words = Guess.words(name);
    switch (unit) {
      case "Cel", "K" ->
          draft.record(
              name,
              Guess.AIR,
              words.contains("temp") || words.contains("temperature") || words.contains("t")
                  ? Optional.empty()
                  : Optional.of(
                      "a temperature by its unit; of air, or of wood (surface-temperature)?"));
      case "%RH" -> draft.record(name, Guess.RH, Optional.empty());
      case "%EL" -> draft.record(name, Guess.LEVEL, Optional.empty());
      case "V", "mV" -> draft.record(name, Guess.VOLTAGE, Optional.of("the voltage of its cell?"));
      case "" ->
          draft.note(
              "Record \"%s\" names no unit; if it is wanted, add {name: %s, quantity: ..., unit: ...}."
                  .formatted(name, name));
      default -> draft.note("Record \"%s\" (unit %s) is not read here.".formatted(name, unit));
    }
  }

  /** The place whose members look alike: a list of objects, or objects under names of their own. */
  private static Optional<String> each(JsonNode payload) {
    return each(payload, "", 0);
  }

  private static Optional<String> each(JsonNode node, String path, int depth) {
    if (depth > DEEPEST || !node.isContainerNode()) {
      return Optional.empty();
    }
    if (node.isArray()) {
      boolean objects = !node.isEmpty();
      for (JsonNode child : node) {
        objects &= child.isObject();
      }
      if (objects) {
        return Optional.of(path);
      }
    } else if (node.size() >= 2 && alike(node)) {
      return Optional.of(path);
    }
    if (node.isObject()) {
      for (Map.Entry<String, JsonNode> field : node.properties()) {
        Optional<String> found =
            each(field.getValue(), path + "/" + escaped(field.getKey()), depth + 1);
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return Optional.empty();
  }

  private static boolean alike(JsonNode node) {
    Set<Set<String>> shapes = new HashSet<>();
    for (JsonNode child : node) {
      if (!child.isObject()) {
        return false;
      }
      Set<String> names = new HashSet<>();
      child.properties().forEach(field -> names.add(field.getKey()));
      shapes.add(names);
    }
    return shapes.size() == 1;
  }

  private static String escaped(String name) {
    return name.replace("~", "~0").replace("/", "~1");
  }

  private static Map<String, List<JsonNode>> leaves(List<JsonNode> records) {
    Map<String, List<JsonNode>> leaves = new LinkedHashMap<>();
    for (JsonNode record : records) {
      walk(record, "", 0, leaves);
    }
    return leaves;
  }

  private static void walk(
      JsonNode node, String path, int depth, Map<String, List<JsonNode>> leaves) {
    if (node.isObject() && depth <= DEEPEST) {
      node.properties()
          .forEach(
              field ->
                  walk(field.getValue(), path + "/" + escaped(field.getKey()), depth + 1, leaves));
    } else if (node.isArray() && depth <= DEEPEST) {
      for (int i = 0; i < Math.min(node.size(), 16); i++) {
        walk(node.get(i), path + "/" + i, depth + 1, leaves);
      }
    } else if (leaves.size() < MOST_LEAVES || leaves.containsKey(path)) {
      leaves.computeIfAbsent(path, any -> new ArrayList<>()).add(node);
    }
  }

  private static Map<String, List<JsonNode>> merged(
      Map<String, List<JsonNode>> near, Map<String, List<JsonNode>> root, String each) {
    Map<String, List<JsonNode>> all = new LinkedHashMap<>(near);
    root.forEach(
        (path, values) -> {
          if (!path.startsWith(each + "/")) {
            all.putIfAbsent(path, values);
          }
        });
    return all;
  }

  private void identity(Map<String, List<JsonNode>> leaves, boolean several) {
    List<String> places =
        leaves.keySet().stream().filter(path -> IDENTITIES.contains(lastName(path))).toList();
    boolean differs = places.stream().anyMatch(path -> new HashSet<>(at(leaves, path)).size() > 1);
    if ((several && !places.isEmpty()) || differs) {
      draft.word("sensorAt", places.size() == 1 ? places.get(0) : places);
    } else if (several) {
      draft.note(
          "Nothing in a member names its sensor; all are taken for one. Add sensorAt once there"
              + " is.");
    }
  }

  private static List<JsonNode> at(Map<String, List<JsonNode>> leaves, String path) {
    return leaves.getOrDefault(path, List.of());
  }

  private static String lastName(String path) {
    return path.substring(path.lastIndexOf('/') + 1).toLowerCase(java.util.Locale.ROOT);
  }

  private static List<String> texts(List<JsonNode> nodes) {
    return nodes.stream()
        .filter(node -> node.isNumber() || node.isTextual())
        .map(JsonNode::asText)
        .toList();
  }

  private void readings(Map<String, List<JsonNode>> leaves, String each) {
    Optional<String> unitAt =
        leaves.keySet().stream()
            .filter(path -> UNITS.contains(lastName(path)))
            .filter(
                path -> texts(at(leaves, path)).stream().anyMatch(t -> Guess.unitOf(t).isPresent()))
            .findFirst();
    leaves.forEach(
        (path, nodes) -> {
          Optional<Numbers> numbers = Numbers.of(texts(nodes));
          if (numbers.isEmpty() || isOther(path)) {
            return;
          }
          Optional<String> unitText =
              unitAt.map(at -> texts(at(leaves, at)).get(0)).filter(text -> !text.equals("%"));
          Optional<Guess> guess =
              Guess.of(each + path, Optional.empty(), numbers.get())
                  .map(
                      found ->
                          found.isTemperature() && unitText.isPresent()
                              ? Guess.of(each + path, unitText, numbers.get()).orElse(found)
                              : found);
          if (guess.isEmpty()) {
            draft.note(
                "Not taken: %s = %s. If it is a reading, add it with its quantity and unit."
                    .formatted(path, Guess.shown(numbers.get().last())));
          } else if (draft.has(guess.get().quantity())) {
            draft.note(
                "Not taken: %s = %s, a second %s. Only one can be read by one source."
                    .formatted(path, Guess.shown(numbers.get().last()), guess.get().quantity()));
          } else {
            draft.reading(path, guess.get());
            if (guess.get().isTemperature() && unitAt.isPresent()) {
              draft.toLast("unitAt", unitAt.get());
              draft.toLast("unitMap", Map.of("C", "Cel", "F", "[degF]"));
            }
          }
        });
  }

  private static boolean isOther(String path) {
    String last = lastName(path);
    return TIMES.contains(last) || COUNTERS.contains(last) || IDENTITIES.contains(last);
  }

  private void time(Map<String, List<JsonNode>> leaves) {
    leaves.forEach(
        (path, nodes) -> {
          String last = lastName(path);
          List<String> texts = texts(nodes);
          boolean known = draft.words().containsKey("time") && TIMES.contains(last);
          if (texts.isEmpty() || known) {
            return;
          }
          if (TIMES.contains(last)) {
            time(path, texts.get(texts.size() - 1));
          } else if (COUNTERS.contains(last) && rises(texts)) {
            draft.word("sequenceAt", path);
          }
        });
  }

  private void time(String path, String text) {
    if (text.matches("\\d{9,19}(?:\\.\\d{1,9})?")) {
      draft.word("time", times(path, "epoch-auto"));
    } else if (parses(text, true)) {
      draft.word("time", times(path, "rfc3339"));
    } else if (parses(text, false)) {
      draft.note(
          "The time at %s has no zone, so the arrival counts. If its clock is right, add time: {at: %s, "
                  .formatted(path, path)
              + "form: local, zone: Europe/Berlin} with the sender's zone.");
    }
  }

  private static Map<String, Object> times(String path, String form) {
    Map<String, Object> time = new LinkedHashMap<>();
    time.put("at", path);
    time.put("form", form);
    return time;
  }

  private static boolean parses(String text, boolean withOffset) {
    try {
      String strict = text.replace(' ', 'T');
      Object unused = withOffset ? OffsetDateTime.parse(strict) : LocalDateTime.parse(strict);
      return true;
    } catch (DateTimeParseException e) {
      return false;
    }
  }

  private static boolean rises(List<String> texts) {
    Optional<Numbers> numbers = Numbers.of(texts);
    if (numbers.isEmpty() || numbers.get().values().size() < 3 || !numbers.get().whole()) {
      return false;
    }
    List<Double> values = numbers.get().values();
    for (int i = 1; i < values.size(); i++) {
      if (values.get(i) <= values.get(i - 1)) {
        return false;
      }
    }
    return true;
  }
}
