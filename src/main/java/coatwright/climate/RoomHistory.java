package coatwright.climate;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The recent past of one room in memory: each sensor's air by the minute, and wood temperatures.
 */
final class RoomHistory {
  /** A wood temperature and the part it was taken on, where one is named. */
  private record OnPart(Optional<String> part, WoodPoint point) {}

  private static final double HELD_INTERVALS = 2.5;

  private final Duration usualInterval;
  private final Map<String, Probe> probes = new LinkedHashMap<>();
  private final Map<String, MinuteBins> bins = new LinkedHashMap<>();
  private final List<OnPart> wood = new ArrayList<>();

  RoomHistory(Duration usualInterval) {
    this.usualInterval = usualInterval;
  }

  void add(Reading reading) {
    wood(reading).ifPresent(point -> addWood(new OnPart(reading.part(), point)));
    if (speaksOfRoomAir(reading)) {
      String name = Probe.name(reading);
      probes
          .computeIfAbsent(name, n -> new Probe(reading, usualInterval))
          .take(reading, reading.at())
          .ifPresent(air -> bins.computeIfAbsent(name, n -> new MinuteBins()).add(air));
    }
  }

  /** Outside air is never mixed with a room's, and a probe on a piece feels the piece. */
  static boolean speaksOfRoomAir(Reading reading) {
    return reading.role() == Role.ROOM || reading.role() == Role.REFERENCE;
  }

  /** The wood temperature in a reading: the surface's, or whatever a probe on a piece feels. */
  static Optional<WoodPoint> wood(Reading reading) {
    OptionalDouble tempC =
        reading.surfaceTemperatureC().isPresent() || reading.role() != Role.PIECE
            ? reading.surfaceTemperatureC()
            : reading.temperatureC();
    return tempC.isPresent()
        ? Optional.of(new WoodPoint(reading.at(), tempC.getAsDouble(), reading.temperatureErrorK()))
        : Optional.empty();
  }

  private void addWood(OnPart taken) {
    int at = wood.size();
    while (at > 0 && wood.get(at - 1).point().at().isAfter(taken.point().at())) {
      at--;
    }
    wood.add(at, taken);
  }

  /** Wood temperatures over [from, to), oldest first; on a part, those of the part or its faces. */
  List<WoodPoint> wood(Optional<String> part, Instant from, Instant to) {
    return wood.stream()
        .filter(
            taken -> part.isEmpty() || taken.part().filter(p -> isOn(p, part.get())).isPresent())
        .map(OnPart::point)
        .filter(point -> !point.at().isBefore(from) && point.at().isBefore(to))
        .toList();
  }

  private static boolean isOn(String probed, String part) {
    return probed.equals(part) || probed.startsWith(part + "/") || part.startsWith(probed + "/");
  }

  Optional<WoodPoint> newestWood() {
    return wood.isEmpty() ? Optional.empty() : Optional.of(wood.get(wood.size() - 1).point());
  }

  void forgetBefore(Instant instant) {
    bins.values().forEach(rows -> rows.forgetBefore(instant));
    wood.removeIf(taken -> taken.point().at().isBefore(instant));
  }

  /** How often the room's quickest sensor speaks. */
  Duration every() {
    return probes.values().stream()
        .map(Probe::every)
        .min(Duration::compareTo)
        .orElse(usualInterval);
  }

  /**
   * The combined air over [from, to), a point for every minute in which any sensor spoke. A sensor
   * that was silent in that minute is held for two and a half of its intervals.
   */
  List<AirPoint> points(Instant from, Instant to) {
    List<Track> tracks = new ArrayList<>();
    bins.forEach((name, rows) -> tracks.add(new Track(name, rows, heldMs(name), from)));
    long fromMs = from.toEpochMilli();
    long toMs = to.toEpochMilli();
    List<AirPoint> points = new ArrayList<>();
    List<SensorAir> heard = new ArrayList<>();
    while (true) {
      long nextMs = Long.MAX_VALUE;
      for (Track track : tracks) {
        nextMs = Math.min(nextMs, track.nextMs());
      }
      if (nextMs >= toMs) {
        return points;
      }
      heard.clear();
      long minute = Math.floorDiv(nextMs, Track.MINUTE_MS);
      long latestMs = nextMs;
      for (Track track : tracks) {
        latestMs = Math.max(latestMs, track.stepTo(minute));
        track.heldAt(nextMs).ifPresent(heard::add);
      }
      if (latestMs >= fromMs && latestMs < toMs) {
        points.add(Combined.of(SensorAir.trusted(heard)).point(Instant.ofEpochMilli(latestMs)));
      }
    }
  }

  private long heldMs(String name) {
    Probe probe = probes.get(name);
    Duration every = probe == null ? usualInterval : probe.every();
    return (long) (HELD_INTERVALS * every.toMillis());
  }

  /** A walk along one sensor's rows. */
  private static final class Track {
    static final long MINUTE_MS = 60_000;

    private final String name;
    private final MinuteBins rows;
    private final long heldMs;
    private int next;

    Track(String name, MinuteBins rows, long heldMs, Instant from) {
      this.name = name;
      this.rows = rows;
      this.heldMs = heldMs;
      this.next = rows.rowFrom(from.minusMillis(heldMs));
    }

    long nextMs() {
      return next < rows.rows() ? rows.atMs(next) : Long.MAX_VALUE;
    }

    /** Passes the row of that minute, if there is one; returns when its reading was taken. */
    long stepTo(long minute) {
      if (nextMs() != Long.MAX_VALUE && Math.floorDiv(nextMs(), MINUTE_MS) == minute) {
        next++;
        return rows.atMs(next - 1);
      }
      return Long.MIN_VALUE;
    }

    Optional<SensorAir> heldAt(long millis) {
      int held = next - 1;
      boolean fresh = held >= 0 && millis - rows.atMs(held) <= heldMs;
      return fresh ? Optional.of(rows.air(held, name)) : Optional.empty();
    }
  }

  /** Stretches over [from, to) longer than {@code longest} without a point. */
  static List<Gap> gaps(List<AirPoint> points, Instant from, Instant to, Duration longest) {
    List<Gap> gaps = new ArrayList<>();
    Instant known = from;
    for (AirPoint point : points) {
      addGap(gaps, known, point.at(), longest);
      known = point.at();
    }
    addGap(gaps, known, to, longest);
    return gaps;
  }

  private static void addGap(List<Gap> gaps, Instant from, Instant to, Duration longest) {
    if (Duration.between(from, to).compareTo(longest) > 0) {
      gaps.add(new Gap(from, to));
    }
  }
}
