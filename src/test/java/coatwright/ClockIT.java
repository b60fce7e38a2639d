package coatwright;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.climate.Reading;
import coatwright.json.Json;
import coatwright.sensors.Eventually;
import coatwright.sensors.Mosquitto;
import coatwright.sensors.Publisher;
import coatwright.store.SqliteStore;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The daemon in a process of its own whose clock is set while it runs. */
class ClockIT {
  private static final Duration SOON = Duration.ofSeconds(90);
  private static final HttpClient HTTP = HttpClient.newHttpClient();

  @TempDir Path folder;

  private final List<Double> said = new ArrayList<>();
  private long saidNanos = System.nanoTime();
  private Process daemon;
  private int port;

  @Test
  void collectsBeforeItsClockIsSetDatesAfterwardsAndOutlivesStepsBothWays() throws Exception {
    Path offset = folder.resolve("offset");
    set(offset, Duration.between(Instant.now(), Instant.parse("1970-01-02T00:00:00Z")));
    try (Mosquitto broker = new Mosquitto(folder)) {
      start(broker, offset);
      sayUntilShown(broker, 20.0);
      assertThat(ask("warnings").toString()).contains("is not to be trusted: it says 1970-01-0");
      assertThat(post("pieces", "{\"name\":\"chest\"}"))
          .contains("at: is needed now: the machine's clock is not to be trusted")
          .contains("2026-03-14T16:20");
      sayUntilShown(broker, 20.1);
      sayUntilShown(broker, 20.2);
      sayUntilShown(broker, 20.3);
      assertThat(readings()).as("none has a date").isEmpty();

      set(offset, Duration.ZERO);
      untilTold("can be trusted again");
      Eventually.within(
          SOON,
          "the warning is over",
          () -> openWarnings().stream().noneMatch(each -> each.contains("not to be trusted")));
      List<Reading> dated = readings();
      assertThat(temperatures(dated)).containsSubsequence(20.0, 20.1, 20.2, 20.3);
      assertThat(dated)
          .allSatisfy(
              each ->
                  assertThat(each.at())
                      .isBetween(Instant.now().minusSeconds(120), Instant.now().plusSeconds(2)));
      assertThat(dated).extracting(Reading::at).isSorted();

      set(offset, Duration.ofMinutes(510));
      untilTold("put forward by 8 h 30 min");
      sayUntilShown(broker, 20.5);
      assertThat(ask("sources").path("sources").get(0).path("state").asText())
          .as("ages run by the steady clock")
          .isEqualTo("current");

      set(offset, Duration.ofHours(-2));
      untilTold("put back by 10 h 30 min");
      sayUntilShown(broker, 20.7);
      assertThat(ask("sources").path("sources").get(0).path("state").asText()).isEqualTo("current");

      daemon.destroy();
      assertThat(daemon.waitFor(20, TimeUnit.SECONDS)).isTrue();
      assertThat(temperatures(readings()))
          .as("nothing lost, doubled or overwritten")
          .containsExactlyInAnyOrderElementsOf(said);
      assertThat(Files.readString(folder.resolve("classes")))
          .as("no broker of our own where none was asked for")
          .contains("org.eclipse.paho")
          .doesNotContain("io.moquette");
    }
  }

  @AfterEach
  void stop() {
    if (daemon != null) {
      daemon.destroyForcibly();
    }
  }

