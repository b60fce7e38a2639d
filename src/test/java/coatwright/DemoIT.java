package coatwright;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.cli.Hall.DemoWish;
import coatwright.climate.RawText;
import coatwright.journal.Coat;
import coatwright.journal.Journal;
import coatwright.journal.LiveJournal;
import coatwright.store.SqliteStore;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demo as a visitor starts it, on free ports, kept for some seconds. */
class DemoIT {
  private static final List<String> SOURCES =
      List.of("finishing-wall", "bench-wall", "rack-board", "wood-probe");

  @TempDir Path folder;

  @Test
  void opensWithAHistoryASessionInProgressAndACloudedBatch() {
    Instant before = Instant.now();
    List<String> said = new ArrayList<>();
    DemoWish wish =
        new DemoWish(OptionalInt.of(0), OptionalInt.of(0), Optional.of(Duration.ofSeconds(25)));
    new Demo(Clock.systemUTC(), said::add).run(Optional.of(folder), wish);

    assertThat(said.get(0)).contains("invented");
    assertThat(said).anyMatch(line -> line.startsWith("Its pages: http://127.0.0.1:"));
    try (SqliteStore store = SqliteStore.openToRead(folder)) {
      Journal journal = new LiveJournal(store.ledger());
      assertThat(journal.pieces()).hasSize(5);
      Coat last = (Coat) journal.coats().get(journal.coats().size() - 1).body();
      assertThat(last.start()).isAfter(before.minus(Duration.ofMinutes(15)));
      assertThat(
              store
                  .readings()
                  .readings("finishing room", before.minus(Duration.ofDays(28)), before)
                  .size())
          .isGreaterThan(10_000);
      // The history stands on whole seconds; what came over the broker was stamped on arrival.
      assertThat(SOURCES)
          .flatExtracting(source -> store.readings().raw(source, 1))
          .extracting(RawText::arrivedAt)
          .anyMatch(
              at ->
                  at.isAfter(before)
                      && !at.equals(at.truncatedTo(java.time.temporal.ChronoUnit.SECONDS)));
    }
  }
}
