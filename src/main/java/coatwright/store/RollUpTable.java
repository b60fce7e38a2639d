package coatwright.store;

import coatwright.climate.Reading;
import coatwright.climate.RollUp;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/**
 * Ten-minute and hourly roll-ups of each sensor, kept up in the transaction that writes the
 * readings. Whole numbers are summed, so that the order of arrival cannot change a sum.
 */
final class RollUpTable {
  private static final int[] LEVELS_S = {600, 3600};

  /** The columns of one quantity and how many of its units one stored step is. */
  private enum Quantity {
    TEMP("temp", "temperatureC", 1e6),
    RH("rh", "rhPct", 1e6),
    VAPOUR("vapour", "vapourPressurePa", 1e3),
    SURFACE("surface", "surfaceTemperatureC", 1e6);

    private final String column;
    private final String name;
    private final double steps;

    Quantity(String column, String name, double steps) {
      this.column = column;
      this.name = name;
      this.steps = steps;
    }

    static Quantity of(String name) {
      for (Quantity quantity : values()) {
        if (quantity.name.equals(name)) {
          return quantity;
        }
      }
      throw new IllegalArgumentException("no roll-up is kept of " + name);
    }
  }

  private static final String UPSERT = upsert();

  private record Key(int everyS, long sensor, long fromS) {}

  /** Sum, count, least, greatest, in stored steps. */
  private static final class Tally {
    private long sum;
    private long count;
    private long least = Long.MAX_VALUE;
    private long greatest = Long.MIN_VALUE;

    void add(long value) {
      sum += value;
      count++;
      least = Math.min(least, value);
      greatest = Math.max(greatest, value);
    }
  }

  private final Map<Key, Map<Quantity, Tally>> gathered = new HashMap<>();

  void add(long sensor, Reading reading) {
    for (int everyS : LEVELS_S) {
      for (RollUp one : RollUp.of(reading, Duration.ofSeconds(everyS))) {
        Quantity quantity = Quantity.of(one.quantity());
        Key key = new Key(everyS, sensor, one.from().getEpochSecond());
        gathered
            .computeIfAbsent(key, k -> new EnumMap<>(Quantity.class))
            .computeIfAbsent(quantity, q -> new Tally())
            .add(Math.round(one.sum() * quantity.steps));
      }
    }
  }

  void write(Handle handle) {
    if (gathered.isEmpty()) {
      return;
    }
    try (PreparedBatch batch = handle.prepareBatch(UPSERT)) {
      gathered.forEach(
          (key, row) -> {
            batch.bind(0, key.everyS()).bind(1, key.sensor()).bind(2, key.fromS());
            int at = 3;
            for (Quantity quantity : Quantity.values()) {
              Tally tally = row.get(quantity);
              batch.bind(at++, tally == null ? null : (Long) tally.sum);
              batch.bind(at++, tally == null ? null : (Long) tally.count);
              batch.bind(at++, tally == null ? null : (Long) tally.least);
              batch.bind(at++, tally == null ? null : (Long) tally.greatest);
            }
            batch.add();
          });
      batch.execute();
    }
  }

  private static String upsert() {
    StringBuilder columns = new StringBuilder("every_s, sensor, from_s");
    StringBuilder marks = new StringBuilder("?, ?, ?");
    List<String> updates = new ArrayList<>();
    for (Quantity quantity : Quantity.values()) {
      String c = quantity.column;
      columns.append(", %1$s_sum, %1$s_count, %1$s_min, %1$s_max".formatted(c));
      marks.append(", ?, ?, ?, ?");
      for (String summed : List.of("sum", "count")) {
        updates.add(
            "%1$s_%2$s = coalesce(%1$s_%2$s + excluded.%1$s_%2$s, %1$s_%2$s, excluded.%1$s_%2$s)"
                .formatted(c, summed));
      }
      for (String extreme : List.of("min", "max")) {
        updates.add(
            ("%1$s_%2$s = coalesce(%2$s(%1$s_%2$s, excluded.%1$s_%2$s), %1$s_%2$s,"
                    + " excluded.%1$s_%2$s)")
                .formatted(c, extreme));
      }
    }
    return "insert into roll_up (%s) values (%s) on conflict (every_s, sensor, from_s) do update set %s"
        .formatted(columns, marks, String.join(", ", updates));
  }

  /** Whether intervals of this length can be told from the kept ones. */
  static boolean isKept(Duration every) {
    return every.toMillis() % (LEVELS_S[0] * 1000L) == 0;
  }

  /** Roll-ups of a room, whole intervals that begin in [from, to). */
  static List<RollUp> rollUps(Handle handle, String room, long fromMs, long toMs, Duration every) {
    int levelS = every.toSeconds() % LEVELS_S[1] == 0 ? LEVELS_S[1] : LEVELS_S[0];
    long everyS = every.toSeconds();
    long fromS = Math.floorDiv(fromMs, 1000L * everyS) * everyS;
    long toS = Math.floorDiv(toMs, 1000L);
    Map<Instant, Map<Long, List<RollUp>>> bySensor = new TreeMap<>();
    handle
        .createQuery(
            "select r.* from sensor s join roll_up r on r.every_s = ? and r.sensor = s.id"
                + " where s.room = ? and r.from_s >= ? and r.from_s < ? order by r.from_s, s.id")
        .bind(0, levelS)
        .bind(1, room)
        .bind(2, fromS)
        .bind(3, toS)
        .map(
            (row, context) -> {
              long startS = Math.floorDiv(row.getLong("from_s"), everyS) * everyS;
              Instant start = Instant.ofEpochSecond(startS);
              bySensor
                  .computeIfAbsent(start, at -> new TreeMap<>())
                  .computeIfAbsent(row.getLong("sensor"), sensor -> new ArrayList<>())
                  .addAll(rows(row, start));
              return startS;
            })
        .forEach(startS -> {});
    List<RollUp> all = new ArrayList<>();
    bySensor.values().forEach(sensors -> all.addAll(RollUp.ofSensors(sensors.values())));
    return all;
  }

  private static List<RollUp> rows(ResultSet row, Instant from) throws SQLException {
    List<RollUp> rows = new ArrayList<>();
    for (Quantity quantity : Quantity.values()) {
      long count = row.getLong(quantity.column + "_count");
      if (!row.wasNull()) {
        rows.add(
            new RollUp(
                from,
                quantity.name,
                row.getLong(quantity.column + "_sum") / quantity.steps,
                count,
                row.getLong(quantity.column + "_min") / quantity.steps,
                row.getLong(quantity.column + "_max") / quantity.steps));
      }
    }
    return rows;
  }
}