  private void start(Mosquitto broker, Path offset) throws IOException {
    port = freePort();
    Files.createDirectories(folder.resolve("sources"));
    Files.writeString(
        folder.resolve("coatwright.yaml"),
        "shop:\n  zone: UTC\n  clock: by-hand\nrooms:\n  - name: bench\nweb:\n  port: %d\nbrokers:\n  house:\n    url: %s\n"
            .formatted(port, broker.url()));
    Files.writeString(
        folder.resolve("sources/wall.yaml"),
        """
        source: wall
        transport: mqtt
        broker: house
        filter: shop/wall
        room: bench
        payload: json
        every: PT10S
        sequenceAt: /n
        readings:
          - {quantity: air-temperature, at: /t, unit: Cel}
          - {quantity: relative-humidity, at: /h, unit: '%'}
        """);
    ProcessBuilder builder =
        new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:+UseSerialGC",
            "-XX:TieredStopAtLevel=1",
            "-Xlog:class+load:file=" + folder.resolve("classes"),
            "-cp",
            System.getProperty("java.class.path"),
            "coatwright.Coatwright",
            "run",
            "--config",
            folder.resolve("coatwright.yaml").toString(),
            "--data",
            folder.resolve("data").toString());
    builder.environment().put("LD_PRELOAD", library().toString());
    builder.environment().put("FAKETIME_TIMESTAMP_FILE", offset.toString());
    builder.environment().put("FAKETIME_NO_CACHE", "1");
    builder.environment().put("FAKETIME_DONT_FAKE_MONOTONIC", "1");
    daemon =
        builder.redirectErrorStream(true).redirectOutput(folder.resolve("log").toFile()).start();
    Eventually.within(SOON, "the pages are up", this::isUp);
  }

  /** In one move: the daemon reads the file whenever it asks for the time. */
  private void set(Path offset, Duration by) throws IOException {
    Path next = folder.resolve("offset-next");
    Files.writeString(next, "%+d\n".formatted(by.toSeconds()));
    Files.move(next, offset, java.nio.file.StandardCopyOption.ATOMIC_MOVE);
  }

  private static Path library() throws IOException {
    try (Stream<Path> files =
        Files.find(Path.of("/usr/lib"), 3, (f, a) -> f.endsWith("faketime/libfaketimeMT.so.1"))) {
      return files
          .findFirst()
          .orElseThrow(() -> new AssertionError("faketime is missing; ./verify installs it"));
    }
  }

  /** Said anew every second until it is shown; its number tells that it is the same. */
  private void sayUntilShown(Mosquitto broker, double t) {
    said.add(t);
    String text = "{\"t\":%s,\"h\":%s,\"n\":%d}".formatted(t, 50 + said.size() / 10.0, said.size());
    Eventually.within(
        SOON,
        t + " is shown",
        () -> {
          if (System.nanoTime() - saidNanos > TimeUnit.SECONDS.toNanos(1)) {
            saidNanos = System.nanoTime();
            Publisher.say(broker.url(), "shop/wall", text);
          }
          return ask("rooms").path("rooms").get(0).path("air").path("airTempC").asDouble() == t;
        });
  }

  private void untilTold(String what) {
    Eventually.within(
        SOON, what, () -> ask("missed?from=1970-01-01T00:00").toString().contains(what));
  }

  private List<String> openWarnings() {
    List<String> open = new ArrayList<>();
    for (JsonNode warning : ask("warnings").path("warnings")) {
      if (!warning.has("to")) {
        open.add(warning.path("message").asText());
      }
    }
    return open;
  }

  private List<Reading> readings() {
    try (SqliteStore store = SqliteStore.openToRead(folder.resolve("data"))) {
      return store.readings().readings("bench", Instant.MIN, Instant.MAX);
    }
  }

  private static List<Double> temperatures(List<Reading> readings) {
    return readings.stream().map(each -> each.temperatureC().orElseThrow()).toList();
  }

  private String log() {
    try {
      return Files.readString(folder.resolve("log"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private boolean isUp() {
    if (!daemon.isAlive()) {
      throw new AssertionError("the daemon ended: " + log());
    }
    try {
      return send(HttpRequest.newBuilder(address("sources")).build()).statusCode() == 200;
    } catch (UncheckedIOException notYet) {
      return false;
    }
  }

  private URI address(String what) {
    return URI.create("http://127.0.0.1:%d/api/v1/%s".formatted(port, what));
  }

  private JsonNode ask(String what) {
    try {
      return Json.mapper().readTree(send(HttpRequest.newBuilder(address(what)).build()).body());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private String post(String what, String form) {
    return send(HttpRequest.newBuilder(address(what))
            .header("Content-Type", "application/json")
            .POST(HttpRequest.BodyPublishers.ofString(form))
            .build())
        .body();
  }

  private static HttpResponse<String> send(HttpRequest request) {
    try {
      return HTTP.send(request, HttpResponse.BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError(e);
    }
  }

  private static int freePort() throws IOException {
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return free.getLocalPort();
    }
  }
}
