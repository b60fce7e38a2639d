package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.climate.RawText;
import coatwright.climate.Reading;
import coatwright.climate.SourceState;
import coatwright.climate.SourceStatus;
import coatwright.sensors.mqtt.Broker;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole way in from a real broker, which dies and comes back meanwhile. */
class MqttSensorsIT {
  private static final Duration SOON = Duration.ofSeconds(20);

  /** Far more than the memory of the machine it may come to; MQTT allows 256 MB. */
  private static final int LARGE = 60_000_000;

  @TempDir Path directory;

  private final List<Reading> readings = new CopyOnWriteArrayList<>();
  private final List<RawText> raw = new CopyOnWriteArrayList<>();

  private Sensors sensors(Mosquitto broker, SourceMapping mapping, Consumer<Reading> accepted) {
    return new Sensors(
        List.of(mapping),
        Map.of("shop", Broker.open("shop", broker.url(), "coatwright-it")),
        Clock.systemUTC(),
        accepted,
        doubt -> {},
        raw::add);
  }

  private static void whenConnected(Sensors sensors) {
    Eventually.within(SOON, "connected", sensors::allConnected);
  }

  /** The link's trouble; a source that only waits has none of it. */
  private static String trouble(Sensors sensors) {
    String sentence = sensors.statuses().get(0).trouble().orElse("");
    return sentence.startsWith("broker") ? sentence : "";
  }

  @Test
  void readsAgainAfterTheBrokerWasKilledAndBroughtBack() {
    try (Mosquitto broker = new Mosquitto(directory);
        Sensors sensors = sensors(broker, Mappings.mqtt("wall", "shop/wall"), readings::add)) {
      sensors.start();
      sayUntilHeard(broker, 20.5, 1);

      broker.kill();
      Eventually.within(SOON, "loss noticed", () -> !trouble(sensors).isBlank());
      broker.start();
      whenConnected(sensors);
      sayUntilHeard(broker, 20.7, 2);

      assertThat(readings).extracting(each -> each.temperatureC().orElseThrow()).contains(20.7);
      assertThat(readings).allSatisfy(each -> assertThat(each.source()).isEqualTo("wall"));
    }
  }

  /** A first message may come before the subscription; what counts is that a later one is heard. */
  private void sayUntilHeard(Mosquitto broker, double t, int atLeast) {
    AtomicInteger tries = new AtomicInteger();
    Eventually.within(
        SOON,
        "reading of " + t,
        () -> {
          if (tries.getAndIncrement() % 100 == 0) {
            Publisher.say(
                broker.url(),
                "shop/wall",
                "{\"t\":%s,\"h\":%s}".formatted(t, 50 + tries.get() / 1000.0));
          }
          return readings.size() >= atLeast
              && readings.get(readings.size() - 1).temperatureC().orElse(0) == t;
        });
  }

  @Test
  void connectsWhenTheBrokerComesAfterTheHouse() {
    Mosquitto broker = new Mosquitto(directory);
    broker.kill();
    try (broker;
        Sensors sensors = sensors(broker, Mappings.mqtt("wall", "shop/wall"), readings::add)) {
      sensors.start();
      Eventually.within(SOON, "trouble named", () -> !trouble(sensors).isBlank());
      assertThat(trouble(sensors)).contains("nobody answers; is the broker running?");

      broker.start();
      whenConnected(sensors);
      sayUntilHeard(broker, 21.0, 1);
    }
  }

  @Test
  void showsARetainedValueAsLastKnownAndNeverLogsIt() {
    try (Mosquitto broker = new Mosquitto(directory)) {
      Publisher.leave(broker.url(), "shop/wall", "{\"t\":17.2,\"h\":61}");
      try (Sensors sensors = sensors(broker, Mappings.mqtt("wall", "shop/wall"), readings::add)) {
        sensors.start();
        Eventually.within(SOON, "retained value seen", () -> !raw.isEmpty());

        assertThat(raw.get(0).verdict()).isEqualTo("refused");
        assertThat(raw.get(0).reason()).contains("retained on subscribe; age unknown");
        assertThat(readings).isEmpty();
        SourceStatus status = sensors.statuses().get(0);
        assertThat(status.state()).isEqualTo(SourceState.WAITING);
        assertThat(status.trouble().orElseThrow()).contains("17.2");
      }
    }
  }

