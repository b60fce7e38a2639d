package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.climate.RawText;
import coatwright.climate.Reading;
import coatwright.sensors.mqtt.Broker;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A source whose payloads say when they were measured loses nothing while the house is away. */
class KeptSessionIT {
  private static final Duration SOON = Duration.ofSeconds(20);

  @TempDir Path directory;

  private final List<Reading> readings = new CopyOnWriteArrayList<>();
  private final List<RawText> raw = new CopyOnWriteArrayList<>();
  private final AtomicBoolean diskFull = new AtomicBoolean();
  private final AtomicInteger refusedToWrite = new AtomicInteger();
  private final Instant start = Instant.now().truncatedTo(ChronoUnit.SECONDS).minusSeconds(600);

  private static final SourceMapping TIMED =
      Mappings.source(
          """
          {'source': 'logger', 'transport': 'mqtt', 'filter': 'shop/logger', 'room': 'bench room',
           'payload': 'json', 'every': 'PT1M', 'time': {'at': '/at', 'form': 'rfc3339'},
           'readings': [{'quantity': 'air-temperature', 'at': '/t', 'unit': 'Cel'}]}
          """);

  private Sensors house(Mosquitto broker) {
    Sensors sensors =
        new Sensors(
            List.of(TIMED),
            Map.of("shop", Broker.open("shop", broker.url(), "kept-it")),
            Clock.systemUTC(),
            readings::add,
            doubt -> {},
            raw::add);
    sensors.storedBy(
        () -> {
          if (diskFull.get()) {
            refusedToWrite.incrementAndGet();
            throw new IllegalStateException("the disk is full, says a test");
          }
        });
    return sensors;
  }

  private void says(Mosquitto broker, int minute, double t) {
    Publisher.say(
        broker.url(),
        "shop/logger",
        "{\"at\":\"%s\",\"t\":%s}".formatted(start.plusSeconds(60L * minute), t));
  }

  /** The first may come before the session is there; so it is said again, but not in a hurry. */
  private void saysUntilHeard(Mosquitto broker) {
    AtomicInteger looks = new AtomicInteger();
    Eventually.within(
        SOON,
        "heard",
        () -> {
          if (looks.getAndIncrement() % 200 == 0) {
            says(broker, 0, 20.0);
          }
          return !readings.isEmpty();
        });
  }

  private List<Instant> times() {
    return readings.stream().map(Reading::at).toList();
  }

  private List<Instant> minutes(int from, int to) {
    return java.util.stream.IntStream.rangeClosed(from, to)
        .mapToObj(minute -> start.plusSeconds(60L * minute))
        .toList();
  }

  @Test
  void hearsAfterwardsWhatWasSaidWhileItWasAwayEachAtItsOwnTime() {
    try (Mosquitto broker = new Mosquitto(directory)) {
      try (Sensors sensors = house(broker)) {
        sensors.start();
        saysUntilHeard(broker);
      }
      for (int minute = 1; minute <= 6; minute++) {
        says(broker, minute, 20.0 + minute / 10.0);
      }
      try (Sensors sensors = house(broker)) {
        sensors.start();
        Eventually.within(SOON, "the six it missed", () -> readings.size() >= 7);
      }

      assertThat(times()).containsExactlyElementsOf(minutes(0, 6));
    }
  }

  @Test
  void tellsTheBrokerThatAMessageIsStoredOnlyWhenItIs() {
    try (Mosquitto broker = new Mosquitto(directory)) {
      try (Sensors sensors = house(broker)) {
        sensors.start();
        saysUntilHeard(broker);
        diskFull.set(true);
        says(broker, 1, 20.1);
        says(broker, 2, 20.2);
        Eventually.within(
            SOON, "read and not written", () -> readings.size() == 3 && refusedToWrite.get() > 0);
      }
      readings.clear();
      diskFull.set(false);
      try (Sensors sensors = house(broker)) {
        sensors.start();
        Eventually.within(SOON, "both again", () -> readings.size() >= 2);
        assertThat(times()).containsSequence(minutes(1, 2)).doesNotHaveDuplicates();
      }
      readings.clear();
      try (Sensors sensors = house(broker)) {
        sensors.start();
        says(broker, 3, 20.3);
        Eventually.within(SOON, "only the next", () -> !readings.isEmpty());
        assertThat(times()).containsExactlyElementsOf(minutes(3, 3));
      }
    }
  }

  @Test
  void takesAMessageDeliveredTwiceOnce() {
    try (Mosquitto broker = new Mosquitto(directory);
        Sensors sensors = house(broker)) {
      sensors.start();
      saysUntilHeard(broker);
      says(broker, 1, 20.1);
      says(broker, 2, 20.2);
      says(broker, 1, 20.1);
      says(broker, 3, 20.3);
      Eventually.within(SOON, "the last", () -> times().contains(minutes(3, 3).get(0)));

      assertThat(times()).containsExactlyElementsOf(minutes(0, 3));
      assertThat(raw.stream().filter(each -> each.reason().orElse("").contains("duplicate")))
          .isNotEmpty();
    }
  }
}
