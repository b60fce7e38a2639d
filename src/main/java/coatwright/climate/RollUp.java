package coatwright.climate;

import coatwright.air.SaturationPressure;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Sum, count, least and greatest of one quantity over one interval; means are computed, never
 * stored.
 *
 * @param quantity {@code temperatureC}, {@code rhPct}, {@code vapourPressurePa} or {@code
 *     surfaceTemperatureC}
 */
public record RollUp(
    Instant from, String quantity, double sum, long count, double min, double max) {
  static final String TEMPERATURE = "temperatureC";
  private static final String RH = "rhPct";
  static final String VAPOUR = "vapourPressurePa";
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
      rows.add(one(from, TEMPERATURE, reading.temperatureC().getAsDouble()));
    }
    if (roomAir && reading.rhPct().isPresent()) {
      rows.add(one(from, RH, reading.rhPct().getAsDouble()));
    }
    if (roomAir && reading.temperatureC().isPresent() && reading.rhPct().isPresent()) {
      double saturatedPa = SaturationPressure.overWaterPa(reading.temperatureC().getAsDouble());
      double vapourPa = reading.rhPct().getAsDouble() / 100 * saturatedPa;
      rows.add(one(from, VAPOUR, vapourPa));
    }
    RoomHistory.wood(reading).ifPresent(wood -> rows.add(one(from, SURFACE, wood.woodTempC())));
    return rows;
  }

  /** Roll-ups of a room's readings: oldest interval first. */
  public static List<RollUp> of(List<Reading> readings, Duration every) {
    Map<Instant, Map<String, List<RollUp>>> bySensor = new TreeMap<>();
    for (Reading reading : readings) {
      for (RollUp one : of(reading, every)) {
        bySensor
            .computeIfAbsent(one.from, at -> new TreeMap<>())
            .computeIfAbsent(Probe.name(reading), name -> new ArrayList<>())
            .add(one);
      }
    }
    List<RollUp> all = new ArrayList<>();
    bySensor.values().forEach(sensors -> all.addAll(ofSensors(sensors.values())));
    return all;
  }

  /**
   * Rows of several sensors over one interval made one row a quantity. Where more than one sensor
   * told a humidity, the mean humidity follows from mean vapour pressure and mean temperature:
   * humidities are never averaged over sensors.
   */
  public static List<RollUp> ofSensors(Collection<List<RollUp>> sensors) {
    Map<String, RollUp> sums = new TreeMap<>();
    int humidities = 0;
    for (List<RollUp> sensor : sensors) {
      sensor.forEach(row -> sums.merge(row.quantity, row, RollUp::plus));
      humidities += sensor.stream().anyMatch(row -> row.quantity.equals(RH)) ? 1 : 0;
    }
    RollUp humidity = sums.get(RH);
    RollUp vapour = sums.get(VAPOUR);
    RollUp temperature = sums.get(TEMPERATURE);
    if (humidities > 1 && humidity != null && vapour != null && temperature != null) {
      double saturatedPa = SaturationPressure.overWaterPa(temperature.mean());
      double meanPct = Math.min(100, 100 * vapour.mean() / saturatedPa);
      sums.put(
          RH,
          new RollUp(
              humidity.from,
              RH,
              meanPct * humidity.count,
              humidity.count,
              Math.min(humidity.min, meanPct),
              Math.max(humidity.max, meanPct)));
    }
    return List.copyOf(sums.values());
  }

  private static RollUp one(Instant from, String quantity, double value) {
    return new RollUp(from, quantity, value, 1, value, value);
  }
}
