package coatwright;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coatwright.cli.CommandLineDoor;
import coatwright.cli.Stop;
import coatwright.climate.Reading;
import coatwright.climate.Role;
import coatwright.config.SettingsFolder;
import coatwright.json.Json;
import coatwright.sensors.Eventually;
import coatwright.sensors.Mosquitto;
import coatwright.sensors.Publisher;
import coatwright.store.SqliteStore;
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
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The daemon on a real port, and the commands that ask it. */
class DaemonIT {
  private static final Clock CLOCK = Clock.systemUTC();

  private static final Duration SOON = Duration.ofSeconds(20);

  @TempDir Path folder;

  @Test
  void commandsWriteAndAskThroughTheRunningDaemon() throws IOException {
    Path settings = settings(freePort());
    try (Daemon daemon = Daemon.open(SettingsFolder.read(settings), folder.resolve("d"), CLOCK)) {
      daemon.start(false);

      JsonNode piece = json(settings, "piece", "new", "cabinet", "--room", "finishing room");
      json(settings, "part", "new", "cabinet/left-door", "--thickness", "19mm");
      json(settings, "jar", "new", "A", "--finish", "shellac-pale", "--cut", "1.5lb");
      JsonNode coat = json(settings, "coat", "cabinet/left-door", "--jar", "A");
      JsonNode note =
          json(settings, "note", coat.path("entry").asText(), "touch=pass", "--text", "dull");

      assertThat(piece.path("entry").asText()).isEqualTo("e1");
      assertThat(coat.path("kind").asText()).isEqualTo("coat");
      assertThat(note.path("coat").asText()).isEqualTo(coat.path("entry").asText());
      assertThat(json(settings, "jar", "list").path("jars").get(0).path("cutGPerL").asDouble())
          .isBetween(179.7, 179.8);
      assertThat(said(settings, "jar", "show", "A", "--units", "us").out()).contains("1.5 lb");
      assertThat(said(settings, "piece", "list").out())
          .contains("cabinet, finishing room")
          .contains("cabinet/left-door")
          .contains("1 coat");
      assertThat(said(settings, "outlook", "--part", "cabinet/left-door").out())
          .startsWith("Can't tell: ");
      assertThat(json(settings, "due").has("due")).isTrue();
      assertThat(said(settings, "strike", coat.path("entry").asText(), "--reason", "a try").out())
          .contains("is struck out");
    }
  }

  @Test
  void whyIsToldInTheShopsUnitsWithWhatHelpsBeforeWhatDoesNot() throws IOException {
    Path settings = settings(freePort());
    Path data = folder.resolve("d");
    try (SqliteStore store = SqliteStore.open(data, CLOCK)) {
      for (int minute = 60; minute >= 0; minute--) {
        store.readings().append(damp(CLOCK.instant().minus(Duration.ofMinutes(minute))));
      }
    }
    try (Daemon daemon = Daemon.open(SettingsFolder.read(settings), data, CLOCK)) {
      daemon.start(false);
      json(settings, "piece", "new", "cabinet", "--room", "finishing room");
      json(settings, "part", "new", "cabinet/door");
      json(settings, "jar", "new", "A", "--finish", "shellac-pale", "--cut", "1.5lb");
      json(settings, "coat", "cabinet/door", "--jar", "A", "--start", "-20min", "--wood", "28C");
      json(settings, "note", "cabinet/door", "clouded=3");

      String us = said(settings, "why", "cabinet/door", "--units", "us").out();
      JsonNode why = json(settings, "why", "cabinet/door", "--units", "us");

      assertThat(why.path("sentence").asText()).contains("in the air of 28.0 °C and 80 %");
      assertThat(us)
          .startsWith("cabinet/door clouded because the air was damp: in the air of 82.4 °F")
          .contains("clouding none expected\n", ", no help\n")
          .doesNotContain("°C")
          .doesNotContainPattern("\\d K\\b");
      assertThat(us.lastIndexOf("none expected\n")).isLessThan(us.indexOf(", no help"));
      assertThat(said(settings, "checkup").out())
          .contains(
              "ok    backup: none yet; to make one, stop Coatwright and copy the folder " + data);
    }
  }

