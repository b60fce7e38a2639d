package coatwright.store;

import coatwright.climate.RawText;
import coatwright.climate.Reading;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import org.jspecify.annotations.Nullable;

/** Readings and payloads as rows. Belongs to the one thread that writes. */
final class ReadingTables {
  /** Temperatures and humidities are kept in millionths: half the bytes of a real. */
  static final double MICRO = 1e6;

  private static final int KEPT_ACCEPTED = 1_000;
  private static final int PRUNE_AFTER = 200;

  private record SensorKey(String source, String sensor, String role, String room, String part) {}

  private record MannerKey(double temperatureErrorK, double rhErrorPct, String flags) {}

  private final Map<SensorKey, Long> sensorIds = new HashMap<>();
  private final Map<MannerKey, Long> mannerIds = new HashMap<>();
  private final Map<Long, Long> newestMs = new HashMap<>();
  private final Map<String, Integer> acceptedSincePruned = new HashMap<>();
  private final boolean outbox;

  /**
   * @param outbox whether there is a mirror that wants to be told the readings
   */
  ReadingTables(boolean outbox) {
    this.outbox = outbox;
  }

  /** Drops what was learned in a transaction that did not come through. */
  void forget() {
    sensorIds.clear();
    mannerIds.clear();
    newestMs.clear();
  }

