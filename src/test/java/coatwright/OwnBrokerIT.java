package coatwright;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coatwright.cli.Hall.Check;
import coatwright.cli.Stop;
import coatwright.config.Settings;
import coatwright.config.SettingsFolder;
import coatwright.sensors.Eventually;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttSecurityException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A shop without a broker: the daemon brings one. */
class OwnBrokerIT {
  private static final Duration SOON = Duration.ofSeconds(20);
  private static final Clock CLOCK = Clock.systemUTC();

  @TempDir Path folder;

  @Test
  void letsSensorsInWithThePasswordAndNobodyWithout() throws Exception {
    int broker = freePort();
    Settings settings = settings(broker, freePort());
    assertThat(checkup(settings))
        .anyMatch(
            check ->
                check.what().equals("broker shop")
                    && check.fine()
                    && check.says().contains("once coatwright run is started"));
    try (Daemon daemon = Daemon.open(settings, folder.resolve("data"), CLOCK)) {
      daemon.start(false);
      URI url = URI.create("tcp://127.0.0.1:" + broker);

      assertThatThrownBy(() -> say(url, "wall", "a guess", "{\"t\":20.5}"))
          .isInstanceOf(MqttSecurityException.class);
      assertThatThrownBy(() -> say(url, "", "", "{\"t\":20.5}")).isInstanceOf(MqttException.class);
      Eventually.within(
          SOON,
          "heard",
          () -> {
            sayRightly(url);
            return !daemon.shop().store().readings().raw("wall", 1).isEmpty();
          });
      assertThat(daemon.shop().store().readings().raw("wall", 99))
          .allSatisfy(each -> assertThat(each.text()).contains("20.1"));
      assertThat(checkup(settings))
          .anyMatch(check -> check.says().equals("inside Coatwright, answers at " + url));
    }
  }

  @Test
  void endsTheStartWithOneSentenceWhenItsPortIsTaken() throws IOException {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      Settings settings = settings(taken.getLocalPort(), freePort());
      try (Daemon daemon = Daemon.open(settings, folder.resolve("data"), CLOCK)) {
        assertThatThrownBy(() -> daemon.start(false))
            .isInstanceOf(Stop.class)
            .hasMessageContaining("taken by another program")
            .hasMessageContaining("use that broker by its url");
      }
    }
  }

  private List<Check> checkup(Settings settings) {
    List<Check> checks = new ArrayList<>();
    new Checkup(settings, folder.resolve("none yet")).lookInto(checks);
    return checks;
  }

  private static void sayRightly(URI url) {
    try {
      say(url, "wall", "linseed and wax", "{\"t\":20.1}");
    } catch (MqttException refused) {
      throw new AssertionError("the right password was not accepted", refused);
    }
  }

  private static void say(URI url, String user, String password, String text) throws MqttException {
    try (MqttClient client =
        new MqttClient(url.toString(), MqttClient.generateClientId(), new MemoryPersistence())) {
      MqttConnectOptions options = new MqttConnectOptions();
      if (!user.isEmpty()) {
        options.setUserName(user);
        options.setPassword(password.toCharArray());
      }
      client.connect(options);
      client.publish("shop/wall", text.getBytes(StandardCharsets.UTF_8), 1, false);
      client.disconnect(100);
    }
  }

  private Settings settings(int brokerPort, int webPort) throws IOException {
    Files.createDirectories(folder.resolve("sources"));
    Files.writeString(folder.resolve("password"), "linseed and wax\n");
    Files.writeString(
        folder.resolve("sources/wall.yaml"),
        """
        source: wall
        transport: mqtt
        filter: shop/wall
        room: bench
        payload: json
        readings:
          - {quantity: air-temperature, at: /t, unit: Cel}
        """);
    Path file = folder.resolve("coatwright.yaml");
    Files.writeString(
        file,
        """
        rooms:
          - name: bench
        brokers:
          shop:
            url: in-process
            port: %d
            user: wall
            password-file: password
        web:
          port: %d
        """
            .formatted(brokerPort, webPort));
    return SettingsFolder.read(file);
  }

  private static int freePort() throws IOException {
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return free.getLocalPort();
    }
  }
}
