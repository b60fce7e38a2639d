package coatwright.demo;

import coatwright.demo.InventedSensor.Kind;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;

/** The invented shop: its settings, its sensors' payloads and its people's entries. */
public final class InventedShop {
  /** What every page and the console say of it. */
  public static final String BANNER =
      "An invented shop: its air, its sensors and its people are made up; nothing here is"
          + " measured.";

  /** Nothing in the demo depends on chance: this decides all of it. */
  public static final long SEED = 19_411_125L;

  /** How far back its history goes. */
  public static final Duration HISTORY = Duration.ofDays(28);

  private static final Duration EVERY_MINUTE = Duration.ofHours(6);
  private static final Duration AROUND_FOG = Duration.ofHours(12);
  private static final Duration WARMED_BEFORE = Duration.ofHours(6);

  private static final List<String> FILES =
      List.of(
          "coatwright.yaml",
          "sources/finishing-wall.yaml",
          "sources/bench-wall.yaml",
          "sources/rack-board.yaml",
          "sources/wood-probe.yaml");

  private static final List<InventedSensor> SENSORS =
      List.of(
          new InventedSensor(
              "finishing-wall",
              "invented/finishing-room/wall",
              Kind.JSON,
              InventedAir.Moment::finishing),
          new InventedSensor(
              "bench-wall", "invented/bench-room/wall", Kind.JSON, InventedAir.Moment::bench),
          new InventedSensor(
              "rack-board",
              "invented/finishing-room/rack",
              Kind.LINE,
              InventedAir.Moment::finishing),
          new InventedSensor(
              "wood-probe",
              "invented/finishing-room/probe",
              Kind.WOOD,
              InventedAir.Moment::finishing));

  private final Instant now;
  private final Instant fogFrom;
  private final InventedAir air;
  private final InventedJournal journal;

  /**
   * The shop as it stands at that instant.
   *
   * @param zone the zone its people live by
   */
  public InventedShop(Instant now, ZoneId zone) {
    this.now = now.truncatedTo(ChronoUnit.MINUTES);
    this.fogFrom = InventedJournal.fogFrom(now, zone);
    this.air =
        new InventedAir(
            SEED,
            start().minus(Duration.ofDays(1)),
            zone,
            this.now.minus(WARMED_BEFORE),
            fogFrom,
            fogFrom.plus(Duration.ofHours(6)));
    this.journal = new InventedJournal(this.now, zone);
  }

  /**
   * One payload as it came.
   *
   * @param source the mapping that reads it
   */
  public record Payload(Instant at, String source, String topic, String text) {}

  /** Where the history begins. */
  public Instant start() {
    return now.minus(HISTORY);
  }

  /** Every payload of [from, to), sensor after sensor, oldest first. */
  public void payloads(Instant from, Instant to, Consumer<Payload> taker) {
    Instant at = from.truncatedTo(ChronoUnit.MINUTES);
    for (; at.isBefore(to); at = at.plus(between(at))) {
      for (int i = 0; i < SENSORS.size(); i++) {
        // Sensors do not speak in chorus.
        Instant turn = at.plusSeconds(7L * i);
        if (turn.isBefore(to)) {
          taker.accept(payload(SENSORS.get(i), turn));
        }
      }
    }
  }

  /**
   * A minute apart for the last hours and the whole day of fog. Before that the sensors were set to
   * speak every twelve minutes, so that weeks of history are written in moments.
   */
  private Duration between(Instant at) {
    boolean recent = at.isAfter(now.minus(EVERY_MINUTE));
    boolean fog = at.isAfter(fogFrom.minus(AROUND_FOG)) && at.isBefore(fogFrom.plus(AROUND_FOG));
    return recent || fog ? Duration.ofMinutes(1) : Duration.ofMinutes(12);
  }

  /** What the sensors say at an instant, all of them. */
  public List<Payload> payloads(Instant at) {
    return SENSORS.stream().map(sensor -> payload(sensor, at)).toList();
  }

  /**
   * A sensor that can be let speak.
   *
   * @param text what it says at an instant
   */
  public record Voice(String source, String topic, Function<Instant, String> text) {}

  /** The sensors, to be let speak. */
  public List<Voice> voices() {
    return SENSORS.stream()
        .map(sensor -> new Voice(sensor.source(), sensor.topic(), at -> sensor.payload(air, at)))
        .toList();
  }

  private Payload payload(InventedSensor sensor, Instant at) {
    return new Payload(at, sensor.source(), sensor.topic(), sensor.payload(air, at));
  }

  /** The people's forms, oldest first. */
  public List<InventedEntry> entries() {
    return journal.entries();
  }

  /**
   * Writes the shop's settings into a folder, as a person would have.
   *
   * @return its {@code coatwright.yaml}
   */
  public static Path writeSettings(Path folder) throws IOException {
    for (String file : FILES) {
      Path target = folder.resolve(file);
      Files.createDirectories(java.util.Objects.requireNonNull(target.getParent()));
      try (InputStream in = InventedShop.class.getResourceAsStream("/demo/" + file)) {
        if (in == null) {
          throw new IllegalStateException("the program lacks its own file /demo/" + file);
        }
        Files.writeString(
            target, new String(in.readAllBytes(), StandardCharsets.UTF_8), StandardCharsets.UTF_8);
      }
    }
    return folder.resolve("coatwright.yaml");
  }
}
