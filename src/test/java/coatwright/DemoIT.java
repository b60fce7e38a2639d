package coatwright;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.cli.Hall.DemoWish;
import coatwright.climate.RawText;
import coatwright.climate.Reading;
import coatwright.journal.Coat;
import coatwright.journal.Journal;
import coatwright.journal.LiveJournal;
import coatwright.sensors.Eventually;
import coatwright.store.SqliteStore;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demo as a visitor starts it, on free ports, until its sensors have been heard. */
class DemoIT {
  private static final List<String> SOURCES =
      List.of("finishing-wall", "bench-wall", "rack-board", "wood-probe");

  private static final String PAGES = "Its pages: http://127.0.0.1:";
  private static final Duration LONG_ENOUGH = Duration.ofMinutes(3);

  @TempDir Path folder;

  @Test
  void opensWithAHistoryASessionInProgressAndSensorsThatKeepSpeaking() throws InterruptedException {
    Instant before = Instant.now();
    List<String> said = new CopyOnWriteArrayList<>();
    DemoWish wish = new DemoWish(OptionalInt.of(0), OptionalInt.of(0), Optional.empty());
    Thread demo =
        new Thread(
            () -> new Demo(Clock.systemUTC(), said::add).run(Optional.of(folder), wish), "demo");
    demo.start();
    try {
      Eventually.within(
          LONG_ENOUGH, "pages", () -> said.stream().anyMatch(line -> line.startsWith(PAGES)));
      Eventually.within(LONG_ENOUGH, "a sensor heard live", () -> heardLive(before));
    } finally {
      demo.interrupt();
      demo.join(LONG_ENOUGH.toMillis());
    }

    assertThat(demo.isAlive()).as("stops when told to").isFalse();
    assertThat(said.get(0)).contains("invented");
    try (SqliteStore store = SqliteStore.openToRead(folder)) {
      Journal journal = new LiveJournal(store.ledger());
      assertThat(journal.pieces()).hasSize(5);
      Coat last = (Coat) journal.coats().get(journal.coats().size() - 1).body();
      assertThat(last.start()).isAfter(before.minus(Duration.ofMinutes(15)));
      List<Reading> history =
          store.readings().readings("finishing room", before.minus(Duration.ofDays(28)), before);
      assertThat(history).hasSizeGreaterThan(10_000);
    }
  }

  /** The history stands on whole seconds; what came over the broker was stamped on arrival. */
  private boolean heardLive(Instant before) {
    try (SqliteStore store = SqliteStore.openToRead(folder)) {
      return SOURCES.stream()
          .flatMap(source -> store.readings().raw(source, 1).stream())
          .map(RawText::arrivedAt)
          .anyMatch(at -> at.isAfter(before) && !at.equals(at.truncatedTo(ChronoUnit.SECONDS)));
    }
  }
}
