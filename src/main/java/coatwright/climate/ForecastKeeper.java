package coatwright.climate;

import coatwright.climate.forecast.HourAir;
import coatwright.climate.forecast.HourlyForecast;
import coatwright.climate.forecast.OutsideCourse;
import coatwright.climate.forecast.RoomForecaster;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Keeps one room's forecaster up with the hours: at first from the roll-ups of the last months,
 * then hour by hour as each ends. An hour that ended is not looked at again, unless readings of it
 * came late; then all is gone through anew, at most twice an hour.
 */
final class ForecastKeeper {
  private static final Duration HOUR = Duration.ofHours(1);
  private static final Duration TEN_MINUTES = Duration.ofMinutes(10);
  private static final int LAST_PART = 5;

  /** What lies further back has faded to a ninth, and a start should not take long. */
  private static final Duration BUILT_FROM = Duration.ofDays(100);

  /** Since when the last minutes of each hour are looked up beside its mean. */
  private static final Duration LAST_MINUTES_FROM = Duration.ofDays(45);

  /** Since when the hours are made of combined minutes, as the present is. */
  private static final Duration MINUTES_FROM = Duration.ofDays(2);

  private static final Duration PAST = Duration.ofDays(31);
  private static final Duration KEPT = Duration.ofMinutes(1);
  private static final Duration REBUILT_EVERY = Duration.ofMinutes(30);

  /** An hour is known if readings fall into two of its six parts. */
  private static final int LEAST_PARTS = 2;

  /** A sensor slower than this may fall into one part of an hour only. */
  private static final Duration SLOW = Duration.ofMinutes(20);

  /** Where a room's air is read. */
  interface Source {
    List<RollUp> rollUps(Instant from, Instant to, Duration every);

    List<AirPoint> points(Instant from, Instant to, Instant now);

    /** The air now, where it can be believed. */
    Optional<AirPoint> present(Instant now);

    /** How often a sensor speaks. */
    Duration every();
  }

  private final String room;
  private final ZoneId zone;
  private final Optional<Instant> heatingChanged;
  private final Source source;
  private final OutsideCourses courses;
  private @Nullable RoomForecaster forecaster;
  private Instant builtAt = Instant.MIN;
  private @Nullable AirForecast last;
  private Instant lastAsked = Instant.MIN;
  private volatile boolean late;
  private volatile long takenToS = Long.MIN_VALUE;
  private boolean changeTold;
  private int coursesTold;

  /**
   * @param heatingChanged when the room's heating was last changed for good
   * @param courses outdoor forecasts, in the order they came; grows
   */
  ForecastKeeper(
      String room,
      ZoneId zone,
      Optional<Instant> heatingChanged,
      Source source,
      OutsideCourses courses) {
    this.room = room;
    this.zone = zone;
    this.heatingChanged = heatingChanged;
    this.source = source;
    this.courses = courses;
  }

  /** A reading came; one of an hour that is already taken asks for a new look at all of it. */
  void heard(Instant at) {
    if (at.getEpochSecond() < takenToS) {
      late = true;
    }
  }

  /** The clock was set: what was taken at other hours is not known any more. */
  synchronized void forget() {
    forecaster = null;
    builtAt = Instant.MIN;
    last = null;
    lastAsked = Instant.MIN;
    late = false;
    takenToS = Long.MIN_VALUE;
  }

  /** The forecast at this instant; empty where nothing of the last weeks is known. */
  synchronized Optional<AirForecast> at(Instant now) {
    AirForecast kept = last;
    if (kept != null
        && !now.isBefore(lastAsked)
        && Duration.between(lastAsked, now).compareTo(KEPT) < 0) {
      return Optional.of(kept);
    }
    RoomForecaster upToDate = upTo(hourOf(now), now);
    Optional<HourlyForecast> hourly = upToDate.forecast();
    if (hourly.isEmpty() || hourly.get().hour() != hourOf(now) - 1) {
      return Optional.empty();
    }
    long hour = hourly.get().hour();
    HourAir lastHour = HourAir.mean(hour, upToDate.tempC(hour), upToDate.vapourPa(hour));
    AirForecast made =
        new AirForecast(
            new AirForecast.Made(room, now, source.present(now), upToDate.outsideUsed(), lastHour),
            hourly.get(),
            past(upToDate, hour));
    last = made;
    lastAsked = now;
    return Optional.of(made);
  }

  private static List<HourAir> past(RoomForecaster known, long lastHour) {
    List<HourAir> past = new ArrayList<>();
    for (long hour = lastHour - PAST.toHours() + 1; hour <= lastHour; hour++) {
      if (known.known(hour)) {
        past.add(HourAir.mean(hour, known.tempC(hour), known.vapourPa(hour)));
      }
    }
    return past;
  }

  private static long hourOf(Instant at) {
    return Math.floorDiv(at.getEpochSecond(), 3600L);
  }

  private static Instant startOf(long hour) {
    return Instant.ofEpochSecond(hour * 3600);
  }

