package coatwright.soak;

import coatwright.json.Json;
import coatwright.sensors.Eventually;
import coatwright.sensors.Mosquitto;
import coatwright.sensors.serial.Socat;
import coatwright.store.influx.TestServer;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;

/**
 * The daemon for a while, with faults at random: the broker killed, the serial board pulled out,
 * the mirror's server killed, the daemon itself killed. At the end every reading must be in the
 * database once, and in the mirror once, but for what was on its way while something was dead.
 *
 * <p>Arguments: minutes, seed. The last third runs without killing the daemon, so that what it
 * holds then (memory, threads, open files) can be compared over time.
 */
public final class Soak {
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final String DATABASE = "soak";

  private final Path folder;
  private final Instant until;
  private final Instant calm;
  private final Random random;
  private final int port = TestServer.freePort();
  private final HttpClient http = HttpClient.newHttpClient();
  private final Mosquitto broker;
  private final Socat line;
  private final TestServer.Influx influx;
  private final Ledger ledger = new Ledger();
  private final Held held = new Held();
  private final int[] faults = new int[Fault.values().length];
  private Process daemon;

  /** What can happen, and how often out of ten. */
  private enum Fault {
    BROKER("broker killed", 3, 15, false),
    LINE("serial board pulled out", 3, 10, false),
    MIRROR("mirror's server killed", 3, 30, true),
    DAEMON("daemon killed", 1, 5, false);

    private final String name;
    private final int weight;
    private final int longestS;
    private final boolean lossless;

    Fault(String name, int weight, int longestS, boolean lossless) {
      this.name = name;
      this.weight = weight;
      this.longestS = longestS;
      this.lossless = lossless;
    }
  }

  private Soak(Path folder, Duration length, long seed) throws IOException {
    this.folder = folder;
    this.random = new Random(seed);
    this.broker = new Mosquitto(made("broker"));
    this.line = new Socat(made("line"));
    this.influx = new TestServer.Influx(made("influx"));
    influx.createDatabase(DATABASE);
    writeSettings();
    startDaemon();
    Instant begin = Instant.now();
    this.until = begin.plus(length);
    this.calm = begin.plus(length.multipliedBy(2).dividedBy(3));
  }

  /** Runs it and prints a table. */
  public static void main(String[] args) throws Exception {
    Duration length = Duration.ofSeconds(Math.round(60 * Double.parseDouble(args[0])));
    long seed = Long.parseLong(args[1]);
    Path folder = Files.createTempDirectory("coatwright-soak-");
    Soak soak = new Soak(folder, length, seed);
    boolean fine;
    try {
      soak.run();
      fine = soak.report(length, seed);
    } finally {
      soak.stop();
    }
    System.out.println(
        fine ? "\nNothing lost, nothing doubled." : "\nNOT as it should be; see above. " + folder);
    System.exit(fine ? 0 : 1);
  }

  private Path made(String name) throws IOException {
    return Files.createDirectories(folder.resolve(name));
  }

  private void writeSettings() throws IOException {
    Path sources = Files.createDirectories(folder.resolve("config/sources"));
    Files.writeString(
        folder.resolve("config/coatwright.yaml"),
        """
        rooms:
          - name: finishing room
        brokers:
          house:
            url: %s
        mirrors:
          house:
            url: %s
            bucket: %s
            read-back: influxql
        web:
          port: %d
        """
            .formatted(broker.url(), influx.url(), DATABASE, port));
    Files.writeString(
        sources.resolve("wall.yaml"),
        """
        source: wall
        transport: mqtt
        broker: house
        filter: soak/wall
        room: finishing room
        payload: json
        every: PT1S
        time: {at: /at, form: rfc3339}
        readings:
          - {quantity: air-temperature,   at: /t, unit: Cel}
          - {quantity: relative-humidity, at: /h, unit: "%"}
        """);
    Files.writeString(
        sources.resolve("bench.yaml"),
        """
        source: bench
        transport: serial
        device: %s
        line: 115200 8N1
        room: finishing room
        payload: pattern
        pattern: '^(?<t>\\d{1,3}\\.\\d{6}) (?<h>\\d{1,3}\\.\\d{1,3})$'
        every: PT1S
        readings:
          - {quantity: air-temperature,   at: t, unit: Cel}
          - {quantity: relative-humidity, at: h, unit: "%%"}
        """
            .formatted(line.device()));
  }

