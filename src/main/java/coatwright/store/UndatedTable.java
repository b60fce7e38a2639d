package coatwright.store;

import coatwright.climate.ClockStretch;
import coatwright.climate.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/**
 * Readings that came while the machine's clock was not to be trusted. They join the others, and the
 * roll-ups, only when they have a date. Belongs to the one thread that writes.
 */
final class UndatedTable {
  private final ReadingTables tables;

  UndatedTable(ReadingTables tables) {
    this.tables = tables;
  }

  void write(Handle handle, List<Reading> readings, long stretch) {
    try (PreparedBatch batch =
        handle.prepareBatch(
            "insert into undated_reading (stretch, sensor, manner, at_ms, temp, rh, surface,"
                + " sent_temp, sent_rh, sent_surface) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")) {
      for (Reading reading : readings) {
        batch
            .bind(0, stretch)
            .bind(1, tables.sensorId(handle, reading))
            .bind(2, tables.mannerId(handle, reading))
            .bind(3, reading.at().toEpochMilli())
            .bind(4, ReadingTables.micro(reading.temperatureC()))
            .bind(5, ReadingTables.micro(reading.rhPct()))
            .bind(6, ReadingTables.micro(reading.surfaceTemperatureC()))
            .bind(7, ReadingTables.sent(reading, Reading.Sent::temperatureC))
            .bind(8, ReadingTables.sent(reading, Reading.Sent::rhPct))
            .bind(9, ReadingTables.sent(reading, Reading.Sent::surfaceTemperatureC))
            .add();
      }
      batch.execute();
    }
  }

  /** Shifts each stretch by what its clock was wrong by; answers how many readings that were. */
  int redate(Handle handle, ClockStretch now) {
    int redated = 0;
    for (SqliteHouseLog.Shift shift : SqliteHouseLog.shifts(handle, now)) {
      List<Reading> dated = new ArrayList<>();
      ReadingRows.forEachUndated(
          handle, shift.stretch(), each -> dated.add(shift.dated(each, now.from())));
      tables.write(handle, dated, Optional.of(shift.stretch()));
      handle.execute("delete from undated_reading where stretch = ?", shift.stretch());
      handle.execute(
          "update happening set at_ms = at_ms + ? where stretch = ?",
          shift.by().toMillis(),
          shift.stretch());
      handle.execute(
          "update clock_stretch set redated_by_ms = ? where id = ?",
          shift.by().toMillis(),
          shift.stretch());
      redated += dated.size();
    }
    return redated;
  }
}
