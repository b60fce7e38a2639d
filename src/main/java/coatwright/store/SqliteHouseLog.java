package coatwright.store;

import coatwright.climate.ClockStretch;
import coatwright.climate.Happening;
import coatwright.climate.HouseLog;
import coatwright.climate.Reading;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** What the house notes of itself, in the file. */
final class SqliteHouseLog implements HouseLog {
  private final Database database;
  private final SqliteReadings readings;

  SqliteHouseLog(Database database, SqliteReadings readings) {
    this.database = database;
    this.readings = readings;
  }

  @Override
  public ClockStretch begin(ClockStretch stretch) {
    long id =
        database.writeDurably(
            "beginning a stretch of the clock",
            handle -> {
              handle.execute(
                  "insert into clock_stretch (boot, from_ms, steady_ms, trusted)"
                      + " values (?, ?, ?, ?)",
                  stretch.boot(),
                  stretch.from().toEpochMilli(),
                  stretch.steady().toMillis(),
                  stretch.trusted() ? 1 : 0);
              return lastId(handle);
            });
    ClockStretch begun = stretch.numbered(id);
    readings.begin(begun);
    return begun;
  }

  private static long lastId(Handle handle) {
    return handle.createQuery("select last_insert_rowid()").mapTo(Long.class).one();
  }

  @Override
  public void beat(Instant at, Beat kind) {
    database.writeDurably(
        "leaving a sign of life",
        handle ->
            handle.execute(
                "insert into beat (at_ms, stretch, kind) values (?, ?, ?)",
                at.toEpochMilli(),
                readings.stretch(),
                kind.name().toLowerCase(Locale.ROOT)));
  }

  @Override
  public Optional<Sign> lastSign() {
    return database.read(
        "reading signs of life",
        handle ->
            handle
                .createQuery(
                    "select beat.at_ms, beat.kind, clock_stretch.trusted from beat"
                        + " join clock_stretch on clock_stretch.id = beat.stretch"
                        + " where clock_stretch.trusted = 1 order by beat.id desc limit 1")
                .map(
                    (row, context) ->
                        new Sign(
                            Instant.ofEpochMilli(row.getLong(1)),
                            Beat.valueOf(row.getString(2).toUpperCase(Locale.ROOT)),
                            row.getInt(3) == 1))
                .findFirst());
  }

  @Override
  public Optional<Instant> newestReading() {
    return database.read(
        "reading the newest reading",
        handle ->
            handle
                .createQuery(
                    "select max((select max(at_ms) from reading where sensor = sensor.id))"
                        + " from sensor")
                .mapTo(Long.class)
                .findFirst()
                .map(Instant::ofEpochMilli));
  }

  @Override
  public void happened(Happening happening) {
    database.writeDurably(
        "noting what happened",
        handle ->
            handle.execute(
                "insert into happening (at_ms, stretch, kind, says) values (?, ?, ?, ?)",
                happening.at().toEpochMilli(),
                readings.stretch(),
                happening.kind(),
                happening.says()));
  }

  @Override
  public List<Happening> happenings(Instant from, Instant to) {
    return database.read(
        "reading what happened",
        handle ->
            handle
                .createQuery(
                    "select at_ms, kind, says from happening where at_ms >= ? and at_ms < ?"
                        + " order by id")
                .bind(0, SqliteReadings.millis(from))
                .bind(1, SqliteReadings.millis(to))
                .map(
                    (row, context) ->
                        new Happening(
                            Instant.ofEpochMilli(row.getLong(1)),
                            row.getString(2),
                            row.getString(3)))
                .list());
  }

  @Override
  public int redate() {
    return readings.redate();
  }

  @Override
  public int undated() {
    return database.read(
        "counting undated readings",
        handle ->
            handle.createQuery("select count(*) from undated_reading").mapTo(Integer.class).one());
  }

  /** What the clock was wrong by in each stretch of this boot that has undated readings. */
  static List<Shift> shifts(Handle handle, ClockStretch now) {
    return handle
        .createQuery(
            "select id, from_ms, steady_ms from clock_stretch where boot = ? and trusted = 0"
                + " and redated_by_ms is null order by id")
        .bind(0, now.boot())
        .map(
            (row, context) ->
                new Shift(
                    row.getLong(1),
                    Instant.ofEpochMilli(row.getLong(2)),
                    now.ahead().minus(Duration.ofMillis(row.getLong(2) - row.getLong(3)))))
        .list();
  }

  /**
   * A stretch and what to add to its times.
   *
   * @param stretch its id
   * @param from when it began, by the wrong clock
   */
  record Shift(long stretch, Instant from, Duration by) {
    private static final Duration SLACK = Duration.ofSeconds(2);

    /**
     * The reading with its date. A time that the wrong clock cannot have stamped, because it lies
     * outside the stretch, was the payload's own or came as the clock was set, and stands.
     */
    Reading dated(Reading reading, Instant setAt) {
      Instant at = reading.at().plus(by);
      boolean stampedByIt =
          !reading.at().isBefore(from.minus(SLACK)) && !at.isAfter(setAt.plus(SLACK));
      return new Reading(
          reading.source(),
          reading.sensor(),
          reading.role(),
          reading.room(),
          reading.part(),
          stampedByIt ? at : reading.at(),
          reading.temperatureC(),
          reading.rhPct(),
          reading.surfaceTemperatureC(),
          reading.temperatureErrorK(),
          reading.rhErrorPct(),
          reading.flags(),
          reading.sent());
    }
  }
}
