package coatwright.replay;

import coatwright.film.Finish;
import coatwright.film.SpiritDrying;
import coatwright.journal.Method;
import coatwright.journal.Observation.What;
import coatwright.journal.PartPath;
import coatwright.journal.Retarder;
import coatwright.journal.ShopTime;
import coatwright.json.Json;
import coatwright.outlook.SpiritOnly;
import coatwright.quantity.Fault;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.ToDoubleBiFunction;

/**
 * Reads a coat list: a CSV whose header, or JSON objects whose keys, are {@code
 * id,part,finish,start,cut,wetFilm,wood,strength,retarder,method,seen}. Quantities carry their
 * units; {@code start} is a time of the shop or {@code +30min} from the record's first reading. All
 * faults are told together.
 */
final class CoatList {
  private static final List<String> KEYS =
      List.of(
          "id",
          "part",
          "finish",
          "start",
          "cut",
          "wetFilm",
          "wood",
          "strength",
          "retarder",
          "method",
          "seen");
  private static final int[] REFERENCE_MIN = {0, 15, 30, 45, 105, 145};
  private static final int LATER_EVERY_MIN = 40;
  private static final double REFERENCE_CUT_G_PER_L = 1.5 * 119.826427;
  private static final int MOST_COATS = 40;

  /** Clouded, with no grade told: the middle of the scale. */
  private static final int UNTOLD_GRADE = 3;

  private final Map<String, Finish> finishes;
  private final String usualFinish;
  private final ShopTime times;
  private final Instant first;
  private final List<Fault> faults = new ArrayList<>();

  /**
   * @param first the record's first reading
   */
  CoatList(Map<String, Finish> finishes, String usualFinish, ZoneId zone, Instant first) {
    this.finishes = finishes;
    this.usualFinish = usualFinish;
    this.times = new ShopTime(Clock.fixed(first, zone), zone);
    this.first = first;
  }

  /**
   * N coats of the reference job from the first reading: 1.5 lb, 75 µm, 95 % spirit, at 0, 15, 30,
   * 45, 105 and 145 min, and every 40 min after that; of another finish than spirit without cut and
   * strength.
   */
  List<ReplayCoat> schedule(int coats) {
    if (coats < 1 || coats > MOST_COATS) {
      throw RefusedInput.of(
          "schedule \"" + coats + "\"", "is 1 to " + MOST_COATS + " coats", "write --schedule 6");
    }
    Finish finish = finish("", OptionalInt.empty()).orElseThrow(() -> new RefusedInput(faults));
    boolean spirit = finish.drying() instanceof SpiritDrying;
    List<ReplayCoat> list = new ArrayList<>();
    for (int i = 0; i < coats; i++) {
      int last = REFERENCE_MIN.length - 1;
      int minute =
          i <= last ? REFERENCE_MIN[i] : REFERENCE_MIN[last] + (i - last) * LATER_EVERY_MIN;
      list.add(
          new ReplayCoat(
              "coat-" + (i + 1),
              PartPath.parse("reference/board"),
              finish,
              first.plusSeconds(60L * minute),
              spirit ? OptionalDouble.of(REFERENCE_CUT_G_PER_L) : OptionalDouble.empty(),
              OptionalDouble.of(75),
              OptionalDouble.empty(),
              spirit ? OptionalDouble.of(95) : OptionalDouble.empty(),
              Optional.empty(),
              Method.BRUSH,
              Optional.empty()));
    }
    return list;
  }

  /** JSON where the text begins with a bracket or a brace, else CSV. */
  List<ReplayCoat> read(String text) {
    String stripped = text.strip();
    boolean json = stripped.startsWith("[") || stripped.startsWith("{");
    List<ReplayCoat> coats = new ArrayList<>();
    Set<String> ids = new TreeSet<>();
    for (Row row : json ? objects(stripped) : rows(stripped)) {
      coat(row).ifPresent(coats::add);
      if (!ids.add(row.value("id"))) {
        fault(row, "id \"" + row.value("id") + "\"", "stands twice", "give every coat its own");
      }
    }
    if (coats.isEmpty() && faults.isEmpty()) {
      throw RefusedInput.of("coats", "the list holds none", "give it a line for every coat");
    }
    if (!faults.isEmpty()) {
      throw new RefusedInput(faults);
    }
    coats.sort(Comparator.comparing(ReplayCoat::start));
    return coats;
  }

