package coatwright.climate;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the sensors outside last said. They tell no room's air. */
final class OutsideAir {
  /** Weather changes slowly; older than this it is not the air outside now. */
  private static final Duration OLDEST = Duration.ofHours(1);

  private static final Duration CLOCK_SLACK = Duration.ofMinutes(2);

  private final Duration usualInterval;
  private final Map<String, Probe> probes = new LinkedHashMap<>();

  OutsideAir(Duration usualInterval) {
    this.usualInterval = usualInterval;
  }

  synchronized void take(Reading reading, Instant now) {
    probes
        .computeIfAbsent(Probe.name(reading), name -> new Probe(reading, usualInterval))
        .take(reading, now);
  }

  synchronized Optional<AirPoint> now(Instant now) {
    List<SensorAir> told =
        probes.values().stream()
            .flatMap(probe -> probe.newest().stream())
            .filter(air -> air.at().isAfter(now.minus(OLDEST)))
            .filter(air -> air.at().isBefore(now.plus(CLOCK_SLACK)))
            .toList();
    return told.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Combined.of(SensorAir.trusted(told))
                .point(told.stream().map(SensorAir::at).max(Instant::compareTo).orElseThrow()));
  }
}
