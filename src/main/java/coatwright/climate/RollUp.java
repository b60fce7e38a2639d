package coatwright.climate;

import coatwright.air.SaturationPressure;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * Sum, count, least and greatest of one quantity over one interval; means are computed, never
 * stored.
 *
 * @param quantity {@code temperatureC}, {@code rhPct}, {@code vapourPressurePa} or {@code
 *     surfaceTemperatureC}
 */
public record RollUp(
    Instant from, String quantity, double sum, long count, double min, double max) {
  private static final String TEMPERATURE = "temperatureC";
  private static final String RH = "rhPct";
  private static final String VAPOUR = "vapourPressurePa";
  private static final String SURFACE = "surfaceTemperatureC";

  /** Arithmetic mean over the interval. */
  public double mean() {
    return sum / count;
  }

  /** Both together; they are of the same quantity and interval. */
  public RollUp plus(RollUp other) {
    return new RollUp(
        from,
        quantity,
        sum + other.sum,
        count + other.count,
        Math.min(min, other.min),
        Math.max(max, other.max));
  }

  /** What one reading adds, a row for every quantity it holds. */
  public static List<RollUp> of(Reading reading, Duration every) {
    long intervalMs = every.toMillis();
    long startMs = Math.floorDiv(reading.at().toEpochMilli(), intervalMs) * intervalMs;
    Instant from = Instant.ofEpochMilli(startMs);
    List<RollUp> rows = new ArrayList<>();
    boolean roomAir = RoomHistory.speaksOfRoomAir(reading);
    if (roomAir && reading.temperatureC().isPresent()) {
      rows.add(one(from, "temperatureC", reading.temperatureC().getAsDouble()));
    }
    if (roomAir && reading.rhPct().isPresent()) {
      rows.add(one(from, "rhPct", reading.rhPct().getAsDouble()));
    }
    if (roomAir && reading.temperatureC().isPresent() && reading.rhPct().isPresent()) {
      double saturatedPa = SaturationPressure.overWaterPa(reading.temperatureC().getAsDouble());
      double vapourPa = reading.rhPct().getAsDouble() / 100 * saturatedPa;
      rows.add(one(from, "vapourPressurePa", vapourPa));
    }
    RoomHistory.wood(reading)
        .ifPresent(wood -> rows.add(one(from, "surfaceTemperatureC", wood.woodTempC())));
    return rows;
  }

  private static RollUp one(Instant from, String quantity, double value) {
    return new RollUp(from, quantity, value, 1, value, value);
  }
}