  @Test
  void aMirrorWhoseServerIsAwayIsToldByCheckupAndKeepsNothingFromWorking() throws IOException {
    Path settings = settings(freePort());
    Path data = folder.resolve("d");
    try (SqliteStore store = SqliteStore.open(data, CLOCK)) {
      store.readings().append(damp(CLOCK.instant()));
    }
    Files.writeString(
        settings, "mirrors:\n  house:\n    url: http://127.0.0.1:1\n", StandardOpenOption.APPEND);
    try (Daemon daemon = Daemon.open(SettingsFolder.read(settings), data, CLOCK)) {
      daemon.start(false);
      Eventually.within(
          SOON,
          "it is told",
          () -> said(settings, "checkup").out().contains("nobody answers at http://127.0.0.1:1"));

      assertThat(said(settings, "checkup").out())
          .as("for a while that is no alarm")
          .contains("ok    mirror house: ");
      assertThat(json(settings, "piece", "new", "cabinet").path("entry").asText()).isEqualTo("e1");
    }
    assertThat(said(settings, "checkup", "--offline", "--data", data.toString()).out())
        .contains("WRONG mirror house: does not answer at http://127.0.0.1:1")
        .contains("mend mirrors.house.url");
  }

  private static Reading damp(Instant at) {
    return new Reading(
        "wall",
        "wall",
        Role.ROOM,
        Optional.of("finishing room"),
        Optional.empty(),
        at,
        OptionalDouble.of(28),
        OptionalDouble.of(80),
        OptionalDouble.empty(),
        0.2,
        2,
        List.of());
  }

  @Test
  void aRefusedFormIsToldFaultByFaultWithExitCodeTwo() throws IOException {
    Path settings = settings(freePort());
    try (Daemon daemon = Daemon.open(SettingsFolder.read(settings), folder.resolve("d"), CLOCK)) {
      daemon.start(false);

      Said said = said(settings, "coat", "cabinet/door", "--jar", "Z", "--wet-film", "75");

      assertThat(said.exitCode()).isEqualTo(2);
      assertThat(said.err()).contains("cabinet/door").contains("\"Z\"").contains("\"75\"");
      assertThat(said(settings, "due", "nobody").exitCode()).isEqualTo(2);
    }
  }

  @Test
  void aTakenPortEndsTheStartWithOneSentence() throws IOException {
    try (ServerSocket other = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      Path settings = settings(other.getLocalPort());
      assertThatThrownBy(
              () -> Daemon.open(SettingsFolder.read(settings), folder.resolve("d"), CLOCK).close())
          .isInstanceOfSatisfying(
              Stop.class, stop -> assertThat(stop.exitCode()).isEqualTo(Stop.BAD_INPUT))
          .hasMessageContaining("port " + other.getLocalPort() + " is taken")
          .hasMessageContaining("web.port");
      assertThat(folder.resolve("d")).doesNotExist();
    }
  }

  @Test
  void aBrokerThatIsNotThereDoesNotKeepItFromRunning() throws IOException {
    Path settings = settings(freePort());
    Files.createDirectories(folder.resolve("sources"));
    Files.writeString(
        folder.resolve("sources/wall.yaml"),
        """
        source: wall
        transport: mqtt
        broker: house
        filter: a/b
        room: finishing room
        payload: number
        readings:
          - {quantity: air-temperature, unit: Cel}
        """);
    Files.writeString(
        settings,
        Files.readString(settings) + "brokers:\n  house:\n    url: tcp://127.0.0.1:" + freePort());
    try (Daemon daemon = Daemon.open(SettingsFolder.read(settings), folder.resolve("d"), CLOCK)) {
      daemon.start(false);

      JsonNode sources = Json.mapper().readTree(said(settings, "checkup", "--json").out());

      assertThat(sources.path("fine").asBoolean()).isFalse();
      assertThat(sources.path("checks").toString()).contains("sensor wall");
    }
  }