  /** A line's cells by name. */
  private record Row(int line, Map<String, String> cells) {
    String value(String key) {
      return cells.getOrDefault(key, "").strip();
    }
  }

  private List<Row> rows(String text) {
    List<Row> rows = new ArrayList<>();
    String[] lines = text.split("\r?\n", -1);
    String[] header = lines[0].split(",", -1);
    for (String name : header) {
      known(name.strip());
    }
    for (int i = 1; i < lines.length; i++) {
      if (lines[i].isBlank() || lines[i].startsWith("#")) {
        continue;
      }
      String[] cells = lines[i].split(",", -1);
      if (cells.length > header.length) {
        faults.add(
            Fault.of(
                    "coat list",
                    cells.length + " cells where the header names " + header.length,
                    "leave commas out of the cells")
                .onLine(i + 1));
      }
      Map<String, String> named = new LinkedHashMap<>();
      for (int c = 0; c < Math.min(cells.length, header.length); c++) {
        named.put(header[c].strip(), cells[c]);
      }
      rows.add(new Row(i + 1, named));
    }
    return rows;
  }

  private List<Row> objects(String text) {
    JsonNode root;
    try {
      root = Json.mapper().readTree(text);
    } catch (JsonProcessingException e) {
      throw RefusedInput.of(
          "coat list", "is no JSON: " + Json.fault(e), "write [{\"part\": \"a/b\", ...}]");
    }
    JsonNode list = root.isObject() && root.has("coats") ? root.get("coats") : root;
    List<Row> rows = new ArrayList<>();
    for (JsonNode object : list.isArray() ? list : Json.mapper().createArrayNode().add(list)) {
      Map<String, String> named = new LinkedHashMap<>();
      for (Map.Entry<String, JsonNode> field : object.properties()) {
        known(field.getKey());
        if (!field.getValue().isNull()) {
          named.put(field.getKey(), field.getValue().asText());
        }
      }
      rows.add(new Row(rows.size() + 1, named));
    }
    return rows;
  }

  private void known(String key) {
    if (!KEYS.contains(key)) {
      faults.add(
          Fault.of(
              "\"" + key + "\"", "is no column of a coat list", "use " + String.join(",", KEYS)));
    }
  }

  private void fault(Row row, String input, String rule, String remedy) {
    faults.add(Fault.of(input, rule, remedy).onLine(row.line()));
  }

  private Optional<ReplayCoat> coat(Row row) {
    int before = faults.size();
    Optional<PartPath> part = read(row, "part", "board/face", PartPath::parse);
    Optional<Finish> finish = finish(row.value("finish"), OptionalInt.of(row.line()));
    Optional<Instant> start = read(row, "start", "+0min", this::start);
    Optional<Method> method = read(row, "method", "brush", CoatList::method);
    OptionalDouble cut = number(row, "cut", Quantities::cutGPerL);
    OptionalDouble wet = number(row, "wetFilm", Quantities::lengthUm);
    OptionalDouble wood = number(row, "wood", Quantities::temperatureC);
    OptionalDouble strength = number(row, "strength", Quantities::volumeFractionPct);
    Optional<String> retarder =
        row.value("retarder").isEmpty()
            ? Optional.empty()
            : read(row, "retarder", "", t -> Retarder.parse("retarder", t).toString());
    Optional<ReplayCoat.Seen> seen =
        row.value("seen").isEmpty() ? Optional.empty() : read(row, "seen", "", CoatList::seen);
    finish.ifPresent(f -> refuseSpirit(row, f));
    if (faults.size() > before) {
      return Optional.empty();
    }
    String id = row.value("id").isEmpty() ? "coat-" + row.line() : row.value("id");
    return Optional.of(
        new ReplayCoat(
            id,
            part.orElseThrow(),
            finish.orElseThrow(),
            start.orElseThrow(),
            cut,
            wet,
            wood,
            strength,
            retarder,
            method.orElseThrow(),
            seen));
  }

