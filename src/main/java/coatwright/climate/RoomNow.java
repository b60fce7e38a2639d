package coatwright.climate;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the sensors of one room last said, and whether it may still be believed. */
final class RoomNow {
  /** A reading older than this is not current air, however seldom its sensor speaks. */
  private static final Duration OLDEST_BELIEVED = Duration.ofMinutes(45);

  private static final Duration ALWAYS_BELIEVED = Duration.ofMinutes(15);
  private static final int STALE_INTERVALS = 6;
  private static final double LATE_INTERVALS = 2.5;
  private static final Duration CLOCK_SLACK = Duration.ofMinutes(2);

  private final String room;
  private final Duration usualInterval;
  private final Map<String, Probe> probes = new LinkedHashMap<>();
  private final Map<String, Doubt> doubts = new LinkedHashMap<>();
  private Optional<WoodPoint> wood = Optional.empty();

  RoomNow(String room, Duration usualInterval) {
    this.room = room;
    this.usualInterval = usualInterval;
  }

  /** Remembers a reading in doubt until its sensor is believed again. */
  void doubt(Doubt doubt) {
    doubts.put(Probe.name(doubt.reading()), doubt);
  }

  /** A jump that waits; else what a sensor in doubt says that is worse than what is believed. */
  Optional<Doubt> doubted(Instant now) {
    Optional<Doubt> jump =
        doubts.values().stream()
            .filter(doubt -> age(doubt.reading().at(), now).compareTo(ALWAYS_BELIEVED) <= 0)
            .max(Comparator.comparing(doubt -> doubt.reading().at()));
    return jump.or(() -> worseThanBelieved(now));
  }

  private Optional<Doubt> worseThanBelieved(Instant now) {
    List<SensorAir> told = told(now);
    List<SensorAir> trusted = SensorAir.trusted(told);
    if (trusted.size() == told.size()) {
      return Optional.empty();
    }
    Combined believed = Combined.of(trusted);
    return probes.values().stream()
        .filter(probe -> probe.doubt().isPresent())
        .filter(probe -> probe.newest().filter(air -> believable(probe, air, now)).isPresent())
        .filter(probe -> worse(probe.newest().orElseThrow(), believed))
        .max(Comparator.comparing(probe -> probe.newest().orElseThrow().vapourPressurePa()))
        .flatMap(Probe::doubt);
  }

  private static boolean worse(SensorAir air, Combined believed) {
    return air.vapourPressurePa() > believed.vapourPressurePa()
        || air.airTempC() < believed.airTempC();
  }

  private List<SensorAir> told(Instant now) {
    return probes.values().stream()
        .flatMap(probe -> probe.newest().filter(newest -> believable(probe, newest, now)).stream())
        .toList();
  }

  void take(Reading reading, Instant now) {
    doubts.computeIfPresent(
        Probe.name(reading), (name, doubt) -> doubt.isSettledBy(reading) ? null : doubt);
    Optional<WoodPoint> felt = RoomHistory.wood(reading);
    boolean newer =
        felt.isPresent()
            && (wood.isEmpty()
                || !felt.get().at().isBefore(wood.get().at())
                || wood.get().at().isAfter(now.plus(CLOCK_SLACK)));
    if (newer) {
      wood = felt;
    }
    if (RoomHistory.speaksOfRoomAir(reading)) {
      probes
          .computeIfAbsent(Probe.name(reading), n -> new Probe(reading, usualInterval))
          .take(reading, now);
    }
  }

  Optional<WoodPoint> wood() {
    return wood;
  }

  /** Judges the room's air at this instant. */
  RoomAir judge(Instant now, Optional<WoodPoint> newestWood) {
    List<SensorAir> trusted = SensorAir.trusted(told(now));
    List<SensorAir> believed = new ArrayList<>();
    List<String> sources = new ArrayList<>();
    Optional<String> late = Optional.empty();
    Optional<String> mistrust = Optional.empty();
    for (Probe probe : probes.values()) {
      Optional<SensorAir> air = probe.newest().filter(trusted::contains);
      if (air.isPresent()) {
        believed.add(air.get());
        mistrust = mistrust.or(() -> mistrust(probe, air.get()));
        if (!sources.contains(probe.source())) {
          sources.add(probe.source());
        }
        late = late.or(() -> late(probe, air.get(), now));
      }
    }
    if (believed.isEmpty()) {
      return new RoomAir(
          room,
          Optional.empty(),
          newestWood,
          Optional.empty(),
          List.of(),
          false,
          Optional.of(silence(now)));
    }
    Combined combined = Combined.of(believed);
    Instant newest = believed.stream().map(SensorAir::at).max(Instant::compareTo).orElseThrow();
    Optional<String> lateness = late;
    return new RoomAir(
        room,
        Optional.of(combined.point(newest)),
        newestWood,
        Optional.of(age(newest, now)),
        sources,
        combined.disagree(),
        mistrust.or(combined::trouble).or(() -> lateness),
        mistrust);
  }

  private static Optional<String> mistrust(Probe probe, SensorAir air) {
    return air.doubtful()
        ? probe.doubt().map(doubt -> "%s is in doubt: %s".formatted(probe.name(), doubt.reason()))
        : Optional.empty();
  }

  private static boolean believable(Probe probe, SensorAir air, Instant now) {
    Duration limit = probe.every().multipliedBy(STALE_INTERVALS);
    limit = limit.compareTo(ALWAYS_BELIEVED) < 0 ? ALWAYS_BELIEVED : limit;
    limit = limit.compareTo(OLDEST_BELIEVED) > 0 ? OLDEST_BELIEVED : limit;
    return age(air.at(), now).compareTo(limit) <= 0 && !air.at().isAfter(now.plus(CLOCK_SLACK));
  }

  private static Optional<String> late(Probe probe, SensorAir air, Instant now) {
    Duration age = age(air.at(), now);
    boolean isLate = age.toMillis() > LATE_INTERVALS * probe.every().toMillis();
    return isLate
        ? Optional.of("%s is late: its last reading is %s old".formatted(probe.name(), words(age)))
        : Optional.empty();
  }

  private String silence(Instant now) {
    Optional<SensorAir> newest =
        probes.values().stream()
            .flatMap(probe -> probe.newest().stream())
            .max(Comparator.comparing(SensorAir::at));
    if (newest.isEmpty()) {
      return "no sensor has told the air of " + room + " yet; see Sensors";
    }
    if (newest.get().at().isAfter(now.plus(CLOCK_SLACK))) {
      return "the last reading of %s is later than the clock; check the clock"
          .formatted(newest.get().name());
    }
    return "nothing believable from %s for %s; check its power and its place"
        .formatted(newest.get().name(), words(age(newest.get().at(), now)));
  }

  private static Duration age(Instant at, Instant now) {
    Duration age = Duration.between(at, now);
    return age.isNegative() ? Duration.ZERO : age;
  }

  private static String words(Duration age) {
    if (age.toMinutes() < 120) {
      return age.toMinutes() < 2 ? age.toSeconds() + " s" : age.toMinutes() + " min";
    }
    return age.toHours() < 48 ? age.toHours() + " h" : age.toDays() + " days";
  }
}
