package coatwright.sensors.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.sensors.Eventually;
import coatwright.sensors.Mosquitto;
import coatwright.sensors.Publisher;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The link by itself against a real broker. */
class MqttLinkIT {
  private static final Duration SOON = Duration.ofSeconds(30);

  /** As in the house, but in less of a hurry to spare the network than to end the test. */
  private static final LinkManner QUICK =
      new LinkManner(
          false,
          Duration.ofSeconds(20),
          Duration.ofMillis(200),
          Duration.ofMillis(800),
          Duration.ofHours(1));

  @TempDir Path directory;

  private final List<String> heard = new CopyOnWriteArrayList<>();

  private final class Throwing implements MqttListener {
    @Override
    public void message(String topic, byte[] bytes, boolean retained) {
      heard.add(new String(bytes, StandardCharsets.UTF_8));
      throw new IllegalStateException("thrown on purpose by a test");
    }

    @Override
    public void tooLong(String topic, int bytes) {}

    @Override
    public void changed() {}
  }

  @Test
  void staysConnectedWhenItsListenerThrows() {
    try (Mosquitto broker = new Mosquitto(directory);
        MqttLink link =
            new MqttLink(
                Broker.open("shop", broker.url(), "throwing"), List.of("a/b"), new Throwing())) {
      link.start();
      Eventually.within(SOON, "connected", link::connected);
      Publisher.say(broker.url(), "a/b", "one");
      Publisher.say(broker.url(), "a/b", "two");
      Eventually.within(SOON, "both heard", () -> heard.size() == 2);

      assertThat(heard).containsExactly("one", "two");
      assertThat(link.connects()).isEqualTo(1);
      assertThat(link.thrown()).isEqualTo(2);
    }
  }

  @Test
  void saysThatAnotherClientUsesItsIdWhenTheyThrowEachOtherOut() {
    try (Mosquitto broker = new Mosquitto(directory);
        MqttLink one =
            new MqttLink(
                Broker.open("shop", broker.url(), "twin"), List.of("a/b"), new Throwing(), QUICK);
        MqttLink other =
            new MqttLink(
                Broker.open("shop", broker.url(), "twin"), List.of("a/b"), new Throwing(), QUICK)) {
      one.start();
      other.start();
      Eventually.within(
          SOON,
          "named",
          () ->
              one.trouble().orElse("").contains("another client uses the id")
                  || other.trouble().orElse("").contains("another client uses the id"));

      assertThat(one.trouble().orElse("") + other.trouble().orElse("")).contains("\"twin\"");
    }
  }
}
