package coatwright.store.influx;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.climate.Readings;
import coatwright.sensors.Eventually;
import coatwright.store.SqliteStore;
import coatwright.store.influx.MirrorSettings.ReadBack;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A mirror in VictoriaMetrics, which says that it has things it may yet lose or never took. */
class VictoriaMirrorIT {
  private static final Duration SOON = Duration.ofSeconds(40);
  private final Instant yesterday =
      Instant.now().truncatedTo(ChronoUnit.DAYS).minus(12, ChronoUnit.HOURS);

  @TempDir static Path serverFolder;

  private static TestServer.Victoria server;

  @TempDir Path folder;

  @BeforeAll
  static void startServer() {
    server = new TestServer.Victoria(serverFolder, "1");
  }

  @AfterAll
  static void stopServer() {
    server.close();
  }

  private static long readings(String source, Instant from) {
    server.settle();
    return server.number(
        "sum(count_over_time(coatwright_reading_temperature_c{source=\"%s\"}[1d]))"
            .formatted(source),
        from.plus(1, ChronoUnit.DAYS).getEpochSecond());
  }

  @Test
  void everyReadingIsThereOnceThoughTheServerWasKilledWithSomeItHadAcknowledged() {
    MirrorSettings settings = Fixtures.mirror("lost", server.url(), ReadBack.PROMQL);
    try (SqliteStore store = Fixtures.open(folder, settings);
        Mirror mirror = Fixtures.start(settings, store)) {
      Fixtures.readings(store, "lossy", yesterday, 3_000);
      Eventually.within(SOON, "all is sent", () -> Fixtures.allSent(mirror));
      server.kill();
      Fixtures.readings(store, "lossy", yesterday.plus(1, ChronoUnit.HOURS), 500);
      server.start();
      Eventually.within(
          SOON, "all is there", () -> readings("lossy", yesterday.minusSeconds(1)) == 3_500);

      assertThat(mirror.status().standing().parked()).isZero();
    }
  }

  @Test
  void saysThatTheServerDoesNotHaveWhatItDroppedWithoutAWord() {
    Instant longAgo = yesterday.minus(200, ChronoUnit.DAYS);
    MirrorSettings settings = Fixtures.mirror("old", server.url(), ReadBack.PROMQL);
    try (SqliteStore store = SqliteStore.open(folder, Clock.systemUTC())) {
      Fixtures.readings(store, "aged", longAgo, 10);
    }
    try (SqliteStore store = Fixtures.open(folder, settings);
        Mirror mirror = start(settings, store)) {
      Eventually.within(SOON, "it is told", () -> mirror.status().countTrouble().isPresent());

      assertThat(mirror.status().standing().sent()).as("it said that it took them").isEqualTo(10);
      assertThat(mirror.status().alarm()).isTrue();
      assertThat(mirror.status().sentence())
          .contains("the server still lacks 20 values after they were sent again");
    }
  }

  /** Its own shop, so that its count is its own. */
  private static Mirror start(MirrorSettings settings, SqliteStore store) {
    Mirror mirror =
        new Mirror(settings, store.outbox(), "old shop", Clock.systemUTC(), Fixtures.BRISK);
    mirror.start();
    return mirror;
  }

  @Test
  void theManualsQueryAnswers() throws IOException {
    MirrorSettings settings = Fixtures.mirror("manual", server.url());
    Instant begin = yesterday.truncatedTo(ChronoUnit.HOURS);
    try (SqliteStore store = Fixtures.open(folder, settings);
        Mirror mirror =
            new Mirror(settings, store.outbox(), "manual", Clock.systemUTC(), Fixtures.BRISK)) {
      mirror.start();
      for (int minute = 0; minute < 60; minute++) {
        Instant at = begin.plus(minute, ChronoUnit.MINUTES);
        store.readings().append(Readings.air("door", "bench", at, 20, 40 + minute));
      }
      store.readings().flush();
      Eventually.within(SOON, "all is sent", () -> Fixtures.allSent(mirror));
      server.settle();

      JsonNode answer =
          server.promql(
              Manual.query("promql"), begin.plus(59, ChronoUnit.MINUTES).getEpochSecond());

      JsonNode bench =
          StreamSupport.stream(answer.at("/data/result").spliterator(), false)
              .filter(series -> series.at("/metric/room").asText().equals("bench"))
              .findFirst()
              .orElseThrow();
      assertThat(bench.at("/value/1").asDouble()).isEqualTo(69.5);
    }
  }
}
