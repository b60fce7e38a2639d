package coatwright.store;

import coatwright.climate.Reading;
import coatwright.climate.Role;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.jdbi.v3.core.Handle;

/**
 * Reads readings back. A chart asks for a hundred thousand rows, so they come by column number, and
 * what a sensor says of itself is made once, not for every row.
 */
final class ReadingRows {
  /** The same for every reading of one sensor in one place. */
  private record Sensor(
      String source, String sensor, Role role, Optional<String> room, Optional<String> part) {}

  private record Manner(double temperatureErrorK, double rhErrorPct, List<String> flags) {}

  /** A reading and where it lies. */
  record Row(Reading reading, Outbox.Place place, long commit) {
    /** The place to go on from in a stream of readings. */
    Outbox.Place placeIn(Outbox.Stream stream) {
      return stream == Outbox.Stream.HISTORY ? place : new Outbox.Place(commit, 0, 0);
    }
  }

  /** What a reading is made of, in the order it is read in. */
  private static final String ROW =
      "r.sensor, r.manner, r.at_ms, r.temp, r.rh, r.surface,"
          + " r.sent_temp, r.sent_rh, r.sent_surface";

  private static final String COLUMNS = "select " + ROW + " from reading r where r.sensor = ?";

  private static final String COMMITTED_AFTER =
      "select "
          + ROW
          + ", r.nth, o.number as commit_number from outbox o join reading r"
          + " on r.sensor = o.sensor and r.at_ms = o.at_ms and r.nth = o.nth"
          + " where o.number > ? order by o.number limit ?";

  private static final String LYING_AFTER =
      "select "
          + ROW
          + ", r.nth, 0 as commit_number from reading r"
          + " where (r.sensor, r.at_ms, r.nth) > (?, ?, ?)"
          + " order by r.sensor, r.at_ms, r.nth limit ?";

  private static final String MEASURED =
      "select "
          + ROW
          + ", r.nth, 0 as commit_number from sensor s join reading r on r.sensor = s.id"
          + " where r.at_ms >= ? and r.at_ms < ? order by r.sensor, r.at_ms, r.nth";

  private final Map<Long, Sensor> sensors;
  private final Map<Long, Manner> manners;

  private ReadingRows(Map<Long, Sensor> sensors, Map<Long, Manner> manners) {
    this.sensors = sensors;
    this.manners = manners;
  }

  /** Readings of a room over [from, to), oldest first. */
  static List<Reading> ofRoom(Handle handle, String room, long fromMs, long toMs) {
    return of(handle, sensor -> sensor.room().filter(room::equals).isPresent(), fromMs, toMs);
  }

  /** Readings of a source over [from, to), oldest first. */
  static List<Reading> ofSource(Handle handle, String source, long fromMs, long toMs) {
    return of(handle, sensor -> sensor.source().equals(source), fromMs, toMs);
  }

  private static List<Reading> of(Handle handle, Predicate<Sensor> wanted, long fromMs, long toMs) {
    ReadingRows rows = of(handle);
    List<Reading> readings = new ArrayList<>();
    int told = 0;
    for (Map.Entry<Long, Sensor> sensor : rows.sensors.entrySet()) {
      if (wanted.test(sensor.getValue())) {
        int before = readings.size();
        rows.read(handle, sensor.getKey(), fromMs, toMs, readings::add);
        told += readings.size() > before ? 1 : 0;
      }
    }
    if (told > 1) {
      // Each sensor's rows are in order and the sort is stable, so this only weaves them together.
      readings.sort((a, b) -> a.at().compareTo(b.at()));
    }
    return readings;
  }

  /** Every reading ever, sensor by sensor, oldest first. */
  static void forEach(Handle handle, Consumer<Reading> each) {
    ReadingRows rows = of(handle);
    for (long sensor : rows.sensors.keySet()) {
      rows.read(handle, sensor, Long.MIN_VALUE, Long.MAX_VALUE, each);
    }
  }