  @Test
  void keepsTheConnectionWhenWhoeverTakesTheReadingThrows() {
    AtomicInteger calls = new AtomicInteger();
    Consumer<Reading> throwing =
        reading -> {
          readings.add(reading);
          if (calls.getAndIncrement() == 0) {
            throw new IllegalStateException("thrown on purpose by a test");
          }
        };
    try (Mosquitto broker = new Mosquitto(directory);
        Sensors sensors = sensors(broker, Mappings.mqtt("wall", "shop/wall"), throwing)) {
      sensors.start();
      sayUntilHeard(broker, 20.1, 1);
      sayUntilHeard(broker, 20.3, 2);

      assertThat(trouble(sensors)).isBlank();
      assertThat(sensors.statuses().get(0).state()).isEqualTo(SourceState.CURRENT);
    }
  }

  @Test
  void refusesAHugeMessageUnreadAndGoesOn() {
    try (Mosquitto broker = new Mosquitto(directory);
        Sensors sensors = sensors(broker, Mappings.mqtt("wall", "shop/wall"), readings::add)) {
      sensors.start();
      sayUntilHeard(broker, 20.1, 1);
      Publisher.send(broker.url(), "shop/wall", new byte[LARGE], false);
      Eventually.within(SOON, "refused", () -> !sensors.statuses().get(0).lastRefused().isEmpty());
      sayUntilHeard(broker, 20.2, 2);

      assertThat(sensors.statuses().get(0).lastRefused().get(0).reason().orElseThrow())
          .contains("bytes or more is too long to be a reading");
    }
  }

  @Test
  void marksASourceAsNotCurrentWhenItsNodeSaysItIsGone() {
    SourceMapping mapping =
        Mappings.source(
            """
            {'source': 'wall', 'transport': 'mqtt', 'filter': 'shop/wall', 'room': 'bench room',
             'payload': 'json', 'every': 'PT1M',
             'presence': {'filter': 'shop/wall/state', 'present': ['online'],
                          'absent': ['offline'], 'ignoreCase': true},
             'readings': [{'quantity': 'air-temperature', 'at': '/t', 'unit': 'Cel'}]}
            """);
    try (Mosquitto broker = new Mosquitto(directory);
        Sensors sensors = sensors(broker, mapping, readings::add)) {
      sensors.start();
      sayUntilHeard(broker, 20.1, 1);
      Publisher.say(broker.url(), "shop/wall/state", "Offline");
      Eventually.within(
          SOON, "not current", () -> sensors.statuses().get(0).state() == SourceState.LATE);

      assertThat(sensors.statuses().get(0).trouble().orElseThrow()).contains("says it is gone");
    }
  }

  private static SourceMapping presence() {
    return Mappings.source(
        """
        {'source': 'wall', 'transport': 'mqtt', 'filter': 'shop/wall', 'room': 'bench room',
         'payload': 'json', 'every': 'PT1M',
         'presence': {'filter': 'shop/wall/state', 'present': ['online'], 'absent': ['offline']},
         'readings': [{'quantity': 'air-temperature', 'at': '/t', 'unit': 'Cel'}]}
        """);
  }

  @Test
  void believesFreshReadingsMoreThanAGoneTheBrokerKept() {
    try (Mosquitto broker = new Mosquitto(directory);
        Sensors sensors = sensors(broker, presence(), readings::add)) {
      sensors.start();
      sayUntilHeard(broker, 20.1, 1);
      Publisher.leave(broker.url(), "shop/wall/state", "offline");
      Eventually.within(SOON, "gone", () -> sensors.statuses().get(0).state() == SourceState.LATE);
      sayUntilHeard(broker, 20.2, 2);
      assertThat(sensors.statuses().get(0).state()).isEqualTo(SourceState.CURRENT);

      broker.kill();
      Eventually.within(SOON, "loss noticed", () -> !trouble(sensors).isBlank());
      broker.start();
      Publisher.leave(broker.url(), "shop/wall/state", "offline");
      whenConnected(sensors);
      Publisher.leave(broker.url(), "shop/wall/state", "");
      Publisher.say(broker.url(), "shop/wall", "{\"t\":20.3}");
      Eventually.within(SOON, "a later reading", () -> readings.size() == 3);
      assertThat(sensors.statuses().get(0).state()).isEqualTo(SourceState.CURRENT);
    }
  }

