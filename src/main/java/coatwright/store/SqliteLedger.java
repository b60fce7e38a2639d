package coatwright.store;

import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.EntryBody;
import coatwright.journal.Jar;
import coatwright.journal.Ledger;
import coatwright.journal.Observation;
import coatwright.journal.Part;
import coatwright.journal.Piece;
import coatwright.journal.SaltCheck;
import coatwright.journal.Strike;
import coatwright.json.Json;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/** The journal's entries in the file. Appending returns when they are on the disk. */
final class SqliteLedger implements Ledger {
  private static final Map<String, Class<? extends EntryBody>> BODIES =
      Map.of(
          "piece", Piece.class,
          "part", Part.class,
          "jar", Jar.class,
          "coat", Coat.class,
          "note", Observation.class,
          "strike", Strike.class,
          "calibration", SaltCheck.class);

  private final Database database;

  SqliteLedger(Database database) {
    this.database = database;
  }

  @Override
  public List<Entry> append(List<Line> lines) {
    if (lines.isEmpty()) {
      return List.of();
    }
    return database.writeDurably("writing the journal", handle -> append(handle, lines));
  }

  private static List<Entry> append(Handle handle, List<Line> lines) {
    long number =
        handle.createQuery("select coalesce(max(number), 0) from entry").mapTo(Long.class).one();
    List<Entry> entries = new ArrayList<>();
    PreparedBatch batch =
        handle.prepareBatch(
            "insert into entry (number, kind, at, written_at, who, part, jar, body)"
                + " values (?, ?, ?, ?, ?, ?, ?, ?)");
    for (Line line : lines) {
      number++;
      batch
          .bind(0, number)
          .bind(1, line.body().kind())
          .bind(2, line.at().toString())
          .bind(3, line.writtenAt().toString())
          .bind(4, line.who().orElse(null))
          .bind(5, partOf(line.body()).orElse(null))
          .bind(6, jarOf(line.body()).orElse(null))
          .bind(7, Json.line(line.body()))
          .add();
      entries.add(new Entry("e" + number, line.at(), line.writtenAt(), line.who(), line.body()));
    }
    batch.execute();
    return List.copyOf(entries);
  }

  private static Optional<String> partOf(EntryBody body) {
    if (body instanceof Part part) {
      return Optional.of(part.path().toString());
    }
    if (body instanceof Coat coat) {
      return Optional.of(coat.part().toString());
    }
    return body instanceof Observation seen
        ? Optional.of(seen.part().toString())
        : Optional.empty();
  }

  private static Optional<String> jarOf(EntryBody body) {
    if (body instanceof Jar jar) {
      return Optional.of(jar.name());
    }
    return body instanceof Coat coat ? Optional.of(coat.jar()) : Optional.empty();
  }

  @Override
  public List<Entry> entries() {
    return database.read(
        "reading the journal",
        handle ->
            handle
                .createQuery(
                    "select number, kind, at, written_at, who, body from entry order by number")
                .map((row, context) -> entry(row))
                .list());
  }

  /** Entries after the one with this number; a strike comes with what it strikes out. */
  static List<Outgoing.OfEntry> after(Handle handle, long number, int atMost) {
    List<Entry> entries = entries(handle, "number > ? order by number limit ?", number, atMost);
    List<Outgoing.OfEntry> after = new ArrayList<>();
    for (Entry entry : entries) {
      Optional<Entry> struck =
          entry.body() instanceof Strike strike
              ? numberOf(strike.entry())
                  .flatMap(of -> entries(handle, "number = ?", of).stream().findFirst())
              : Optional.empty();
      after.add(new Outgoing.OfEntry(numberOf(entry.id()).orElseThrow(), entry, struck));
    }
    return after;
  }

  private static List<Entry> entries(Handle handle, String which, Object... values) {
    return handle
        .select("select number, kind, at, written_at, who, body from entry where " + which, values)
        .map((row, context) -> entry(row))
        .list();
  }

  private static Optional<Long> numberOf(String id) {
    return id.matches("e\\d{1,18}") ? Optional.of(Long.valueOf(id.substring(1))) : Optional.empty();
  }

  private static Entry entry(ResultSet row) throws SQLException {
    String kind = row.getString("kind");
    Class<? extends EntryBody> bodyType = BODIES.get(kind);
    if (bodyType == null) {
      throw new SQLException("entry e" + row.getLong("number") + " is of unknown kind " + kind);
    }
    try {
      return new Entry(
          "e" + row.getLong("number"),
          Instant.parse(row.getString("at")),
          Instant.parse(row.getString("written_at")),
          Optional.ofNullable(row.getString("who")),
          Json.mapper().readValue(row.getString("body"), bodyType));
    } catch (JsonProcessingException e) {
      throw new SQLException("entry e" + row.getLong("number") + " cannot be read", e);
    }
  }
}