  /** The readings of a stretch that have no date, in the order they came. */
  static void forEachUndated(Handle handle, long stretch, Consumer<Reading> each) {
    ReadingRows rows = of(handle);
    String sql =
        "select sensor, manner, at_ms, temp, rh, surface,"
            + " sent_temp, sent_rh, sent_surface from undated_reading where stretch = ?"
            + " order by id";
    try (PreparedStatement statement = handle.getConnection().prepareStatement(sql)) {
      statement.setLong(1, stretch);
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          Sensor sensor = known(rows.sensors, row.getLong(1));
          each.accept(reading(row, sensor, rows.manner(handle, row.getLong(2))));
        }
      }
    } catch (SQLException e) {
      throw new IllegalStateException("readings without a date cannot be read", e);
    }
  }

  /** Readings in the order of their commit, after the one with this number. */
  static List<Row> committedAfter(Handle handle, long number, int atMost) {
    return of(handle).rows(handle, COMMITTED_AFTER, number, atMost);
  }

  /** Readings sensor by sensor, after a place. */
  static List<Row> lyingAfter(Handle handle, Outbox.Place place, int atMost) {
    return of(handle).rows(handle, LYING_AFTER, place.number(), place.atMs(), place.nth(), atMost);
  }

  /** Readings measured in [from, to), sensor by sensor. */
  static List<Row> measured(Handle handle, long fromMs, long toMs) {
    return of(handle).rows(handle, MEASURED, fromMs, toMs);
  }

  private List<Row> rows(Handle handle, String sql, long... values) {
    List<Row> rows = new ArrayList<>();
    try (PreparedStatement statement = handle.getConnection().prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        statement.setLong(i + 1, values[i]);
      }
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          long sensor = row.getLong(1);
          Reading reading = reading(row, sensor(handle, sensor), manner(handle, row.getLong(2)));
          rows.add(
              new Row(
                  reading,
                  new Outbox.Place(sensor, row.getLong("at_ms"), row.getLong("nth")),
                  row.getLong("commit_number")));
        }
      }
    } catch (SQLException e) {
      throw new IllegalStateException("readings cannot be read", e);
    }
    return rows;
  }

  private static ReadingRows of(Handle handle) {
    return new ReadingRows(sensors(handle), manners(handle));
  }

  private static Map<Long, Sensor> sensors(Handle handle) {
    Map<Long, Sensor> sensors = new TreeMap<>();
    handle
        .createQuery("select id, source, sensor, role, room, part from sensor")
        .map((row, context) -> sensors.put(row.getLong(1), sensor(row)) == null)
        .forEach(added -> {});
    return sensors;
  }

  private static Map<Long, Manner> manners(Handle handle) {
    Map<Long, Manner> manners = new HashMap<>();
    handle
        .createQuery("select id, temperature_error, rh_error, flags from manner")
        .map((row, context) -> manners.put(row.getLong(1), manner(row)) == null)
        .forEach(added -> {});
    return manners;
  }

  private static Sensor sensor(ResultSet row) throws SQLException {
    String room = row.getString(5);
    String part = row.getString(6);
    return new Sensor(
        row.getString(2),
        row.getString(3),
        Role.valueOf(row.getString(4).toUpperCase(Locale.ROOT)),
        room.isEmpty() ? Optional.empty() : Optional.of(room),
        part.isEmpty() ? Optional.empty() : Optional.of(part));
  }

  private static Manner manner(ResultSet row) throws SQLException {
    String flags = row.getString(4);
    return new Manner(
        row.getDouble(2),
        row.getDouble(3),
        flags.isEmpty() ? List.of() : List.of(flags.split(" ", -1)));
  }

  private void read(Handle handle, long sensorId, long fromMs, long toMs, Consumer<Reading> each) {
    Sensor sensor = known(sensors, sensorId);
    String sql = COLUMNS + " and at_ms >= ? and at_ms < ? order by at_ms, nth";
    try (PreparedStatement statement = handle.getConnection().prepareStatement(sql)) {
      statement.setLong(1, sensorId);
      statement.setLong(2, fromMs);
      statement.setLong(3, toMs);
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          each.accept(reading(row, sensor, manner(handle, row.getLong(2))));
        }
      }
    } catch (SQLException e) {
      throw new IllegalStateException("readings of sensor " + sensorId + " cannot be read", e);
    }
  }

  /** The writer may have added one since they were read. */
  private Sensor sensor(Handle handle, long id) {
    if (!sensors.containsKey(id)) {
      sensors.putAll(sensors(handle));
    }
    return known(sensors, id);
  }

  /** The writer may have added one since they were read. */
  private Manner manner(Handle handle, long id) {
    if (!manners.containsKey(id)) {
      manners.putAll(manners(handle));
    }
    return known(manners, id);
  }

  private static Reading reading(ResultSet row, Sensor sensor, Manner manner) throws SQLException {
    return new Reading(
        sensor.source(),
        sensor.sensor(),
        sensor.role(),
        sensor.room(),
        sensor.part(),
        Instant.ofEpochMilli(row.getLong(3)),
        fromMicro(row, 4),
        fromMicro(row, 5),
        fromMicro(row, 6),
        manner.temperatureErrorK(),
        manner.rhErrorPct(),
        manner.flags(),
        sent(row));
  }

  private static Optional<Reading.Sent> sent(ResultSet row) throws SQLException {
    OptionalDouble temp = fromMicro(row, 7);
    OptionalDouble rh = fromMicro(row, 8);
    OptionalDouble surface = fromMicro(row, 9);
    return temp.isPresent() || rh.isPresent() || surface.isPresent()
        ? Optional.of(new Reading.Sent(temp, rh, surface))
        : Optional.empty();
  }

  private static <T> T known(Map<Long, T> things, long id) {
    T thing = things.get(id);
    if (thing == null) {
      throw new IllegalStateException("a reading names row " + id + ", which is not there");
    }
    return thing;
  }

  private static OptionalDouble fromMicro(ResultSet row, int column) throws SQLException {
    long value = row.getLong(column);
    return value == 0 && row.wasNull()
        ? OptionalDouble.empty()
        : OptionalDouble.of(value / ReadingTables.MICRO);
  }
}
