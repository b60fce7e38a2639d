package coatwright.store;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.climate.Readings;
import coatwright.journal.Entry;
import coatwright.journal.Ledger;
import coatwright.journal.Piece;
import coatwright.journal.Strike;
import coatwright.outlook.PredictionLog.Kept;
import coatwright.store.Outbox.Batch;
import coatwright.store.Outbox.Parked;
import coatwright.store.Outbox.Stream;
import coatwright.store.Outbox.Wish;
import coatwright.store.Outgoing.OfEntry;
import coatwright.store.Outgoing.OfPrediction;
import coatwright.store.Outgoing.OfReading;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutboxTest {
  private static final Instant NOON = Instant.parse("2026-03-14T12:00:00Z");
  private static final Clock CLOCK = Clock.fixed(NOON, ZoneOffset.UTC);
  private static final Wish HOUSE = new Wish("house", "here", EnumSet.allOf(Stream.class));
  private static final Wish BARN = new Wish("barn", "there", Set.of(Stream.READINGS));

  @TempDir Path folder;

  @Test
  void writesNoKeysWhileThereIsNoMirror() {
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      read(store, "wall", 0, 20);

      assertThat(keys(store)).isZero();
    }
  }

  @Test
  void givesReadingsInTheOrderOfTheirCommitHoweverLateTheyAre() {
    try (SqliteStore store = open(HOUSE)) {
      read(store, "wall", 100, 21);
      read(store, "rack", 50, 22);
      read(store, "wall", 40, 23);
      Batch first = store.outbox().next("house", Stream.READINGS, 2);
      advance(store, Stream.READINGS, first);
      Batch second = store.outbox().next("house", Stream.READINGS, 2);

      assertThat(first.things().get(0))
          .isEqualTo(new OfReading(Readings.air("wall", "bench", NOON.plusMillis(100), 21, 50), 0));
      assertThat(temperatures(first)).containsExactly(21.0, 22.0);
      assertThat(temperatures(second)).containsExactly(23.0);
    }
  }

  @Test
  void writesNoKeyForAReadingThatStandsAlreadyAndTellsApartTwoOfOneMillisecond() {
    try (SqliteStore store = open(HOUSE)) {
      read(store, "wall", 0, 20);
      read(store, "wall", 0, 20);
      read(store, "wall", 0, 21);
      Batch batch = store.outbox().next("house", Stream.READINGS, 9);

      assertThat(batch.things())
          .extracting(thing -> ((OfReading) thing).nth())
          .containsExactly(0L, 1L);
    }
  }

  @Test
  void keepsAKeyUntilEveryMirrorHasPassedIt() {
    try (SqliteStore store = open(HOUSE, BARN)) {
      read(store, "wall", 0, 20);
      advance(store, Stream.READINGS, store.outbox().next("house", Stream.READINGS, 9));
      long whileOneWaits = keys(store);
      store
          .outbox()
          .advance(
              "barn",
              Stream.READINGS,
              store.outbox().next("barn", Stream.READINGS, 9),
              1,
              0,
              List.of(),
              NOON);

      assertThat(whileOneWaits).isEqualTo(1);
      assertThat(keys(store)).isZero();
    }
  }

  @Test
  void goesOnAfterANewStartAlthoughNoKeyIsLeft() {
    try (SqliteStore store = open(HOUSE)) {
      read(store, "wall", 0, 20);
      advance(store, Stream.READINGS, store.outbox().next("house", Stream.READINGS, 9));
    }
    try (SqliteStore store = open(HOUSE)) {
      assertThat(store.outbox().standing("house").waiting()).isZero();
      read(store, "wall", 1, 24);

      assertThat(temperatures(store.outbox().next("house", Stream.READINGS, 9)))
          .containsExactly(24.0);
    }
  }

  @Test
  void walksTheWholeHistoryBatchByBatch() {
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      for (int i = 0; i < 25; i++) {
        read(store, i % 2 == 0 ? "wall" : "rack", i, i);
      }
    }
    List<Double> seen = new ArrayList<>();
    try (SqliteStore store = open(HOUSE)) {
      for (Batch batch = history(store); batch.rows() > 0; batch = history(store)) {
        seen.addAll(temperatures(batch));
        advance(store, Stream.HISTORY, batch);
      }
      Outbox.Standing standing = store.outbox().standing("house");
      store.outbox().endHistory("house");

      assertThat(seen).hasSize(25).doesNotHaveDuplicates();
      assertThat(standing.historySent()).isEqualTo(25);
      assertThat(standing.historyTotal()).isEqualTo(25);
      assertThat(store.outbox().standing("house").historyLeft()).isFalse();
    }
    try (SqliteStore store = open(HOUSE)) {
      assertThat(store.outbox().standing("house").historyLeft()).as("not again").isFalse();
    }
  }

  private static Batch history(SqliteStore store) {
    return store.outbox().next("house", Stream.HISTORY, 7);
  }

  @Test
  void beginsAnewWhereTheTargetMovedOrTheMirrorWasLeftOutForARun() {
    try (SqliteStore store = open(HOUSE)) {
      read(store, "wall", 0, 20);
      advance(store, Stream.READINGS, store.outbox().next("house", Stream.READINGS, 9));
      store
          .ledger()
          .append(List.of(new Ledger.Line(NOON, NOON, Optional.empty(), piece("cabinet"))));
      advance(store, Stream.COATS, store.outbox().next("house", Stream.COATS, 9));
      assertThat(store.outbox().standing("house").waiting()).isZero();
    }
    try (SqliteStore store = open(new Wish("house", "elsewhere", HOUSE.streams()))) {
      assertThat(store.outbox().standing("house").historyLeft()).isTrue();
      assertThat(store.outbox().standing("house").waiting()).as("the entry").isEqualTo(1);
      store.outbox().endHistory("house");
    }
    SqliteStore.open(folder, CLOCK).close();
    try (SqliteStore store = open(new Wish("house", "elsewhere", HOUSE.streams()))) {
      assertThat(store.outbox().standing("house").historyLeft()).isTrue();
    }
  }

  @Test
  void leavesTheHistoryOutWhereNobodyWantsIt() {
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      read(store, "wall", 0, 20);
    }
    try (SqliteStore store = open(BARN)) {
      assertThat(store.outbox().standing("barn").historyLeft()).isFalse();
      assertThat(store.outbox().standing("barn").waiting()).isZero();
    }
  }

  @Test
  void givesAStrikeTogetherWithWhatItStrikes() {
    try (SqliteStore store = open(HOUSE)) {
      store
          .ledger()
          .append(
              List.of(
                  new Ledger.Line(NOON, NOON, Optional.empty(), piece("cabinet")),
                  new Ledger.Line(NOON, NOON, Optional.empty(), new Strike("e1", "twice")),
                  new Ledger.Line(NOON, NOON, Optional.empty(), new Strike("e0", "gone"))));
      Batch batch = store.outbox().next("house", Stream.COATS, 9);

      assertThat(batch.things())
          .extracting(thing -> ((OfEntry) thing).struck().map(Entry::id))
          .containsExactly(Optional.empty(), Optional.of("e1"), Optional.empty());
    }
  }

  @Test
  void tellsApartDatesThatMovedInOneMillisecond() {
    try (SqliteStore store = open(HOUSE)) {
      for (Instant at : List.of(NOON, NOON.plusNanos(400), NOON.plusMillis(1))) {
        store
            .predictions()
            .keep(
                new Kept(
                    "cabinet/door",
                    "rub out",
                    at,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    "x"));
      }

      assertThat(store.outbox().next("house", Stream.OUTLOOKS, 9).things())
          .extracting(thing -> ((OfPrediction) thing).nth())
          .containsExactly(0L, 1L, 0L);
    }
  }

  @Test
  void keepsRefusedPointsWithTheirReasonUntilTheyAreTakenAway() {
    try (SqliteStore store = open(HOUSE)) {
      read(store, "wall", 0, 20);
      Batch batch = store.outbox().next("house", Stream.READINGS, 9);
      List<Parked> refused = List.of(new Parked(0, "a line", "no"), new Parked(0, "more", "no"));
      store.outbox().advance("house", Stream.READINGS, batch, 0, 3, refused, NOON);
      Outbox.Standing standing = store.outbox().standing("house");
      store.outbox().unpark("house", List.of(store.outbox().parked("house", 9).get(0)));

      assertThat(standing.parked()).isEqualTo(2);
      assertThat(standing.tooOld()).isEqualTo(3);
      assertThat(store.outbox().parked("house", 9))
          .extracting(Parked::line)
          .containsExactly("a line");
      store.outbox().unparkBefore("house", NOON.plusMillis(1));
      assertThat(store.outbox().parked("house", 9)).isEmpty();
    }
  }

  @Test
  void isPutBackToTheHistoryWhenTooMuchWaits() {
    try (SqliteStore store = open(HOUSE)) {
      for (int i = 0; i < 6; i++) {
        read(store, "wall", i, i);
      }

      assertThat(store.outbox().bound("house", 6)).isFalse();
      assertThat(store.outbox().bound("house", 5)).isTrue();
      assertThat(store.outbox().standing("house").waiting()).isZero();
      assertThat(store.outbox().standing("house").historyLeft()).isTrue();
      assertThat(keys(store)).isZero();
      assertThat(history(store).rows()).isEqualTo(6);
    }
  }

  private SqliteStore open(Wish... mirrors) {
    return SqliteStore.open(folder, CLOCK, List.of(mirrors));
  }

  private static Piece piece(String name) {
    return new Piece(name, Optional.empty(), Optional.empty());
  }

  private static void read(SqliteStore store, String source, long atMs, double tempC) {
    store.readings().append(Readings.air(source, "bench", NOON.plusMillis(atMs), tempC, 50));
    store.readings().flush();
  }

  private static void advance(SqliteStore store, Stream stream, Batch batch) {
    store.outbox().advance("house", stream, batch, batch.things().size(), 0, List.of(), NOON);
  }

  private static List<Double> temperatures(Batch batch) {
    return batch.things().stream()
        .map(thing -> ((OfReading) thing).reading().temperatureC().orElseThrow())
        .toList();
  }

  private static long keys(SqliteStore store) {
    return store
        .database()
        .read(
            "counting keys",
            handle -> handle.select("select count(*) from outbox").mapTo(Long.class).one());
  }
}
