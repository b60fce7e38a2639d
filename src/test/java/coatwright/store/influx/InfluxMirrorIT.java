package coatwright.store.influx;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.climate.Readings;
import coatwright.journal.Coat;
import coatwright.journal.EntryBody;
import coatwright.journal.Jar;
import coatwright.journal.Ledger;
import coatwright.journal.Method;
import coatwright.journal.Observation;
import coatwright.journal.PartPath;
import coatwright.journal.Strike;
import coatwright.outlook.PredictionLog.Kept;
import coatwright.sensors.Eventually;
import coatwright.store.SqliteStore;
import coatwright.store.influx.MirrorSettings.ReadBack;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A mirror in InfluxDB 1.6, which knows the newer address for writing by a rewriting nginx. */
class InfluxMirrorIT {
  private static final Duration SOON = Duration.ofSeconds(30);
  private static final Instant NOON = Instant.parse("2026-03-14T12:00:00Z");

  @TempDir static Path serverFolder;

  private static TestServer.Influx influx;

  @TempDir Path folder;

  @BeforeAll
  static void startServer() {
    influx = new TestServer.Influx(serverFolder);
  }

  @AfterAll
  static void stopServer() {
    influx.close();
  }

  private static MirrorSettings mirror(String database) {
    influx.createDatabase(database);
    return Fixtures.mirror(database, influx.url());
  }

  private static long readings(String database) {
    return influx.number(database, "SELECT COUNT(temperature_c) FROM coatwright_reading");
  }

  @Test
  void givesBackTheNumbersThatWereMeasured() {
    MirrorSettings settings = mirror("numbers");
    try (SqliteStore store = Fixtures.open(folder, settings);
        Mirror mirror = Fixtures.start(settings, store)) {
      store.readings().append(Readings.air("wall", Fixtures.ROOM, NOON, 20.123_456, 55.5));
      store.readings().append(Readings.air("wall", Fixtures.ROOM, NOON, 20.5, 55.5));
      store.readings().append(Readings.onPart("probe", "bench", "cabinet/door", NOON, -1.25));
      store.readings().flush();
      Eventually.within(SOON, "all is sent", () -> Fixtures.allSent(mirror));

      JsonNode air =
          influx.influxql(
              "numbers",
              "SELECT temperature_c, rh_pct FROM coatwright_reading WHERE shop = 'Quay, no. 1'"
                  + " AND room = 'finishing room' AND source = 'wall'");
      JsonNode rows = air.at("/results/0/series/0/values");
      assertThat(List.of(rows.at("/0/1").asDouble(), rows.at("/1/1").asDouble()))
          .as("two in one millisecond")
          .containsExactlyInAnyOrder(20.123_456, 20.5);
      assertThat(rows.at("/0/2").asDouble()).isEqualTo(55.5);
      assertThat(
              influx
                  .influxql(
                      "numbers",
                      "SELECT surface_temperature_c FROM coatwright_reading"
                          + " WHERE part = 'cabinet/door'")
                  .at("/results/0/series/0/values/0/1")
                  .asDouble())
          .isEqualTo(-1.25);
    }
  }

  @Test
  void everyReadingIsThereOnceThoughTheServerWasKilledAndAwayForAWhile() {
    MirrorSettings settings = mirror("outage");
    try (SqliteStore store = Fixtures.open(folder, settings);
        Mirror mirror = Fixtures.start(settings, store)) {
      Fixtures.readings(store, "wall", NOON, 3_000);
      Eventually.within(SOON, "the first are there", () -> readings("outage") > 0);
      influx.kill();
      Fixtures.readings(store, "wall", NOON.plus(1, ChronoUnit.HOURS), 2_000);
      Eventually.within(SOON, "it waits", () -> mirror.status().trouble().isPresent());
      Fixtures.readings(store, "rack", NOON, 1_000);
      influx.start();
      Eventually.within(SOON, "all is sent", () -> Fixtures.allSent(mirror));

      assertThat(readings("outage")).isEqualTo(6_000);
      assertThat(mirror.status().standing().parked()).isZero();
    }
  }

