package coatwright.climate;

import coatwright.climate.forecast.HourlyForecast;
import coatwright.climate.forecast.OutsideCourse;
import coatwright.quantity.RefusedInput;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * The shop's air over a reading log. The last 14 days, or 40 once they have been asked for, are
 * held in memory by the minute; older air is read from the log each time.
 */
public final class LiveClimate implements Climate {
  private static final Duration HELD = Duration.ofDays(40);
  private static final Duration HELD_AT_FIRST = Duration.ofDays(14);
  private static final Duration FORGOTTEN_EVERY = Duration.ofDays(2);
  private static final Duration READ_AT_ONCE = Duration.ofDays(1);
  private static final Duration KNOWN_AT_START = Duration.ofHours(24);
  private static final Duration SHORTEST_GAP = Duration.ofMinutes(15);
  private static final int GAP_INTERVALS = 6;
  private static final Duration CLOCK_SLACK = Duration.ofMinutes(2);
  private static final Duration FINE_STEP_FOR = Duration.ofHours(24);
  private static final Duration FINE_STEP = Duration.ofMinutes(15);
  private static final Duration COARSE_STEP = Duration.ofMinutes(30);

  /** Before this the clock of the machine was not set. */
  private static final Instant CLOCK_UNSET_BEFORE = Instant.parse("2020-01-01T00:00:00Z");

  private final ReadingLog log;
  private final Clock clock;
  private final Duration usualInterval;
  private final Map<String, Room> rooms = new LinkedHashMap<>();
  private final OutsideAir outside;
  private volatile boolean dated = true;
  private final List<Consumer<Reading>> listeners = new CopyOnWriteArrayList<>();
  private final List<Consumer<Doubt>> doubters = new CopyOnWriteArrayList<>();

  private final OutsideCourses outdoors = new OutsideCourses();

  /**
   * A shop whose days are those of UTC and whose heating never changed.
   *
   * @param rooms in the settings' order
   * @param usualInterval how often a sensor is expected to speak
   */
  public LiveClimate(List<String> rooms, ReadingLog log, Clock clock, Duration usualInterval) {
    this(rooms, log, clock, usualInterval, ZoneOffset.UTC, Map.of());
  }

  /**
   * @param rooms in the settings' order
   * @param usualInterval how often a sensor is expected to speak
   * @param zone the shop's, for its days and hours
   * @param heatingChanged by room, when its heating was last changed for good; the usual day begins
   *     anew then
   */
  public LiveClimate(
      List<String> rooms,
      ReadingLog log,
      Clock clock,
      Duration usualInterval,
      ZoneId zone,
      Map<String, Instant> heatingChanged) {
    if (usualInterval.isNegative() || usualInterval.isZero()) {
      throw new IllegalArgumentException(
          "the usual interval is " + usualInterval + "; it is above 0");
    }
    this.log = log;
    this.clock = clock;
    this.usualInterval = usualInterval;
    this.outside = new OutsideAir(usualInterval);
    for (String name : rooms) {
      this.rooms.put(name, new Room(name, zone, Optional.ofNullable(heatingChanged.get(name))));
    }
    Instant now = clock.instant();
    this.rooms.values().forEach(room -> room.start(now));
  }

  @Override
  public List<String> rooms() {
    return List.copyOf(rooms.keySet());
  }

  /**
   * {@inheritDoc}
   *
   * <p>A reading stamped by an unset clock is logged and shown to listeners but joins no series.
   */
  @Override
  public void accept(Reading reading) {
    if (reading.role() == Role.OUTSIDE) {
      outside.take(reading, clock.instant());
    }
    Room room = reading.room().map(rooms::get).orElse(null);
    if (room == null) {
      log.append(reading);
    } else {
      room.accept(reading);
    }
    for (Consumer<Reading> listener : listeners) {
      listener.accept(reading);
    }
  }

  /**
   * The machine's clock was set, or has become one to be trusted or not: what is held in memory by
   * its old time is read anew. While it is not to be trusted readings make the air now and join no
   * series.
   */
  public void clockChanged(boolean trusted) {
    dated = trusted;
    log.flush();
    rooms.values().forEach(room -> room.clockChanged(clock.instant()));
  }

  @Override
  public RoomAir now(String room) {
    return room(room).now(clock.instant());
  }

  @Override
  public Optional<AirPoint> outside() {
    return outside.now(clock.instant());
  }

  @Override
  public AirSeries series(String room, Instant from, Instant to) {
    return room(room).series(from, to, clock.instant());
  }

  @Override
  public List<WoodPoint> wood(String room, Optional<String> part, Instant from, Instant to) {
    return room(room).wood(part, from, to, clock.instant());
  }

  @Override
  public Optional<AirSeries> expected(String room, Instant from, Instant to) {
    Duration step =
        Duration.between(from, to).compareTo(FINE_STEP_FOR) <= 0 ? FINE_STEP : COARSE_STEP;
    return forecast(room)
        .filter(forecast -> forecast.basis() != HourlyForecast.Basis.STAYS)
        .map(forecast -> new AirSeries(room, from, to, forecast.middle(from, to, step), List.of()));
  }

  @Override
  public Optional<AirForecast> forecast(String room) {
    return room(room).forecasts.at(clock.instant());
  }