  @Test
  void aFarPayloadIsShownOnNowWithinASecondAndBelievedWhenTheNextAgrees() throws Exception {
    int port = freePort();
    Path settings = settings(port);
    Files.createDirectories(folder.resolve("sources"));
    try (Mosquitto broker = new Mosquitto(folder)) {
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
          readings:
            - {quantity: air-temperature, at: /t, unit: Cel}
            - {quantity: relative-humidity, at: /h, unit: '%'}
          """);
      Files.writeString(
          settings, Files.readString(settings) + "brokers:\n  house:\n    url: " + broker.url());
      try (Daemon daemon = Daemon.open(SettingsFolder.read(settings), folder.resolve("d"), CLOCK)) {
        daemon.start(false);
        Eventually.within(
            SOON,
            "the sensor is heard",
            () -> {
              Publisher.say(broker.url(), "shop/wall", "{\"t\":20.0,\"h\":50}");
              return finishingRoom(port).path("air").has("airTempC");
            });

        Publisher.say(broker.url(), "shop/wall", "{\"t\":28.0,\"h\":80}");
        long publishedNs = System.nanoTime();
        Eventually.within(
            SOON, "the jump is shown", () -> finishingRoom(port).path("doubt").has("airTempC"));
        Duration shown = Duration.ofNanos(System.nanoTime() - publishedNs);

        JsonNode room = finishingRoom(port);
        assertThat(shown).isLessThan(Duration.ofSeconds(1));
        assertThat(room.path("air").path("airTempC").asDouble()).isEqualTo(20.0);
        assertThat(room.path("doubt").path("sentence").asText())
            .isEqualTo("just read 28.0 °C, 80 %: a jump, waiting for one more reading to agree");
        assertThat(said(settings, "checkup").out()).contains("sensor wall: just read 28.0 °C");

        Publisher.say(broker.url(), "shop/wall", "{\"t\":28.1,\"h\":79.8}");
        Eventually.within(
            SOON,
            "both are believed",
            () -> finishingRoom(port).path("air").path("airTempC").asDouble() == 28.1);
        assertThat(finishingRoom(port).has("doubt")).isFalse();
      }
    }
  }

  private static JsonNode finishingRoom(int port) {
    try (InputStream rooms =
        URI.create("http://127.0.0.1:%d/api/v1/rooms".formatted(port)).toURL().openStream()) {
      return Json.mapper().readTree(rooms).path("rooms").get(0);
    } catch (IOException unanswered) {
      throw new UncheckedIOException(unanswered);
    }
  }

  @Test
  void aDatabaseThatCannotBeOpenedEndsTheStartWithOneSentence() throws IOException {
    Path data = folder.resolve("d");
    Files.createDirectories(data);
    Files.writeString(
        data.resolve("coatwright.db"), "this is a letter, not a database ".repeat(99));

    assertThatThrownBy(
            () -> Daemon.open(SettingsFolder.read(settings(freePort())), data, CLOCK).close())
        .isInstanceOfSatisfying(
            Stop.class, stop -> assertThat(stop.exitCode()).isEqualTo(Stop.INTERNAL))
        .hasMessageContaining("coatwright.db");
  }

  @Test
  void twoDaemonsDoNotShareADataFolder() throws IOException {
    Path data = folder.resolve("d");
    try (Daemon first = Daemon.open(SettingsFolder.read(settings(freePort())), data, CLOCK)) {
      assertThat(first.shop().journal().entries()).isEmpty();
      assertThatThrownBy(
              () -> Daemon.open(SettingsFolder.read(settings(freePort())), data, CLOCK).close())
          .isInstanceOf(Stop.class)
          .hasMessageContaining("another Coatwright holds");
    }
  }

  /** What a command said. */
  private record Said(int exitCode, String out, String err) {}

  private static Said said(Path settings, String... words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    String[] all = new String[words.length + 2];
    System.arraycopy(words, 0, all, 0, words.length);
    all[words.length] = "--config";
    all[words.length + 1] = settings.toString();
    int code =
        CommandLineDoor.run(
            all, new House(CLOCK), CLOCK, new PrintWriter(out), new PrintWriter(err));
    return new Said(code, out.toString(), err.toString());
  }

  private static JsonNode json(Path settings, String... words) throws IOException {
    String[] all = new String[words.length + 1];
    System.arraycopy(words, 0, all, 0, words.length);
    all[words.length] = "--json";
    Said said = said(settings, all);
    assertThat(said.err()).isEmpty();
    assertThat(said.exitCode()).isZero();
    return Json.mapper().readTree(said.out());
  }

  private Path settings(int port) throws IOException {
    Path file = folder.resolve("coatwright.yaml");
    Files.writeString(file, "rooms:\n  - name: finishing room\nweb:\n  port: " + port + "\n");
    return file;
  }

  private static int freePort() throws IOException {
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return free.getLocalPort();
    }
  }
}
