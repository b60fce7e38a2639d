package coatwright.store;

import coatwright.json.Json;
import coatwright.watch.Warning;
import coatwright.watch.WarningLog;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;

/**
 * Warnings in the file. A warning may rest on a reading that is not yet committed, so readings go
 * first.
 */
final class SqliteWarnings implements WarningLog {
  private final Database database;
  private final SqliteReadings readings;

  SqliteWarnings(Database database, SqliteReadings readings) {
    this.database = database;
    this.readings = readings;
  }

  @Override
  public void keep(Warning warning) {
    readings.flush();
    database.writeDurably(
        "keeping a warning",
        handle ->
            handle.execute(
                "insert into warning (id, from_ms, to_ms, body) values (?, ?, ?, ?)"
                    + " on conflict (id) do update set from_ms = excluded.from_ms,"
                    + " to_ms = excluded.to_ms, body = excluded.body",
                warning.id(),
                warning.from().toEpochMilli(),
                warning.to().map(Instant::toEpochMilli).orElse(null),
                Json.line(warning)));
  }

  @Override
  public List<Warning> between(Instant from, Instant to) {
    return database.read(
        "reading warnings",
        handle ->
            handle
                .createQuery(
                    "select body from warning where from_ms < ? and (to_ms is null or to_ms > ?)"
                        + " order by from_ms, id")
                .bind(0, SqliteReadings.millis(to))
                .bind(1, SqliteReadings.millis(from))
                .map((row, context) -> warning(row.getString("body")))
                .list());
  }

  @Override
  public List<Warning> open() {
    return database.read(
        "reading warnings",
        handle ->
            handle
                .createQuery("select body from warning where to_ms is null order by from_ms, id")
                .map((row, context) -> warning(row.getString("body")))
                .list());
  }

  private static Warning warning(String body) throws SQLException {
    try {
      return Json.mapper().readValue(body, Warning.class);
    } catch (JsonProcessingException e) {
      throw new SQLException("a kept warning cannot be read", e);
    }
  }
}
