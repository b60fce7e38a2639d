package coatwright.web;

import coatwright.air.MoistAir;
import coatwright.climate.AirForecast;
import coatwright.climate.AirPoint;
import coatwright.climate.AirSeries;
import coatwright.climate.Climate;
import coatwright.climate.Doubt;
import coatwright.climate.Gap;
import coatwright.climate.LiveClimate;
import coatwright.climate.MemoryReadingLog;
import coatwright.climate.Reading;
import coatwright.climate.RoomAir;
import coatwright.climate.WoodPoint;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;

/**
 * A small climate on the heap: the newest reading of a room is its air; older than 10 min is none.
 */
final class InMemoryClimate implements Climate {
  private static final Duration BELIEVED = Duration.ofMinutes(10);
  private static final Duration LONGEST_STEP = Duration.ofMinutes(20);

  private final List<String> rooms;
  private final Clock clock;

  /** Forecasts by the real forecaster, from the same readings. */
  private final LiveClimate real;

  private final Map<String, TreeMap<Instant, AirPoint>> air = new ConcurrentHashMap<>();
  private final Map<String, TreeMap<Instant, WoodPoint>> wood = new ConcurrentHashMap<>();
  private final List<Consumer<Reading>> listeners = new CopyOnWriteArrayList<>();
  private final Map<String, Doubt> doubts = new ConcurrentHashMap<>();
  private final List<Consumer<Doubt>> doubters = new CopyOnWriteArrayList<>();

  InMemoryClimate(List<String> rooms, Clock clock) {
    this.rooms = rooms;
    this.clock = clock;
    this.real = new LiveClimate(rooms, new MemoryReadingLog(), clock, Duration.ofMinutes(1));
    rooms.forEach(
        room -> {
          air.put(room, new TreeMap<>());
          wood.put(room, new TreeMap<>());
        });
  }

  @Override
  public List<String> rooms() {
    return rooms;
  }

  @Override
  public void accept(Reading reading) {
    synchronized (this) {
      String room = reading.room().orElseThrow();
      reading
          .surfaceTemperatureC()
          .ifPresent(
              tempC -> wood.get(room).put(reading.at(), new WoodPoint(reading.at(), tempC, 0.3)));
      if (reading.temperatureC().isPresent() && reading.rhPct().isPresent()) {
        double tempC = reading.temperatureC().getAsDouble();
        double rhPct = reading.rhPct().getAsDouble();
        air.get(room).put(reading.at(), point(reading.at(), tempC, rhPct));
      }
    }
    real.accept(reading);
    reading.room().ifPresent(doubts::remove);
    listeners.forEach(listener -> listener.accept(reading));
  }

  private static AirPoint point(Instant at, double tempC, double rhPct) {
    MoistAir moist = MoistAir.of(tempC, rhPct);
    return new AirPoint(at, tempC, rhPct, moist.dewPointC(), moist.vapourPressurePa(), 0.2, 2.0);
  }

  @Override
  public synchronized RoomAir now(String room) {
    Instant now = clock.instant();
    Optional<AirPoint> newest =
        Optional.ofNullable(air.get(room).floorEntry(now)).map(Map.Entry::getValue);
    Optional<Duration> age = newest.map(point -> Duration.between(point.at(), now));
    boolean believed = age.isPresent() && age.get().compareTo(BELIEVED) <= 0;
    return new RoomAir(
        room,
        newest.filter(point -> believed),
        Optional.ofNullable(wood.get(room).floorEntry(now)).map(Map.Entry::getValue),
        age,
        List.of(room + "-wall"),
        false,
        believed
            ? Optional.empty()
            : Optional.of("no reading for over 10 min; look at the sensor's battery"));
  }

  @Override
  public synchronized void doubt(Doubt doubt) {
    doubts.put(doubt.reading().room().orElseThrow(), doubt);
    doubters.forEach(listener -> listener.accept(doubt));
  }

  @Override
  public synchronized Optional<Doubt> doubted(String room) {
    return Optional.ofNullable(doubts.get(room));
  }

  @Override
  public void onDoubt(Consumer<Doubt> listener) {
    doubters.add(listener);
  }

  @Override
  public synchronized AirSeries series(String room, Instant from, Instant to) {
    List<AirPoint> points = new ArrayList<>(air.get(room).subMap(from, true, to, false).values());
    List<Gap> gaps = new ArrayList<>();
    for (int i = 1; i < points.size(); i++) {
      Instant before = points.get(i - 1).at();
      Instant after = points.get(i).at();
      if (Duration.between(before, after).compareTo(LONGEST_STEP) > 0) {
        gaps.add(new Gap(before, after));
      }
    }
    return new AirSeries(room, from, to, points, gaps);
  }

  @Override
  public synchronized List<WoodPoint> wood(
      String room, Optional<String> part, Instant from, Instant to) {
    return new ArrayList<>(wood.get(room).subMap(from, true, to, false).values());
  }

  /** Yesterday's same hours again. */
  @Override
  public synchronized Optional<AirSeries> expected(String room, Instant from, Instant to) {
    Duration day = Duration.ofHours(24);
    List<AirPoint> points =
        air.get(room).subMap(from.minus(day), true, to.minus(day), false).values().stream()
            .map(point -> point(point.at().plus(day), point.airTempC(), point.rhPct()))
            .toList();
    return points.isEmpty()
        ? Optional.empty()
        : Optional.of(new AirSeries(room, from, to, points, List.of()));
  }

  @Override
  public Optional<AirForecast> forecast(String room) {
    return real.forecast(room);
  }

  @Override
  public void onReading(Consumer<Reading> listener) {
    listeners.add(listener);
  }
}
