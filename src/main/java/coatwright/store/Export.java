package coatwright.store;

import coatwright.climate.Reading;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.EntryBody;
import coatwright.journal.Jar;
import coatwright.journal.Journal;
import coatwright.journal.LiveJournal;
import coatwright.journal.Observation;
import coatwright.journal.Part;
import coatwright.journal.Piece;
import coatwright.journal.SaltCheck;
import coatwright.journal.Strike;
import coatwright.json.Json;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Writes the whole log where any spreadsheet can open it: a CSV file a table, and everything again
 * in one JSON file. Times carry the shop's offset; units stand in the headings; struck entries stay
 * in, marked.
 */
public final class Export {
  /** Files written, and how many rows of data each holds. */
  public record Written(Path file, long rows) {}

  private static final List<String> COMMON = List.of("entry", "at", "writtenAt", "who", "struckBy");

  private final SqliteStore store;
  private final Journal journal;
  private final ZoneId zone;

  /**
   * @param zone the shop's own
   */
  public Export(SqliteStore store, ZoneId zone) {
    this.store = store;
    this.journal = new LiveJournal(store.ledger());
    this.zone = zone;
  }

  /**
   * Writes every file into the folder, which is made if it is not there; files of an earlier export
   * are replaced.
   *
   * @throws StoreTrouble if the folder cannot be written
   */
  public List<Written> to(Path folder) {
    try {
      Files.createDirectories(folder);
      List<Written> written = new ArrayList<>();
      written.add(entries(folder));
      written.add(pieces(folder));
      written.add(parts(folder));
      written.add(jars(folder));
      written.add(coats(folder));
      written.add(notes(folder));
      written.add(readings(folder));
      written.add(json(folder));
      return written;
    } catch (IOException | UncheckedIOException e) {
      throw new StoreTrouble(
          folder, "the export cannot be written", "check room and rights there", e);
    }
  }

  private Written entries(Path folder) throws IOException {
    return table(
        folder.resolve("entries.csv"),
        List.of("kind", "about", "body"),
        entry ->
            Optional.of(
                List.of(entry.body().kind(), about(entry.body()), Json.line(entry.body()))));
  }

  private static String about(EntryBody body) {
    if (body instanceof Piece piece) {
      return piece.name();
    } else if (body instanceof Part part) {
      return part.path().toString();
    } else if (body instanceof Jar jar) {
      return jar.name();
    } else if (body instanceof Coat coat) {
      return coat.part().toString();
    } else if (body instanceof Observation seen) {
      return seen.coat().orElse(seen.part().toString());
    }
    return body instanceof SaltCheck check ? check.sensor() : ((Strike) body).entry();
  }

  private Written pieces(Path folder) throws IOException {
    return table(
        folder.resolve("pieces.csv"),
        List.of("name", "room", "promise"),
        of(Piece.class, piece -> List.of(piece.name(), cell(piece.room()), cell(piece.promise()))));
  }

  private Written parts(Path folder) throws IOException {
    return table(
        folder.resolve("parts.csv"),
        List.of("part", "areaM2", "thicknessMm", "species"),
        of(
            Part.class,
            part ->
                List.of(
                    part.path().toString(),
                    cell(part.areaM2()),
                    cell(part.thicknessMm()),
                    cell(part.species()))));
  }

  private Written jars(Path folder) throws IOException {
    return table(
        folder.resolve("jars.csv"),
        List.of("name", "finish", "cutGPerL", "strengthVolPct", "opened", "retarder"),
        of(
            Jar.class,
            jar ->
                List.of(
                    jar.name(),
                    jar.finish(),
                    cell(jar.cutGPerL()),
                    cell(jar.strengthVolPct()),
                    cell(jar.opened()),
                    cell(jar.retarder()))));
  }

  private Written coats(Path folder) throws IOException {
    return table(
        folder.resolve("coats.csv"),
        List.of(
            "part", "jar", "jarEntry", "start", "end", "room", "method", "wetFilmUm", "woodTempC"),
        of(
            Coat.class,
            coat ->
                List.of(
                    coat.part().toString(),
                    coat.jar(),
                    coat.jarEntry(),
                    time(coat.start()),
                    coat.end().map(this::time).orElse(""),
                    coat.room(),
                    coat.method().toString(),
                    cell(coat.wetFilmUm()),
                    cell(coat.woodTempC()))));
  }

  private Written notes(Path folder) throws IOException {
    return table(
        folder.resolve("notes.csv"),
        List.of("part", "coat", "what", "grade", "passed", "text", "residuePct", "storedTempC"),
        of(
            Observation.class,
            seen ->
                List.of(
                    seen.part().toString(),
                    cell(seen.coat()),
                    seen.what().toString(),
                    cell(seen.grade()),
                    cell(seen.passed()),
                    cell(seen.text()),
                    cell(seen.residuePct()),
                    cell(seen.storedTempC()))));
  }

