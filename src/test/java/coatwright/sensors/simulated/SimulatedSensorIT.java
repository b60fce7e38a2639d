package coatwright.sensors.simulated;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.climate.Reading;
import coatwright.sensors.Eventually;
import coatwright.sensors.Mappings;
import coatwright.sensors.Sensors;
import coatwright.sensors.mqtt.Broker;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;

/** A sensor that does not exist, heard over the broker inside this process. */
class SimulatedSensorIT {
  private static final int WANTED = 18_931;

  @Test
  void isHeardLikeARealOne() {
    List<Reading> readings = new CopyOnWriteArrayList<>();
    try (InProcessBroker broker = InProcessBroker.start(WANTED);
        Sensors sensors =
            new Sensors(
                List.of(Mappings.mqtt("wall", "demo/wall")),
                Map.of("shop", Broker.open("shop", broker.url(), "listener")),
                Clock.systemUTC(),
                readings::add,
                doubt -> {},
                raw -> {});
        SimulatedSensor sensor =
            new SimulatedSensor(
                "wall",
                broker.url(),
                "demo/wall",
                Duration.ofMillis(400),
                now -> "{\"t\":20.4,\"h\":%s}".formatted(50 + (now.toEpochMilli() % 1000) / 1000.0),
                Clock.systemUTC())) {
      sensors.start();
      sensor.start();
      Eventually.within(
          Duration.ofSeconds(20), "two readings", () -> readings.size() >= 2 && sensor.sent() >= 2);

      assertThat(readings.get(0).source()).isEqualTo("wall");
      assertThat(readings.get(0).temperatureC()).hasValue(20.4);
    }
  }

  @Test
  void theBrokerTakesTheNextPortWhenTheWantedOneIsTakenAndListensOnLoopbackOnly()
      throws IOException {
    try (InProcessBroker first = InProcessBroker.start(WANTED + 100);
        InProcessBroker second = InProcessBroker.start(first.port())) {
      assertThat(second.port()).isGreaterThan(first.port());
      assertThat(second.url().getHost()).isEqualTo("127.0.0.1");
      try (Socket socket = new Socket()) {
        socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), second.port()));
        assertThat(socket.isConnected()).isTrue();
      }
    }
  }
}