  /** The forecaster with every hour before that one. */
  private RoomForecaster upTo(long hour, Instant now) {
    RoomForecaster known = forecaster;
    boolean backwards = now.isBefore(lastAsked);
    boolean again = late && Duration.between(builtAt, now).compareTo(REBUILT_EVERY) >= 0;
    if (known == null || backwards || again || known.lastHour().isEmpty()) {
      late = false;
      known = new RoomForecaster(zone);
      forecaster = known;
      builtAt = now;
      changeTold = false;
      coursesTold = 0;
      build(known, hour);
    }
    long next = known.lastHour().map(taken -> taken + 1).orElse(hour - MINUTES_FROM.toHours());
    if (next < hour) {
      long from = Math.max(next, hour - MINUTES_FROM.toHours());
      if (next < from) {
        byRollUps(known, source.rollUps(startOf(next), startOf(from), TEN_MINUTES), leastParts());
      }
      byMinutes(known, source.points(startOf(from), startOf(hour), now));
      known.fillTo(hour - 1);
    }
    // A filled hour counts as taken: readings of it that come late ask for a new look.
    takenToS = known.lastHour().map(taken -> (taken + 1) * 3600).orElse(Long.MIN_VALUE);
    return known;
  }

  private void build(RoomForecaster fresh, long hour) {
    Instant minutesFrom = startOf(hour).minus(MINUTES_FROM);
    Instant tensFrom = startOf(hour).minus(LAST_MINUTES_FROM);
    byRollUps(fresh, source.rollUps(startOf(hour).minus(BUILT_FROM), tensFrom, HOUR), 1);
    byRollUps(fresh, source.rollUps(tensFrom, minutesFrom, TEN_MINUTES), leastParts());
  }

  /** Sums over an hour, or over its last ten minutes. */
  private static final class Sum {
    private double tempC;
    private double vapourPa;
    private long temps;
    private long vapours;

    void temp(double sumC, long count) {
      tempC += sumC;
      temps += count;
    }

    void vapour(double sumPa, long count) {
      vapourPa += sumPa;
      vapours += count;
    }

    boolean holds(long least) {
      return temps >= least && vapours >= least;
    }

    double meanC() {
      return tempC / temps;
    }

    double meanPa() {
      return vapourPa / vapours;
    }
  }

  /** An hour as it is summed up. */
  private static final class Hour {
    private final Sum whole = new Sum();
    private final Sum end = new Sum();
    private final BitSet parts = new BitSet();

    HourAir air(long hour) {
      return end.holds(1)
          ? new HourAir(hour, whole.meanC(), whole.meanPa(), end.meanC(), end.meanPa())
          : HourAir.mean(hour, whole.meanC(), whole.meanPa());
    }
  }

  private void byRollUps(RoomForecaster to, List<RollUp> rows, int leastParts) {
    Map<Long, Hour> hours = new LinkedHashMap<>();
    for (RollUp row : rows) {
      for (Sum sum : sums(hours, row.from())) {
        if (row.quantity().equals(RollUp.TEMPERATURE)) {
          sum.temp(row.sum(), row.count());
        } else if (row.quantity().equals(RollUp.VAPOUR)) {
          sum.vapour(row.sum(), row.count());
        }
      }
    }
    add(to, hours, leastParts);
  }

  private void byMinutes(RoomForecaster to, List<AirPoint> points) {
    Map<Long, Hour> hours = new LinkedHashMap<>();
    for (AirPoint point : points) {
      for (Sum sum : sums(hours, point.at())) {
        sum.temp(point.airTempC(), 1);
        sum.vapour(point.vapourPressurePa(), 1);
      }
    }
    add(to, hours, leastParts());
  }

  /** The sums an instant belongs to. */
  private static List<Sum> sums(Map<Long, Hour> hours, Instant at) {
    Hour hour = hours.computeIfAbsent(hourOf(at), h -> new Hour());
    int part = (int) (Math.floorMod(at.getEpochSecond(), 3600L) / TEN_MINUTES.toSeconds());
    hour.parts.set(part);
    return part == LAST_PART ? List.of(hour.whole, hour.end) : List.of(hour.whole);
  }

  private int leastParts() {
    return source.every().compareTo(SLOW) > 0 ? 1 : LEAST_PARTS;
  }

  private void add(RoomForecaster to, Map<Long, Hour> hours, int leastParts) {
    hours.forEach(
        (at, hour) -> {
          if (hour.whole.holds(1) && hour.parts.cardinality() >= leastParts) {
            tell(to, at);
            to.add(hour.air(at));
          }
        });
  }

  /** What else is known by the end of that hour. */
  private void tell(RoomForecaster to, long hour) {
    if (!changeTold && heatingChanged.isPresent() && hour >= hourOf(heatingChanged.get())) {
      to.heatingChanged();
      changeTold = true;
    }
    coursesTold = Math.max(coursesTold, courses.gone());
    for (OutsideCourse course : courses.after(coursesTold)) {
      if (course.issuedHour() > hour + 1) {
        return;
      }
      to.outside(course);
      coursesTold++;
    }
  }
}