  private static <T extends EntryBody> Function<Entry, Optional<List<Object>>> of(
      Class<T> kind, Function<T, List<Object>> cells) {
    return entry ->
        kind.isInstance(entry.body())
            ? Optional.of(cells.apply(kind.cast(entry.body())))
            : Optional.empty();
  }

  private Written table(
      Path file, List<String> headings, Function<Entry, Optional<List<Object>>> cells)
      throws IOException {
    long rows = 0;
    try (Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
      Csv csv = new Csv(out);
      csv.line(joined(COMMON, headings));
      for (Entry entry : journal.entries()) {
        Optional<List<Object>> own = cells.apply(entry);
        if (own.isPresent()) {
          csv.line(joined(common(entry), own.get()));
          rows++;
        }
      }
    }
    return new Written(file, rows);
  }

  private List<Object> common(Entry entry) {
    return List.of(
        entry.id(),
        time(entry.at()),
        time(entry.writtenAt()),
        cell(entry.who()),
        journal.struckBy(entry.id()).map(Entry::id).orElse(""));
  }

  private static List<Object> joined(List<?> left, List<?> right) {
    List<Object> all = new ArrayList<>(left);
    all.addAll(right);
    return all;
  }

  private Written readings(Path folder) throws IOException {
    Path file = folder.resolve("readings.csv");
    long[] rows = {0};
    try (Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
      Csv csv = new Csv(out);
      csv.line(
          List.of(
              "source",
              "sensor",
              "role",
              "room",
              "part",
              "at",
              "temperatureC",
              "rhPct",
              "surfaceTemperatureC",
              "temperatureErrorK",
              "rhErrorPct",
              "flags",
              "sentTemperatureC",
              "sentRhPct",
              "sentSurfaceTemperatureC"));
      eachReading(
          reading -> {
            csv.line(cells(reading));
            rows[0]++;
          });
    }
    return new Written(file, rows[0]);
  }

  private List<Object> cells(Reading reading) {
    return List.of(
        reading.source(),
        reading.sensor(),
        reading.role().toString(),
        cell(reading.room()),
        cell(reading.part()),
        time(reading.at()),
        cell(reading.temperatureC()),
        cell(reading.rhPct()),
        cell(reading.surfaceTemperatureC()),
        reading.temperatureErrorK(),
        reading.rhErrorPct(),
        String.join(" ", reading.flags()),
        cell(reading.sent().map(Reading.Sent::temperatureC).orElse(OptionalDouble.empty())),
        cell(reading.sent().map(Reading.Sent::rhPct).orElse(OptionalDouble.empty())),
        cell(reading.sent().map(Reading.Sent::surfaceTemperatureC).orElse(OptionalDouble.empty())));
  }

  /** Reads every reading, outside ones too, one at a time: ten years do not fit the memory. */
  private void eachReading(Consumer<Reading> each) {
    store.readings().flush();
    store
        .database()
        .read(
            "reading readings",
            handle -> {
              ReadingRows.forEach(handle, each);
              return true;
            });
  }

  private Written json(Path folder) throws IOException {
    Path file = folder.resolve("log.json");
    long rows = 0;
    try (Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8);
        JsonGenerator json = Json.mapper().getFactory().createGenerator(out)) {
      json.useDefaultPrettyPrinter();
      json.writeStartObject();
      json.writeArrayFieldStart("entries");
      for (Entry entry : journal.entries()) {
        json.writeTree(tree(entry));
        rows++;
      }
      json.writeEndArray();
      json.writeArrayFieldStart("readings");
      long[] count = {0};
      eachReading(
          reading -> {
            writeTo(json, reading);
            count[0]++;
          });
      json.writeEndArray();
      json.writeEndObject();
      return new Written(file, rows + count[0]);
    }
  }

  private ObjectNode tree(Entry entry) {
    ObjectNode tree = Json.mapper().createObjectNode();
    tree.put("entry", entry.id());
    tree.put("kind", entry.body().kind());
    tree.put("at", time(entry.at()));
    tree.put("writtenAt", time(entry.writtenAt()));
    entry.who().ifPresent(who -> tree.put("who", who));
    journal.struckBy(entry.id()).ifPresent(strike -> tree.put("struckBy", strike.id()));
    tree.set("body", Json.mapper().valueToTree(entry.body()));
    return tree;
  }

  private static void writeTo(JsonGenerator json, Reading reading) {
    try {
      json.writeObject(reading);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private String time(Instant at) {
    return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(
        at.truncatedTo(ChronoUnit.MILLIS).atZone(zone));
  }

  private static Object cell(Optional<?> value) {
    return value.map(Object::toString).orElse("");
  }

  private static Object cell(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : "";
  }

  private static Object cell(OptionalInt value) {
    return value.isPresent() ? value.getAsInt() : "";
  }
}