  @Test
  void aPointOfAnotherTypeIsParkedWithTheReasonAndItsNeighboursAreStored() {
    MirrorSettings settings = mirror("types");
    // Another program got there first: for this one shard of a week, flags are numbers.
    assertThat(
            influx.write("types", "coatwright_reading,source=x flags=1.5 " + NOON.toEpochMilli()))
        .isEqualTo(204);
    try (SqliteStore store = Fixtures.open(folder, settings);
        Mirror mirror = Fixtures.start(settings, store)) {
      for (int i = 0; i < 400; i++) {
        store
            .readings()
            .append(Flagged.reading("wall", NOON.plusSeconds(i), i % 137 == 5 ? "step" : ""));
      }
      store.readings().flush();
      Eventually.within(SOON, "all is sent", () -> Fixtures.allSent(mirror));

      MirrorStatus status = mirror.status();
      assertThat(readings("types")).isEqualTo(397);
      assertThat(status.standing().parked()).isEqualTo(3);
      assertThat(status.standing().sent()).isEqualTo(397);
      assertThat(status.lastRefusal().orElseThrow()).contains("field type conflict");
      assertThat(store.outbox().parked("types", 9))
          .allSatisfy(parked -> assertThat(parked.line()).contains("flags=\"step\""));
    }
  }

  @Test
  void theHistoryIsSentAtTheFirstSetUpAndGoesOnWhereItStopped() {
    try (SqliteStore store = SqliteStore.open(folder, Clock.systemUTC())) {
      Fixtures.readings(store, "wall", NOON, 4_000);
      Fixtures.readings(store, "rack", NOON, 3_000);
      journal(store);
    }
    MirrorSettings settings = mirror("history");
    try (SqliteStore store = Fixtures.open(folder, settings)) {
      try (Mirror mirror = Fixtures.start(settings, store)) {
        Eventually.within(
            SOON, "some of it is there", () -> mirror.status().standing().historySent() > 0);
      }
      long before = store.outbox().standing("history").historySent();
      Fixtures.readings(store, "wall", NOON.plus(2, ChronoUnit.HOURS), 100);
      try (Mirror mirror = Fixtures.start(settings, store)) {
        Eventually.within(SOON, "all is sent", () -> Fixtures.allSent(mirror));

        assertThat(before).isPositive().isLessThanOrEqualTo(7_000);
        assertThat(readings("history")).isEqualTo(7_100);
        assertThat(mirror.status().standing().historySent()).isBetween(7_000L, 7_100L);
        assertThat(influx.number("history", "SELECT SUM(laid) FROM coatwright_coat")).isEqualTo(2);
        assertThat(influx.number("history", "SELECT SUM(struck) FROM coatwright_coat")).isOne();
        assertThat(influx.number("history", "SELECT grade FROM coatwright_note")).isEqualTo(3);
        assertThat(influx.number("history", "SELECT COUNT(p50_at_s) FROM coatwright_outlook"))
            .isOne();
      }
    }
  }

  @Test
  void aProgramKilledInTheMiddleOfSendingLosesAndDoublesNothing() throws Exception {
    MirrorSettings settings = mirror("killed");
    for (int kill = 0; kill < 2; kill++) {
      runAndKill(settings, kill, 1_500 + 700 * kill);
    }
    try (SqliteStore store = Fixtures.open(folder, settings);
        Mirror mirror = Fixtures.start(settings, store)) {
      Eventually.within(SOON, "all is sent", () -> Fixtures.allSent(mirror));

      long kept = store.readings().readings(Fixtures.ROOM, Instant.EPOCH, Instant.MAX).size();
      assertThat(kept).isGreaterThan(3_000);
      assertThat(readings("killed")).isEqualTo(kept);
      assertThat(store.damage()).isEmpty();
    }
  }