  private void refuseSpirit(Row row, Finish finish) {
    for (String key : SpiritOnly.KEYS) {
      String text = row.value(key);
      if (!text.isEmpty()) {
        SpiritOnly.refused(finish, key, text).ifPresent(f -> faults.add(f.onLine(row.line())));
      }
    }
  }

  private <T> Optional<T> read(Row row, String key, String otherwise, Function<String, T> reader) {
    String text = row.value(key).isEmpty() ? otherwise : row.value(key);
    try {
      return Optional.of(reader.apply(text));
    } catch (RefusedInput refused) {
      refused.faults().forEach(f -> faults.add(f.onLine(row.line())));
      return Optional.empty();
    }
  }

  private OptionalDouble number(Row row, String key, ToDoubleBiFunction<String, String> reader) {
    if (row.value(key).isEmpty()) {
      return OptionalDouble.empty();
    }
    return read(row, key, "", text -> OptionalDouble.of(reader.applyAsDouble(key, text)))
        .orElse(OptionalDouble.empty());
  }

  private Optional<Finish> finish(String name, OptionalInt line) {
    String wanted = name.isEmpty() ? usualFinish : name;
    Finish finish = finishes.get(wanted);
    if (finish == null) {
      Fault unknown =
          Fault.of(
              "finish \"" + wanted + "\"",
              "has no file in config/finishes",
              "name one of " + String.join(", ", new TreeSet<>(finishes.keySet())));
      faults.add(line.isPresent() ? unknown.onLine(line.getAsInt()) : unknown);
    }
    return Optional.ofNullable(finish);
  }

  private Instant start(String text) {
    return text.startsWith("+")
        ? first.plus(Quantities.duration("start", text.substring(1)))
        : times.instant("start", text);
  }

  private static Method method(String text) {
    for (Method method : Method.values()) {
      if (method.toString().equals(text.toLowerCase(Locale.ROOT))) {
        return method;
      }
    }
    throw RefusedInput.of(
        "method \"" + text + "\"", "is brush, pad, wipe or spray", "write one of them");
  }

  private static ReplayCoat.Seen seen(String text) {
    String[] two = text.toLowerCase(Locale.ROOT).split("=", 2);
    for (What what : What.values()) {
      if (what.toString().equals(two[0].strip())) {
        return seen(text, what, two.length > 1 ? two[1].strip() : "");
      }
    }
    throw unclear(text);
  }

  private static ReplayCoat.Seen seen(String text, What what, String value) {
    boolean bare = what == What.CLEARED || what == What.TACKY;
    if (bare && value.isEmpty()) {
      return new ReplayCoat.Seen(what, OptionalInt.empty(), Optional.empty());
    }
    if (what == What.CLOUDED && value.matches("[0-5]?")) {
      int grade = value.isEmpty() ? UNTOLD_GRADE : Integer.parseInt(value);
      return new ReplayCoat.Seen(what, OptionalInt.of(grade), Optional.empty());
    }
    boolean passed = value.equals("pass") || value.equals("fine");
    if (!bare
        && what != What.CLOUDED
        && what != What.WEIGHED
        && (passed || value.equals("fail") || value.equals("not-fine"))) {
      return new ReplayCoat.Seen(what, OptionalInt.empty(), Optional.of(passed));
    }
    throw unclear(text);
  }

  private static RefusedInput unclear(String text) {
    return RefusedInput.of(
        "seen \"" + text + "\"",
        "is nothing that can be noted of a coat",
        "write clouded=0..5, cleared, tacky, touch|thumbnail|powder|smell|print=pass|fail or"
            + " rubbed-out=fine|not-fine");
  }
}