  private void startDaemon() throws IOException {
    daemon =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-Xms24m",
                "-Xmx160m",
                "-Dcoatwright.home=" + Path.of("").toAbsolutePath(),
                "-cp",
                System.getProperty("java.class.path"),
                "coatwright.Coatwright",
                "run",
                "--config",
                folder.resolve("config").toString(),
                "--data",
                folder.resolve("data").toString())
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.appendTo(folder.resolve("daemon.log").toFile()))
            .start();
    held.began(daemon);
    Eventually.within(PATIENCE, "the daemon answers", () -> get("/health") != null);
  }

  private void run() throws Exception {
    try (Voices voices = new Voices(broker.url(), line, ledger)) {
      voices.start();
      Instant next = Instant.now().plusSeconds(20);
      while (Instant.now().isBefore(until)) {
        TimeUnit.SECONDS.sleep(1);
        held.look();
        if (Instant.now().isAfter(next) && Instant.now().isBefore(until.minusSeconds(60))) {
          happen(fault());
          next = Instant.now().plusSeconds(15 + random.nextInt(30));
        }
      }
    }
    Eventually.within(
        Duration.ofMinutes(3),
        "the mirror has caught up",
        () -> {
          JsonNode mirror = get("/api/v1/mirrors");
          return mirror != null && mirror.at("/mirrors/0/waiting").asLong(1) == 0;
        });
    held.look();
  }

  private Fault fault() {
    int dice = random.nextInt(10);
    for (Fault fault : Fault.values()) {
      dice -= fault.weight;
      if (dice < 0) {
        return fault == Fault.DAEMON && Instant.now().isAfter(calm) ? Fault.MIRROR : fault;
      }
    }
    throw new IllegalStateException("weights are not ten");
  }

  private void happen(Fault fault) throws IOException, InterruptedException {
    faults[fault.ordinal()]++;
    Instant from = Instant.now();
    long ms = 500 + random.nextInt(1_000 * fault.longestS);
    switch (fault) {
      case BROKER -> {
        broker.kill();
        TimeUnit.MILLISECONDS.sleep(ms);
        broker.start();
      }
      case LINE -> {
        line.pullOut();
        TimeUnit.MILLISECONDS.sleep(ms);
        line.plugIn();
      }
      case MIRROR -> {
        influx.kill();
        TimeUnit.MILLISECONDS.sleep(ms);
        influx.start();
      }
      case DAEMON -> {
        daemon.toHandle().destroyForcibly();
        daemon.waitFor();
        TimeUnit.MILLISECONDS.sleep(ms);
        startDaemon();
      }
    }
    if (!fault.lossless) {
      ledger.troubled(from, Instant.now());
    }
  }

  private JsonNode get(String path) {
    try {
      return Json.mapper()
          .readTree(
              http.send(
                      HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                          .timeout(Duration.ofSeconds(5))
                          .build(),
                      BodyHandlers.ofString())
                  .body());
    } catch (IOException notYet) {
      return null;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return null;
    }
  }

  private boolean report(Duration length, long seed) throws Exception {
    JsonNode mirror = get("/api/v1/mirrors");
    daemon.destroy();
    daemon.waitFor(30, TimeUnit.SECONDS);
    Ledger.Outcome outcome = ledger.compare(folder.resolve("data"));
    long mirrored = influx.number(DATABASE, "SELECT COUNT(temperature_c) FROM coatwright_reading");
    System.out.printf("**%d minutes, seed %d.** ", length.toMinutes(), seed);
    List<String> happened = new ArrayList<>();
    for (Fault fault : Fault.values()) {
      happened.add(fault.name + " " + faults[fault.ordinal()] + " times");
    }
    System.out.println(String.join(", ", happened) + ".\n");
    System.out.println("| | MQTT | serial |\n|---|---|---|");
    row(
        "sent, and taken by the broker or the line",
        outcome.mqtt().sent(),
        outcome.serial().sent());
    row("in the database", outcome.mqtt().kept(), outcome.serial().kept());
    row("twice in the database", outcome.mqtt().doubled(), outcome.serial().doubled());
    row(
        "not there, on the way while something was dead",
        outcome.mqtt().excused(),
        outcome.serial().excused());
    row("**lost**", outcome.mqtt().lost(), outcome.serial().lost());
    long kept = outcome.mqtt().kept() + outcome.serial().kept();
    System.out.printf(
        "%nIn the mirror %d of %d; it says: %s%n%n",
        mirrored, kept, mirror.at("/mirrors/0/says").asText());
    held.print();
    return outcome.fine() && mirrored == kept;
  }

  private static void row(String what, long mqtt, long serial) {
    System.out.printf("| %s | %d | %d |%n", what, mqtt, serial);
  }

  private void stop() {
    daemon.toHandle().destroyForcibly();
    influx.close();
    line.close();
    broker.close();
  }
}
