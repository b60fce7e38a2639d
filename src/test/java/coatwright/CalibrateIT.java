package coatwright;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.cli.CommandLineDoor;
import coatwright.config.SettingsFolder;
import coatwright.json.Json;
import coatwright.sensors.Eventually;
import coatwright.sensors.Mosquitto;
import coatwright.sensors.Publisher;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A hygrometer goes into the salt box and comes out corrected, by the commands a person types. */
class CalibrateIT {
  private static final Clock CLOCK = Clock.systemUTC();
  private static final Duration SOON = Duration.ofSeconds(20);

  @TempDir Path folder;

  @Test
  void aSensorIsTestedOverTwoSaltsAndCorrectedFromThenOn() throws Exception {
    int port = freePort();
    try (Mosquitto broker = new Mosquitto(folder)) {
      Path settings = settings(port, broker.url().toString());
      try (Daemon daemon = Daemon.open(SettingsFolder.read(settings), folder.resolve("d"), CLOCK)) {
        daemon.start(false);
        Instant before = Instant.now().minusSeconds(810);
        Eventually.within(
            SOON,
            "the sensor is heard",
            () -> {
              publish(broker, before, 50.2);
              return room(port).path("air").has("rhPct");
            });
        assertThat(said(settings, "calibrate", "wall", "--begin").out())
            .contains("kept out of the room's air");

        inTheBox(settings, broker, 31.1);
        assertThat(room(port).path("air").path("rhPct").asDouble()).isGreaterThan(50);
        Said first = said(settings, "calibrate", "wall", "--salt", "MgCl2");
        assertThat(first.exitCode()).isZero();
        assertThat(first.out()).contains("sent 31.1 %, should be 33.1 %", "an offset only");

        Said typed =
            said(
                settings,
                "calibrate",
                "wall",
                "--salt",
                "NaCl=70.2%",
                "--temp",
                "20C",
                "--settled");
        assertThat(typed.exitCode()).isZero();
        JsonNode wall = json(settings, "calibrate", "wall").path("sensors").get(0);
        JsonNode check = wall.path("checks").get(0);
        assertThat(check.path("points").asInt()).isEqualTo(2);
        assertThat(check.path("gain").asDouble()).isBetween(1.08, 1.09);
        assertThat(wall.path("trust").path("lastCheckAt").isTextual()).isTrue();

        said(settings, "calibrate", "wall", "--end");
        Eventually.within(
            SOON,
            "the corrected humidity is the room's",
            () -> {
              publish(broker, Instant.now(), 50.3);
              double rh = room(port).path("air").path("rhPct").asDouble();
              return rh > 53.5 && rh < 54.5;
            });
        JsonNode again = get(port, "calibrations/wall/readings").path("points");
        JsonNode newest = again.get(again.size() - 1);
        assertThat(newest.path("sentRhPct").asDouble()).isEqualTo(50.3);
        assertThat(newest.path("rhPct").asDouble()).isBetween(53.5, 54.5);
        assertThat(newest.path("recalibratedRhPct").asDouble()).isBetween(53.5, 54.5);
        assertThat(again.get(0).path("rhPct").asDouble()).as("not rewritten").isEqualTo(50.2);
        assertThat(said(settings, "checkup").out())
            .contains("sensor wall: current; may be off by ±2.0 % RH, ±0.3 K (sht31), last check");
      }
    }
  }

  @Test
  void anElementBeyondMendingAndWhatCannotBeReadAreTold() throws Exception {
    Path settings = settings(freePort(), "tcp://127.0.0.1:" + freePort());
    try (Daemon daemon = Daemon.open(SettingsFolder.read(settings), folder.resolve("d"), CLOCK)) {
      daemon.start(false);
      Said spoiled =
          said(
              settings,
              "calibrate",
              "wall",
              "--salt",
              "MgCl2=33%",
              "--salt",
              "NaCl=62%",
              "--temp",
              "21C",
              "--settled");
      assertThat(spoiled.exitCode()).isEqualTo(1);
      assertThat(spoiled.out()).contains("replace the sensor");

      Said wrong = said(settings, "calibrate", "wal", "--salt", "NaCl");
      assertThat(wrong.exitCode()).isEqualTo(2);
      assertThat(wrong.err()).contains("did you mean wall?");
      assertThat(said(settings, "calibrate", "wall", "--salt", "NaCl").err())
          .contains("wall says nothing now", "type what it read");
      assertThat(said(settings, "calibrate", "--begin").exitCode()).isEqualTo(2);

      json(settings, "strike", "e1", "--reason", "the box was not shut");
      assertThat(said(settings, "calibrate", "wall").out())
          .contains("(struck out)", "true = 1.000");
    }
  }

  /** Thirteen minutes of the same, by the sensor's own clock. */
  private static void inTheBox(Path settings, Mosquitto broker, double rh) throws Exception {
    Instant now = Instant.now();
    for (int minute = 13; minute >= 0; minute--) {
      publish(broker, now.minusSeconds(60L * minute), rh);
    }
    Eventually.within(
        SOON,
        "the sensor reads the salt and has settled",
        () -> said(settings, "calibrate", "wall").out().contains("31.1 % as sent"));
    assertThat(said(settings, "calibrate", "wall").out()).contains(": settled", "in the box");
  }

  private static void publish(Mosquitto broker, Instant at, double rh) {
    Publisher.say(
        broker.url(), "shop/wall", "{\"t\":20.0,\"h\":%s,\"at\":\"%s\"}".formatted(rh, at));
  }

  private static JsonNode room(int port) {
    return get(port, "rooms").path("rooms").get(0);
  }

  private static JsonNode get(int port, String path) {
    try (InputStream answer =
        URI.create("http://127.0.0.1:%d/api/v1/%s".formatted(port, path)).toURL().openStream()) {
      return Json.mapper().readTree(answer);
    } catch (IOException unanswered) {
      throw new UncheckedIOException(unanswered);
    }
  }

  private record Said(int exitCode, String out, String err) {}

  private static Said said(Path settings, String... words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    String[] all =
        Stream.concat(Stream.of(words), Stream.of("--config", settings.toString()))
            .toArray(String[]::new);
    int code =
        CommandLineDoor.run(
            all, new House(CLOCK), CLOCK, new PrintWriter(out), new PrintWriter(err));
    return new Said(code, out.toString(), err.toString());
  }

  private static JsonNode json(Path settings, String... words) throws IOException {
    Said said =
        said(settings, Stream.concat(Stream.of(words), Stream.of("--json")).toArray(String[]::new));
    assertThat(List.of(said.err(), said.exitCode())).isEqualTo(List.of("", 0));
    return Json.mapper().readTree(said.out());
  }

  private Path settings(int port, String broker) throws IOException {
    Files.createDirectories(folder.resolve("sources"));
    Files.writeString(
        folder.resolve("sources/wall.yaml"),
        """
        source: wall
        transport: mqtt
        broker: house
        filter: shop/wall
        room: finishing room
        payload: json
        every: PT10S
        chip: sht31
        time: {at: /at, form: rfc3339}
        readings:
          - {quantity: air-temperature, at: /t, unit: Cel}
          - {quantity: relative-humidity, at: /h, unit: '%'}
        """);
    Path file = folder.resolve("coatwright.yaml");
    Files.writeString(
        file,
        "rooms:\n  - name: finishing room\nweb:\n  port: %d\nbrokers:\n  house:\n    url: %s\n"
            .formatted(port, broker));
    return file;
  }

  private static int freePort() throws IOException {
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return free.getLocalPort();
    }
  }
}
