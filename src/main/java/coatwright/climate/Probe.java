package coatwright.climate;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The newest that one sensor said. Pairs temperature and humidity that come apart, and learns how
 * often the sensor speaks.
 */
final class Probe {
  private static final int REMEMBERED = 9;
  private static final Duration LONGEST_LEARNED = Duration.ofMinutes(30);

  /**
   * A held reading may lie this far ahead of the clock before the clock is taken to be set back.
   */
  private static final Duration CLOCK_SLACK = Duration.ofMinutes(2);

  /** One half of a pair. */
  private record Half(Instant at, double value, double error, Optional<Mistrust> mistrust) {}

  private final String source;
  private final String name;
  private final Duration usualInterval;
  private final long[] spacingsMs = new long[REMEMBERED];
  private int spacings;
  private Optional<Half> temperature = Optional.empty();
  private Optional<Half> humidity = Optional.empty();
  private Optional<Instant> spokeAt = Optional.empty();
  private Optional<SensorAir> newest = Optional.empty();
  private Optional<Doubt> doubt = Optional.empty();

  Probe(Reading first, Duration usualInterval) {
    this.source = first.source();
    this.name = name(first);
    this.usualInterval = usualInterval;
  }

  /**
   * Takes a reading.
   *
   * @return the air it completes: its own pair, or the one it makes with the half that came before
   */
  Optional<SensorAir> take(Reading reading, Instant now) {
    if (reading.temperatureC().isPresent() && reading.rhPct().isPresent()) {
      learn(reading.at());
      temperature = half(reading, reading.temperatureC(), reading.temperatureErrorK());
      humidity = half(reading, reading.rhPct(), reading.rhErrorPct());
      return keep(pair(), reading, now);
    }
    if (reading.temperatureC().isPresent()) {
      learn(reading.at());
      temperature = half(reading, reading.temperatureC(), reading.temperatureErrorK());
      return keep(pair(), reading, now);
    }
    if (reading.rhPct().isPresent()) {
      humidity = half(reading, reading.rhPct(), reading.rhErrorPct());
      return keep(pair(), reading, now);
    }
    return Optional.empty();
  }

  private static Optional<Half> half(Reading reading, OptionalDouble value, double error) {
    return Optional.of(new Half(reading.at(), value.getAsDouble(), error, reading.mistrust()));
  }

  private Optional<SensorAir> pair() {
    if (temperature.isEmpty() || humidity.isEmpty()) {
      return Optional.empty();
    }
    Half warm = temperature.get();
    Half wet = humidity.get();
    Duration apart = Duration.between(warm.at(), wet.at()).abs();
    if (apart.compareTo(every().multipliedBy(2)) > 0) {
      return Optional.empty();
    }
    Instant at = warm.at().isAfter(wet.at()) ? warm.at() : wet.at();
    Optional<SensorAir> air =
        SensorAir.of(name, at, warm.value(), wet.value(), warm.error(), wet.error());
    return mistrust().isPresent() ? air.map(SensorAir::inDoubt) : air;
  }

  private Optional<Mistrust> mistrust() {
    return humidity.flatMap(Half::mistrust).or(() -> temperature.flatMap(Half::mistrust));
  }

  /**
   * A reading sent late does not displace a newer one; but after the clock was set back, the one
   * from the future gives way.
   */
  private Optional<SensorAir> keep(Optional<SensorAir> air, Reading reading, Instant now) {
    boolean newer =
        air.isPresent()
            && (newest.isEmpty()
                || !air.get().at().isBefore(newest.get().at())
                || newest.get().at().isAfter(now.plus(CLOCK_SLACK)));
    if (newer) {
      newest = air;
      doubt = mistrust().map(why -> Doubt.of(reading, why));
    }
    return air;
  }

  private void learn(Instant at) {
    if (spokeAt.isPresent() && at.isAfter(spokeAt.get())) {
      spacingsMs[spacings % REMEMBERED] = Duration.between(spokeAt.get(), at).toMillis();
      spacings++;
    }
    spokeAt = Optional.of(at);
  }

  /** How often it speaks: the median of its last spacings, at least the usual, at most 30 min. */
  Duration every() {
    if (spacings < REMEMBERED) {
      return usualInterval;
    }
    long[] sorted = spacingsMs.clone();
    Arrays.sort(sorted);
    Duration median = Duration.ofMillis(sorted[REMEMBERED / 2]);
    Duration capped = median.compareTo(LONGEST_LEARNED) > 0 ? LONGEST_LEARNED : median;
    return capped.compareTo(usualInterval) > 0 ? capped : usualInterval;
  }

  /** What it last said, where that is in doubt. */
  Optional<Doubt> doubt() {
    return doubt;
  }

  Optional<SensorAir> newest() {
    return newest;
  }

  String source() {
    return source;
  }

  /** What people call the sensor: its source, and which one of it where it has several. */
  String name() {
    return name;
  }

  static String name(Reading reading) {
    boolean only = reading.source().equals(reading.sensor());
    return only ? reading.source() : reading.source() + "/" + reading.sensor();
  }
}