  /**
   * Writes readings and their roll-ups; one that stands already, to the last digit, is left out.
   *
   * @param stretch of the clock in which they came
   */
  void write(Handle handle, List<Reading> readings, Optional<Long> stretch) {
    if (readings.isEmpty()) {
      return;
    }
    RollUpTable rollUps = new RollUpTable();
    PreparedBatch batch =
        handle.prepareBatch(
            "insert into reading (sensor, at_ms, nth, manner, temp, rh, surface,"
                + " sent_temp, sent_rh, sent_surface, stretch)"
                + " values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    List<Object[]> keys = new ArrayList<>();
    for (Reading reading : readings) {
      long sensor = sensorId(handle, reading);
      long manner = mannerId(handle, reading);
      long atMs = reading.at().toEpochMilli();
      long nth = 0;
      if (atMs <= newestMs(handle, sensor)) {
        flushBatch(batch);
        if (standsAlready(handle, sensor, atMs, reading)) {
          continue;
        }
        nth = countAt(handle, sensor, atMs);
      }
      newestMs.merge(sensor, atMs, Math::max);
      batch
          .bind(0, sensor)
          .bind(1, atMs)
          .bind(2, nth)
          .bind(3, manner)
          .bind(4, micro(reading.temperatureC()))
          .bind(5, micro(reading.rhPct()))
          .bind(6, micro(reading.surfaceTemperatureC()))
          .bind(7, sent(reading, Reading.Sent::temperatureC))
          .bind(8, sent(reading, Reading.Sent::rhPct))
          .bind(9, sent(reading, Reading.Sent::surfaceTemperatureC))
          .bind(10, stretch.orElse(null))
          .add();
      rollUps.add(sensor, reading);
      if (outbox) {
        keys.add(new Object[] {sensor, atMs, nth});
      }
    }
    flushBatch(batch);
    batch.close();
    rollUps.write(handle);
    tell(handle, keys);
  }

  private static void tell(Handle handle, List<Object[]> keys) {
    if (keys.isEmpty()) {
      return;
    }
    try (PreparedBatch batch =
        handle.prepareBatch("insert into outbox (sensor, at_ms, nth) values (?, ?, ?)")) {
      keys.forEach(key -> batch.add(key));
      batch.execute();
    }
  }

  private static void flushBatch(PreparedBatch batch) {
    if (batch.size() > 0) {
      batch.execute();
    }
  }

  private long newestMs(Handle handle, long sensor) {
    return newestMs.computeIfAbsent(
        sensor,
        id ->
            handle
                .createQuery("select coalesce(max(at_ms), ?) from reading where sensor = ?")
                .bind(0, Long.MIN_VALUE)
                .bind(1, id)
                .mapTo(Long.class)
                .one());
  }

  private static boolean standsAlready(Handle handle, long sensor, long atMs, Reading reading) {
    return handle
            .createQuery(
                "select count(*) from reading where sensor = ? and at_ms = ?"
                    + " and temp is ? and rh is ? and surface is ?")
            .bind(0, sensor)
            .bind(1, atMs)
            .bind(2, micro(reading.temperatureC()))
            .bind(3, micro(reading.rhPct()))
            .bind(4, micro(reading.surfaceTemperatureC()))
            .mapTo(Long.class)
            .one()
        > 0;
  }

  private static long countAt(Handle handle, long sensor, long atMs) {
    return handle
        .createQuery("select count(*) from reading where sensor = ? and at_ms = ?")
        .bind(0, sensor)
        .bind(1, atMs)
        .mapTo(Long.class)
        .one();
  }

  long sensorId(Handle handle, Reading reading) {
    SensorKey key =
        new SensorKey(
            reading.source(),
            reading.sensor(),
            reading.role().toString(),
            reading.room().orElse(""),
            reading.part().orElse(""));
    return sensorIds.computeIfAbsent(
        key,
        k -> {
          Object[] values = {k.source(), k.sensor(), k.role(), k.room(), k.part()};
          handle.execute(
              "insert or ignore into sensor (source, sensor, role, room, part)"
                  + " values (?, ?, ?, ?, ?)",
              values);
          return handle
              .select(
                  "select id from sensor where source = ? and sensor = ? and role = ?"
                      + " and room = ? and part = ?",
                  values)
              .mapTo(Long.class)
              .one();
        });
  }

  long mannerId(Handle handle, Reading reading) {
    MannerKey key =
        new MannerKey(
            reading.temperatureErrorK(), reading.rhErrorPct(), String.join(" ", reading.flags()));
    return mannerIds.computeIfAbsent(
        key,
        k -> {
          Object[] values = {k.temperatureErrorK(), k.rhErrorPct(), k.flags()};
          handle.execute(
              "insert or ignore into manner (temperature_error, rh_error, flags) values (?, ?, ?)",
              values);
          return handle
              .select(
                  "select id from manner where temperature_error = ? and rh_error = ? and flags ="
                      + " ?",
                  values)
              .mapTo(Long.class)
              .one();
        });
  }

  static @Nullable Long sent(Reading reading, Function<Reading.Sent, OptionalDouble> what) {
    return micro(reading.sent().map(what).orElse(OptionalDouble.empty()));
  }

  static @Nullable Long micro(OptionalDouble value) {
    return value.isPresent() ? Math.round(value.getAsDouble() * MICRO) : null;
  }

  /** Keeps payloads: of the accepted the last thousand a source, of the others all. */
  void keep(Handle handle, List<RawText> raws) {
    if (raws.isEmpty()) {
      return;
    }
    try (PreparedBatch batch =
        handle.prepareBatch(
            "insert into raw_text (source, channel, arrived_ms, text, verdict, reason)"
                + " values (?, ?, ?, ?, ?, ?)")) {
      for (RawText raw : raws) {
        batch
            .bind(0, raw.source())
            .bind(1, raw.channel())
            .bind(2, raw.arrivedAt().toEpochMilli())
            .bind(3, raw.text())
            .bind(4, raw.verdict())
            .bind(5, raw.reason().orElse(null))
            .add();
        if (raw.verdict().equals("accepted")) {
          acceptedSincePruned.merge(raw.source(), 1, Integer::sum);
        }
      }
      batch.execute();
    }
    for (Map.Entry<String, Integer> source : acceptedSincePruned.entrySet()) {
      if (source.getValue() >= PRUNE_AFTER) {
        prune(handle, source.getKey());
        source.setValue(0);
      }
    }
  }

  private static void prune(Handle handle, String source) {
    handle.execute(
        "delete from raw_text where source = ? and verdict = 'accepted' and id <="
            + " (select id from raw_text where source = ? order by id desc limit 1 offset ?)",
        source,
        source,
        KEPT_ACCEPTED);
  }

  static List<RawText> raw(Handle handle, String source, int atMost) {
    return handle
        .createQuery("select * from raw_text where source = ? order by id desc limit ?")
        .bind(0, source)
        .bind(1, atMost)
        .map(
            (row, context) ->
                new RawText(
                    row.getString("source"),
                    row.getString("channel"),
                    Instant.ofEpochMilli(row.getLong("arrived_ms")),
                    row.getString("text"),
                    row.getString("verdict"),
                    Optional.ofNullable(row.getString("reason"))))
        .list();
  }
}