  private void runAndKill(MirrorSettings settings, int run, int afterSending)
      throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                Courier.class.getName(),
                folder.toString(),
                settings.name(),
                settings.url(),
                Integer.toString(run))
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    try (BufferedReader said = process.inputReader(StandardCharsets.UTF_8)) {
      for (String line = said.readLine(); line != null; line = said.readLine()) {
        if (line.matches("sent \\d+") && Long.parseLong(line.substring(5)) >= afterSending) {
          process.toHandle().destroyForcibly();
        }
      }
    }
    process.waitFor();
    assertThat(process.exitValue()).as("killed, not ended").isEqualTo(128 + 9);
  }

  @Test
  void whatTheServerLostIsFoundByItsCountAndSentAgain() {
    influx.createDatabase("counted");
    MirrorSettings settings = Fixtures.mirror("counted", influx.url(), ReadBack.INFLUXQL);
    Instant yesterday = Instant.now().truncatedTo(ChronoUnit.DAYS).minus(12, ChronoUnit.HOURS);
    try (SqliteStore store = Fixtures.open(folder, settings);
        Mirror mirror = Fixtures.start(settings, store)) {
      Fixtures.readings(store, "wall", yesterday, 1_000);
      Eventually.within(SOON, "all is sent", () -> Fixtures.allSent(mirror));
      influx.influxql("counted", "DROP SERIES FROM coatwright_reading");
      Eventually.within(SOON, "it is there again", () -> readings("counted") == 1_000);

      assertThat(mirror.status().countTrouble()).isEmpty();
    }
  }

  @Test
  void theManualsQueryAnswers() throws IOException {
    MirrorSettings settings = mirror("manual");
    try (SqliteStore store = Fixtures.open(folder, settings);
        Mirror mirror = Fixtures.start(settings, store)) {
      Instant hour = Instant.now().truncatedTo(ChronoUnit.HOURS).minus(2, ChronoUnit.HOURS);
      for (int minute = 0; minute < 60; minute++) {
        Instant at = hour.plus(minute, ChronoUnit.MINUTES);
        store.readings().append(Readings.air("wall", Fixtures.ROOM, at, 20, 40 + minute));
      }
      store.readings().flush();
      Eventually.within(SOON, "all is sent", () -> Fixtures.allSent(mirror));

      JsonNode answer = influx.influxql("manual", Manual.query("influxql"));

      assertThat(answer.at("/results/0/series/0/tags/room").asText()).isEqualTo(Fixtures.ROOM);
      assertThat(answer.at("/results/0/series/0/values/0/1").asDouble()).isEqualTo(69.5);
    }
  }

  /** Two coats, one of them struck, a note and a date. */
  private static void journal(SqliteStore store) {
    PartPath door = PartPath.parse("cabinet/door");
    append(
        store,
        new Jar(
            "J1",
            "shellac-pale",
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty()));
    for (int i = 0; i < 2; i++) {
      append(
          store,
          new Coat(
              door,
              "J1",
              "e1",
              NOON,
              Optional.empty(),
              Fixtures.ROOM,
              Method.BRUSH,
              OptionalDouble.of(75),
              OptionalDouble.empty(),
              Optional.empty()));
    }
    append(store, new Strike("e2", "twice"));
    append(
        store,
        new Observation(
            door,
            Optional.of("e3"),
            Observation.What.CLOUDED,
            OptionalInt.of(3),
            Optional.empty(),
            Optional.empty()));
    store
        .predictions()
        .keep(
            new Kept(
                "cabinet/door",
                "rub out",
                NOON,
                Optional.empty(),
                Optional.of(NOON.plusSeconds(3600)),
                Optional.empty(),
                Optional.empty(),
                "first"));
  }

  private static void append(SqliteStore store, EntryBody body) {
    store
        .ledger()
        .append(List.of(new Ledger.Line(NOON, NOON.plusSeconds(60), Optional.empty(), body)));
  }
}