  /** Takes an outdoor forecast; it goes into what is said of every room from the next hour on. */
  public void outdoors(OutsideCourse course) {
    outdoors.add(course);
  }

  @Override
  public void onReading(Consumer<Reading> listener) {
    listeners.add(listener);
  }

  @Override
  public void doubt(Doubt doubt) {
    doubt.reading().room().map(rooms::get).ifPresent(room -> room.doubt(doubt));
    doubters.forEach(listener -> listener.accept(doubt));
  }

  @Override
  public Optional<Doubt> doubted(String room) {
    return room(room).doubted(clock.instant());
  }

  @Override
  public void onDoubt(Consumer<Doubt> listener) {
    doubters.add(listener);
  }

  private Room room(String name) {
    Room room = rooms.get(name);
    if (room == null) {
      throw RefusedInput.of(
          "room \"" + name + "\"",
          "the shop has no such room",
          "use one of " + String.join(", ", rooms.keySet()));
    }
    return room;
  }

  /** One room; its lock keeps log, memory and answers in step. */
  private final class Room implements ForecastKeeper.Source {
    private final String name;
    private final ForecastKeeper forecasts;
    private RoomNow present;
    private Instant heldFrom = Instant.MAX;
    private @Nullable RoomHistory held;

    Room(String name, ZoneId zone, Optional<Instant> heatingChanged) {
      this.name = name;
      this.forecasts = new ForecastKeeper(name, zone, heatingChanged, this, outdoors);
      this.present = new RoomNow(name, usualInterval);
    }

    synchronized void start(Instant now) {
      for (Reading reading : log.readings(name, now.minus(KNOWN_AT_START), now.plus(CLOCK_SLACK))) {
        present.take(reading, now);
      }
    }

    synchronized void accept(Reading reading) {
      log.append(reading);
      Instant now = clock.instant();
      boolean unset = reading.at().isBefore(CLOCK_UNSET_BEFORE);
      if (unset && dated) {
        return;
      }
      present.take(reading, now);
      if (!dated) {
        return;
      }
      forecasts.heard(reading.at());
      if (held != null && !reading.at().isBefore(heldFrom)) {
        held.add(reading);
      }
    }

    synchronized void clockChanged(Instant now) {
      present = new RoomNow(name, usualInterval);
      held = null;
      heldFrom = Instant.MAX;
      forecasts.forget();
      start(now);
    }

    synchronized void doubt(Doubt doubt) {
      present.doubt(doubt);
    }

    synchronized Optional<Doubt> doubted(Instant now) {
      return present.doubted(now);
    }

    synchronized RoomAir now(Instant now) {
      Optional<WoodPoint> wood = present.wood();
      RoomHistory history = held;
      if (wood.isEmpty() && history != null) {
        wood = history.newestWood();
      }
      return present.judge(now, wood);
    }

    synchronized AirSeries series(Instant from, Instant to, Instant now) {
      RoomHistory history = history(from, to, now);
      List<AirPoint> points = history.points(from, to);
      Duration longest = history.every().multipliedBy(GAP_INTERVALS);
      longest = longest.compareTo(SHORTEST_GAP) < 0 ? SHORTEST_GAP : longest;
      Instant known = to.isBefore(now) ? to : now;
      return new AirSeries(name, from, to, points, RoomHistory.gaps(points, from, known, longest));
    }

    synchronized List<WoodPoint> wood(
        Optional<String> part, Instant from, Instant to, Instant now) {
      return history(from, to, now).wood(part, from, to);
    }

    @Override
    public List<RollUp> rollUps(Instant from, Instant to, Duration every) {
      log.flush();
      return log.rollUps(name, from, to, every);
    }

    @Override
    public synchronized List<AirPoint> points(Instant from, Instant to, Instant now) {
      return history(from, to, now).points(from, to);
    }

    @Override
    public Optional<AirPoint> present(Instant now) {
      return now(now).air();
    }

    @Override
    public Duration every() {
      return usualInterval;
    }

    /** The held history, or for older air one read for the purpose. */
    private RoomHistory history(Instant from, Instant to, Instant now) {
      Instant oldest = now.minus(HELD);
      if (from.isBefore(oldest)) {
        return read(from.minus(usualInterval.multipliedBy(3)), to);
      }
      RoomHistory history = held;
      if (history == null || from.isBefore(heldFrom)) {
        Instant usual = now.minus(HELD_AT_FIRST);
        heldFrom = from.isBefore(usual) ? oldest : usual;
        history = read(heldFrom, now.plus(READ_AT_ONCE));
        held = history;
      } else if (heldFrom.isBefore(oldest.minus(FORGOTTEN_EVERY))) {
        history.forgetBefore(oldest);
        heldFrom = oldest;
      }
      return history;
    }

    /** Day by day, so that a month of readings never stands in memory at once. */
    private RoomHistory read(Instant from, Instant to) {
      log.flush();
      RoomHistory history = new RoomHistory(usualInterval);
      for (Instant day = from; day.isBefore(to); day = day.plus(READ_AT_ONCE)) {
        Instant next = day.plus(READ_AT_ONCE);
        log.readings(name, day, next.isBefore(to) ? next : to).forEach(history::add);
      }
      return history;
    }
  }
}
