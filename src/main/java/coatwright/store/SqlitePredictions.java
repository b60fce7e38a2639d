package coatwright.store;

import coatwright.json.Json;
import coatwright.outlook.PredictionLog;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Predictions that moved, in the file. */
final class SqlitePredictions implements PredictionLog {
  private final Database database;

  SqlitePredictions(Database database) {
    this.database = database;
  }

  @Override
  public void keep(Kept prediction) {
    database.writeQuickly(
        "keeping a prediction",
        handle ->
            handle.execute(
                "insert into prediction (part, milestone, made_at, body) values (?, ?, ?, ?)",
                prediction.part(),
                prediction.milestone(),
                prediction.madeAt().toString(),
                Json.line(prediction)));
  }

  @Override
  public List<Kept> history(String part, String milestone) {
    return database.read(
        "reading predictions",
        handle ->
            handle
                .createQuery(
                    "select body from prediction where part = ? and milestone = ? order by number")
                .bind(0, part)
                .bind(1, milestone)
                .map((row, context) -> kept(row.getString("body")))
                .list());
  }

  /** Predictions after the one with this number. */
  static List<Outgoing.OfPrediction> after(Handle handle, long number, int atMost) {
    return handle
        .select(
            "select number, body from prediction where number > ? order by number limit ?",
            number,
            atMost)
        .map(
            (row, context) -> {
              Kept kept = kept(row.getString("body"));
              long its = row.getLong("number");
              return new Outgoing.OfPrediction(its, kept, sameMillisecondBefore(handle, its, kept));
            })
        .list();
  }

  /** How many right before it are of its part, milestone and millisecond. */
  private static long sameMillisecondBefore(Handle handle, long number, Kept kept) {
    long atMs = kept.madeAt().toEpochMilli();
    long same = 0;
    for (long before = number; ; same++) {
      Optional<Neighbour> neighbour =
          handle
              .select(
                  "select number, made_at from prediction where part = ? and milestone = ?"
                      + " and number < ? order by number desc limit 1",
                  kept.part(),
                  kept.milestone(),
                  before)
              .map(
                  (row, context) ->
                      new Neighbour(row.getLong(1), Instant.parse(row.getString(2)).toEpochMilli()))
              .findOne();
      if (neighbour.isEmpty() || neighbour.get().atMs() != atMs) {
        return same;
      }
      before = neighbour.get().number();
    }
  }

  private record Neighbour(long number, long atMs) {}

  private static Kept kept(String body) throws SQLException {
    try {
      return Json.mapper().readValue(body, Kept.class);
    } catch (JsonProcessingException e) {
      throw new SQLException("a kept prediction cannot be read", e);
    }
  }
}