  @Test
  void dropsWhatTheBrokerKeptWhenToldToIgnoreIt() {
    SourceMapping mapping =
        Mappings.source(
            """
            {'source': 'wall', 'transport': 'mqtt', 'filter': 'shop/+', 'room': 'bench room',
             'payload': 'json', 'every': 'PT1M', 'retained': 'ignore',
             'readings': [{'quantity': 'air-temperature', 'at': '/t', 'unit': 'Cel'}]}
            """);
    try (Mosquitto broker = new Mosquitto(directory)) {
      Publisher.leave(broker.url(), "shop/old", "{\"t\":17.2}");
      try (Sensors sensors = sensors(broker, mapping, readings::add)) {
        sensors.start();
        sayUntilHeard(broker, 20.1, 1);

        assertThat(raw).extracting(RawText::channel).doesNotContain("shop/old");
        assertThat(sensors.statuses().get(0).refused()).isZero();
      }
    }
  }

  @Test
  void tellsSensorsOfOneFilterApartByTheLevelNamedSensor() {
    SourceMapping mapping =
        Mappings.source(
            """
            {'source': 'nodes', 'transport': 'mqtt', 'filter': 'shop/+/+/air',
             'captures': ['room', 'sensor'], 'room': 'bench room', 'payload': 'json',
             'every': 'PT1M', 'readings': [{'quantity': 'air-temperature', 'at': '/t', 'unit': 'Cel'}]}
            """);
    try (Mosquitto broker = new Mosquitto(directory);
        Sensors sensors = sensors(broker, mapping, readings::add)) {
      sensors.start();
      whenConnected(sensors);
      Eventually.within(
          SOON,
          "both heard",
          () -> {
            Publisher.say(broker.url(), "shop/bench/door/air", "{\"t\":20.1}");
            Publisher.say(broker.url(), "shop/bench/rack/air", "{\"t\":20.4}");
            return readings.stream().map(Reading::sensor).distinct().count() >= 2;
          });

      assertThat(readings).extracting(Reading::sensor).containsOnly("door", "rack");
    }
  }

  @Test
  void holdsBackABacklogLetGoAtOnceBecauseOnlyItsOrderIsKnown() {
    try (Mosquitto broker = new Mosquitto(directory);
        Sensors sensors = sensors(broker, Mappings.mqtt("wall", "shop/wall"), readings::add)) {
      sensors.start();
      whenConnected(sensors);
      Publisher.sayAll(
          broker.url(),
          "shop/wall",
          List.of(
              "{\"t\":20.1,\"h\":50.1}",
              "{\"t\":20.2,\"h\":50.2}",
              "{\"t\":20.3,\"h\":50.3}",
              "{\"t\":20.4,\"h\":50.4}",
              "{\"t\":20.5,\"h\":50.5}"));
      Eventually.within(SOON, "all five kept", () -> raw.size() == 5);

      assertThat(readings).isEmpty();
      assertThat(raw).extracting(RawText::verdict).containsOnly("heldBack");
      assertThat(raw.get(0).reason().orElseThrow()).contains("only their order is known");
    }
  }

  @Test
  void hearsSeveralBrokersAtOnceAndSaysWhichOfThemIsGone() {
    try (Mosquitto near = new Mosquitto(directory);
        Mosquitto far = new Mosquitto(directory);
        Sensors sensors =
            new Sensors(
                List.of(at("near", "shop/near", "one"), at("far", "shop/far", "two")),
                Map.of(
                    "one", Broker.open("one", near.url(), "two-brokers"),
                    "two", Broker.open("two", far.url(), "two-brokers")),
                Clock.systemUTC(),
                readings::add,
                doubt -> {},
                raw::add)) {
      sensors.start();
      Eventually.within(
          SOON,
          "both heard",
          () -> {
            Publisher.say(near.url(), "shop/near", "{\"t\":20.1}");
            Publisher.say(far.url(), "shop/far", "{\"t\":21.1}");
            return readings.stream().map(Reading::source).distinct().count() == 2;
          });

      far.kill();
      Eventually.within(
          SOON,
          "the far one is named",
          () -> sensors.statuses().get(1).trouble().orElse("").startsWith("broker two at"));
      assertThat(sensors.statuses().get(0).trouble()).isEmpty();
    }
  }

  private static SourceMapping at(String source, String filter, String broker) {
    return Mappings.source(
        """
        {'source': '%s', 'transport': 'mqtt', 'filter': '%s', 'broker': '%s',
         'room': 'bench room', 'payload': 'json', 'every': 'PT1M',
         'readings': [{'quantity': 'air-temperature', 'at': '/t', 'unit': 'Cel'}]}
        """
            .formatted(source, filter, broker));
  }
}
