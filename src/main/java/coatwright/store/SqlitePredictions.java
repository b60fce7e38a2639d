package coatwright.store;

import coatwright.json.Json;
import coatwright.outlook.PredictionLog;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.sql.SQLException;
import java.util.List;

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

  private static Kept kept(String body) throws SQLException {
    try {
      return Json.mapper().readValue(body, Kept.class);
    } catch (JsonProcessingException e) {
      throw new SQLException("a kept prediction cannot be read", e);
    }
  }
}
