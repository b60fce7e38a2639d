package coatwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.climate.RawText;
import coatwright.climate.Reading;
import coatwright.climate.Readings;
import coatwright.climate.RollUp;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.EntryBody;
import coatwright.journal.Jar;
import coatwright.journal.Ledger;
import coatwright.journal.Method;
import coatwright.journal.Observation;
import coatwright.journal.Part;
import coatwright.journal.PartPath;
import coatwright.journal.Piece;
import coatwright.journal.SaltCheck;
import coatwright.journal.Strike;
import coatwright.outlook.PredictionLog;
import coatwright.watch.Warning;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.flywaydb.core.api.MigrationVersion;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SqliteStoreTest {
  private static final Instant NOON = Instant.parse("2026-03-14T12:00:00Z");
  private static final Clock CLOCK = Clock.fixed(NOON, ZoneOffset.UTC);
  private static final String BENCH = "bench room";

  @TempDir Path folder;

  @Test
  void givesEveryKindOfEntryBackAsItWas() {
    PartPath door = PartPath.parse("cabinet/left-door/front");
    List<EntryBody> bodies =
        List.of(
            new Piece("cabinet", Optional.of(BENCH), Optional.of(LocalDate.of(2026, 5, 1))),
            new Part(door, OptionalDouble.of(0.4), OptionalDouble.of(19), Optional.of("cherry")),
            new Part(
                PartPath.parse("cabinet/back"),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty()),
            new Jar(
                "J1",
                "shellac-pale",
                OptionalDouble.of(239.65),
                OptionalDouble.of(95),
                Optional.of(LocalDate.of(2026, 3, 1)),
                Optional.of("2-butoxyethanol:3%")),
            new Jar(
                "J2",
                "shellac-pale",
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty()),
            new Coat(
                door,
                "J1",
                "e4",
                NOON.plusNanos(123_456_789),
                Optional.of(NOON.plusSeconds(300)),
                BENCH,
                Method.PAD,
                OptionalDouble.of(75),
                OptionalDouble.of(18.25),
                Optional.of("Ümit, \"the new one\"")),
            new Observation(
                door,
                Optional.of("e6"),
                Observation.What.CLOUDED,
                OptionalInt.of(3),
                Optional.empty(),
                Optional.of("at the edge\nonly")),
            new Observation(
                door,
                Optional.empty(),
                Observation.What.RUBBED_OUT,
                OptionalInt.empty(),
                Optional.of(false),
                Optional.empty()),
            new SaltCheck(
                "wall", "wall", SaltCheck.Step.BEGIN, Optional.empty(), Optional.of("the big box")),
            new SaltCheck(
                "wall",
                "wall",
                SaltCheck.Step.READ,
                Optional.of(
                    new SaltCheck.Point("NaCl", 20, 20.5, 73.2, 71.5, 72, OptionalDouble.of(0.1))),
                Optional.empty()),
            new Strike("e5", "wrong jar"));
    List<Entry> written = new ArrayList<>();
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      for (EntryBody body : bodies) {
        written.addAll(store.ledger().append(List.of(line(body))));
      }
      assertThat(store.ledger().entries()).isEqualTo(written);
    }
    try (SqliteStore reopened = SqliteStore.open(folder, CLOCK)) {
      assertThat(reopened.ledger().entries()).isEqualTo(written);
      assertThat(written).extracting(Entry::id).startsWith("e1", "e2").endsWith("e11");
    }
  }

  @Test
  void refusesToAlterOrDeleteAnEntryWhoeverAsks() {
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      store.ledger().append(List.of(line(new Strike("e0", "x"))));
      assertThatThrownBy(
              () ->
                  store
                      .database()
                      .writeDurably("altering", h -> h.execute("update entry set who = 'me'")))
          .hasStackTraceContaining("an entry is never altered");
      assertThatThrownBy(
              () -> store.database().writeDurably("deleting", h -> h.execute("delete from entry")))
          .hasStackTraceContaining("an entry is never deleted");
    }
  }

  @Test
  void givesReadingsBackInOrderOfTimeWithNothingOverwritten() {
    Reading late = Readings.air("wall", BENCH, NOON, 20.12, 50.5);
    Reading early = Readings.air("wall", BENCH, NOON.minusSeconds(60), 19.87, 51.25);
    Reading sameMoment = Readings.air("wall", BENCH, NOON, 21, 49);
    Reading probe = Readings.onPart("probe", BENCH, "cabinet/back", NOON.minusSeconds(30), 17.5);
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      for (Reading reading : List.of(late, early, sameMoment, late, probe)) {
        store.readings().append(reading);
      }
      store.readings().flush();
      List<Reading> expected = List.of(early, probe, late, sameMoment);
      assertThat(store.readings().readings(BENCH, NOON.minusSeconds(60), NOON.plusSeconds(1)))
          .as("a redelivered reading is stored once")
          .isEqualTo(expected);
      assertThat(store.readings().readings("attic", Instant.EPOCH, NOON)).isEmpty();
    }
    try (SqliteStore reopened = SqliteStore.open(folder, CLOCK)) {
      assertThat(reopened.readings().readings(BENCH, Instant.EPOCH, NOON.plusSeconds(1)))
          .hasSize(4);
      reopened.readings().append(late);
      reopened.readings().flush();
      assertThat(reopened.readings().readings(BENCH, Instant.EPOCH, NOON.plusSeconds(1)))
          .hasSize(4);
    }
  }

  @Test
  void keepsTheNumberAsItWasSentBesideTheCorrectedOne() {
    Reading plain = Readings.air("wall", BENCH, NOON.minusSeconds(60), 20, 50);
    Reading corrected =
        new Reading(
            "wall",
            "wall",
            plain.role(),
            plain.room(),
            plain.part(),
            NOON,
            OptionalDouble.of(20.5),
            OptionalDouble.of(52.25),
            OptionalDouble.empty(),
            0.3,
            2,
            List.of("corrected"),
            Optional.of(
                new Reading.Sent(
                    OptionalDouble.empty(), OptionalDouble.of(48.75), OptionalDouble.empty())));
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      store.readings().append(corrected);
      store.readings().append(plain);
      store.readings().append(Readings.air("rack", BENCH, NOON, 21, 47));
      store.readings().flush();

      assertThat(store.readings().readingsOf("wall", NOON.minusSeconds(600), NOON.plusSeconds(1)))
          .containsExactly(plain, corrected);
      assertThat(store.readings().heardSince("wall")).contains(NOON.minusSeconds(60));
      assertThat(store.readings().heardSince("nobody")).isEmpty();
    }
  }

  @Test
  void commitsReadingsWithinASecondWithoutBeingAsked() throws Exception {
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      long before = System.nanoTime();
      store.readings().append(Readings.air("wall", BENCH, NOON, 20, 50));
      while (store.readings().readings(BENCH, NOON, NOON.plusSeconds(1)).isEmpty()) {
        assertThat(Duration.ofNanos(System.nanoTime() - before)).isLessThan(Duration.ofSeconds(5));
        Thread.onSpinWait();
      }
      assertThat(Duration.ofNanos(System.nanoTime() - before)).isLessThan(Duration.ofSeconds(2));
    }
  }

  @Test
  void keepsRollUpsThatAgreeWithTheReadings() {
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < 300; i++) {
      readings.add(
          Readings.air(
              "wall", BENCH, NOON.plusSeconds(60L * i), 20 + Math.sin(i / 30.0), 50 + i % 7));
    }
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      readings.forEach(store.readings()::append);
      store.readings().flush();
      for (Duration every :
          List.of(
              Duration.ofMinutes(10),
              Duration.ofHours(1),
              Duration.ofHours(2),
              Duration.ofMinutes(3))) {
        List<RollUp> kept =
            store.readings().rollUps(BENCH, NOON, NOON.plusSeconds(60 * 300), every);
        List<RollUp> computed = RollUp.of(readings, every);
        assertThat(kept).hasSameSizeAs(computed);
        for (int i = 0; i < kept.size(); i++) {
          assertThat(kept.get(i).from()).isEqualTo(computed.get(i).from());
          assertThat(kept.get(i).quantity()).isEqualTo(computed.get(i).quantity());
          assertThat(kept.get(i).count()).isEqualTo(computed.get(i).count());
          assertThat(kept.get(i).mean()).isCloseTo(computed.get(i).mean(), within(1e-3));
          assertThat(kept.get(i).min()).isCloseTo(computed.get(i).min(), within(1e-3));
          assertThat(kept.get(i).max()).isCloseTo(computed.get(i).max(), within(1e-3));
        }
      }
    }
  }

  @Test
  void leavesNoRollUpWhereNothingWasRead() {
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      store.readings().append(Readings.air("wall", BENCH, NOON, 20, 50));
      store.readings().append(Readings.air("wall", BENCH, NOON.plus(Duration.ofHours(5)), 20, 50));
      store.readings().flush();
      assertThat(
              store
                  .readings()
                  .rollUps(BENCH, NOON, NOON.plus(Duration.ofHours(9)), Duration.ofHours(1))
                  .stream()
                  .map(RollUp::from)
                  .distinct())
          .containsExactly(NOON, NOON.plus(Duration.ofHours(5)));
    }
  }

  @Test
  void averagesTwoSensorsInVapourPressureNotInHumidity() {
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      // The same air told by a warm and a cool sensor: 11.2 and 11.3 hPa by the WMO Magnus formula.
      store.readings().append(Readings.air("warm", BENCH, NOON, 27.3, 31));
      store.readings().append(Readings.air("cool", BENCH, NOON, 22.3, 42));
      store.readings().flush();
      List<RollUp> rows =
          store.readings().rollUps(BENCH, NOON, NOON.plusSeconds(3600), Duration.ofHours(1));
      RollUp humidity =
          rows.stream().filter(row -> row.quantity().equals("rhPct")).findFirst().orElseThrow();
      RollUp vapour =
          rows.stream()
              .filter(row -> row.quantity().equals("vapourPressurePa"))
              .findFirst()
              .orElseThrow();
      assertThat(vapour.mean()).isCloseTo(1128, within(6.0));
      // 1128 Pa at 24.8 °C, where saturation is 3130 Pa; the mean of the humidities would be 36.5.
      assertThat(humidity.mean()).isCloseTo(36.0, within(0.15));
      assertThat(humidity.count()).isEqualTo(2);
    }
  }

  @Test
  void keepsEveryRefusedPayloadAndTheLastThousandAccepted() {
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      for (int i = 0; i < 2500; i++) {
        String verdict = i % 5 == 0 ? "refused" : "accepted";
        store.readings().keep(raw("wall", i, verdict));
        store.readings().keep(raw("other", i, "heldBack"));
      }
      store.readings().flush();
      List<RawText> kept = store.readings().raw("wall", 10_000);
      assertThat(kept.stream().filter(one -> one.verdict().equals("refused"))).hasSize(500);
      assertThat(kept.stream().filter(one -> one.verdict().equals("accepted")).count())
          .isBetween(799L, 1000L);
      assertThat(kept.get(0).text()).isEqualTo("{\"n\":2499}");
      assertThat(store.readings().raw("other", 10_000)).hasSize(2500);
      assertThat(store.readings().raw("wall", 3)).hasSize(3);
    }
  }

  @Test
  void remembersWarningsAndTheirEndOverARestart() {
    Warning begun =
        new Warning(
            "w1",
            "clouding",
            NOON,
            Optional.empty(),
            Optional.of(BENCH),
            Optional.empty(),
            "bench room: the film would cloud");
    Warning ended =
        new Warning(
            "w1",
            "clouding",
            NOON,
            Optional.of(NOON.plusSeconds(600)),
            Optional.of(BENCH),
            Optional.empty(),
            begun.message());
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      store.warnings().keep(begun);
    }
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      assertThat(store.warnings().open()).containsExactly(begun);
      store.warnings().keep(ended);
      assertThat(store.warnings().open()).isEmpty();
      assertThat(store.warnings().between(NOON.plusSeconds(300), NOON.plusSeconds(900)))
          .containsExactly(ended);
      assertThat(store.warnings().between(NOON.plusSeconds(600), NOON.plusSeconds(900))).isEmpty();
      assertThat(store.warnings().between(Instant.MIN, Instant.MAX)).hasSize(1);
    }
  }

  @Test
  void keepsPredictionsWithWhatTheyWereAndWhy() {
    PredictionLog.Kept kept =
        new PredictionLog.Kept(
            "cabinet/back",
            "rub out",
            NOON,
            Optional.empty(),
            Optional.of(NOON.plusSeconds(5)),
            Optional.empty(),
            Optional.of(NOON),
            "two cold nights");
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      store.predictions().keep(kept);
      store.predictions().keep(kept);
      assertThat(store.predictions().history("cabinet/back", "rub out"))
          .containsExactly(kept, kept);
      assertThat(store.predictions().history("cabinet/back", "wrap")).isEmpty();
    }
  }

  @Test
  void letsOneProgramHoldTheFolder() {
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      assertThatThrownBy(() -> SqliteStore.open(folder, CLOCK))
          .isInstanceOf(StoreTrouble.class)
          .hasMessageContaining("another Coatwright holds this data folder")
          .hasMessageContaining("stop that one");
      assertThat(store.file()).exists();
    }
    SqliteStore.open(folder, CLOCK).close();
  }

  @Test
  void readsBesideTheProgramThatHoldsTheFolder() {
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      store.ledger().append(List.of(line(new Strike("e0", "x"))));
      try (SqliteStore beside = SqliteStore.openToRead(folder)) {
        assertThat(beside.ledger().entries()).hasSize(1);
        assertThatThrownBy(
                () -> beside.readings().append(Readings.air("wall", BENCH, NOON, 20, 50)))
            .isInstanceOf(StoreTrouble.class)
            .hasMessageContaining("to read only");
      }
    }
  }

  @Test
  void saysThatAFileIsNotItsOwn() throws Exception {
    Files.writeString(folder.resolve(SqliteStore.FILE_NAME), "Dear diary, ".repeat(1000));
    assertThatThrownBy(() -> SqliteStore.open(folder, CLOCK))
        .isInstanceOf(StoreTrouble.class)
        .hasMessageContaining("not a Coatwright data file");
  }

  @Test
  void backsUpAnOlderFileBeforeItBringsItUpToDate() {
    Path file = folder.resolve(SqliteStore.FILE_NAME);
    assertThat(Migrations.run(file, CLOCK, MigrationVersion.fromVersion("1"))).isEmpty();
    Database older = Database.toWrite(file);
    Entry entry = new SqliteLedger(older).append(List.of(line(new Strike("e0", "old")))).get(0);
    older.close();
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      Path backup = store.backupBeforeUpdate().orElseThrow();
      assertThat(backup).exists().hasParent(folder.resolve("backups"));
      assertThat(tables(backup)).contains("entry").doesNotContain("warning");
      assertThat(tables(file)).contains("entry", "warning");
      assertThat(store.ledger().entries()).containsExactly(entry);
    }
    try (SqliteStore again = SqliteStore.open(folder, CLOCK)) {
      assertThat(again.backupBeforeUpdate()).as("nothing to do, nothing to back up").isEmpty();
    }
  }

  @Test
  void leavesAFileOfANewerVersionAlone() {
    SqliteStore.open(folder, CLOCK).close();
    try (Handle handle = Jdbi.open("jdbc:sqlite:" + folder.resolve(SqliteStore.FILE_NAME))) {
      handle.execute(
          "insert into schema_history (installed_rank, version, description, type, script,"
              + " checksum, installed_by, execution_time, success) values (9, '999', 'later',"
              + " 'SQL', 'V999__later.sql', 1, '', 1, 1)");
    }
    assertThatThrownBy(() -> SqliteStore.open(folder, CLOCK))
        .isInstanceOf(StoreTrouble.class)
        .hasMessageContaining("a newer Coatwright wrote this file");
  }

  @Test
  void saysTheDiskIsFullAndWritesWhatItHeldOnceThereIsRoom() {
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      // SQLite answers a page limit as it answers a full disk.
      limitPages(store, 1);
      int count = 3000;
      for (int i = 0; i < count; i++) {
        store.readings().append(Readings.air("wall", BENCH, NOON.plusSeconds(i), 20, 50));
      }
      assertThatThrownBy(() -> store.readings().flush())
          .isInstanceOf(StoreTrouble.class)
          .hasMessageContaining("the disk is full")
          .hasMessageContaining("make room");
      assertThat(store.trouble().orElseThrow()).contains("the disk is full");
      limitPages(store, 1_000_000);
      store.readings().flush();
      assertThat(store.trouble()).isEmpty();
      assertThat(store.readings().readings(BENCH, NOON, NOON.plusSeconds(count))).hasSize(count);
      assertThat(
              store
                  .readings()
                  .rollUps(BENCH, NOON, NOON.plusSeconds(count), Duration.ofHours(1))
                  .get(0)
                  .count())
          .as("counted once, though tried twice")
          .isEqualTo(count);
    }
  }

  private static void limitPages(SqliteStore store, int pages) {
    store
        .database()
        .writeQuickly(
            "limiting",
            handle ->
                handle.createQuery("pragma max_page_count = " + pages).mapTo(Long.class).one());
  }

  @Test
  void backsUpWhileInUse() {
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      store.readings().append(Readings.air("wall", BENCH, NOON, 20, 50));
      Path target = folder.resolve("it's a backup.db");
      store.backUpTo(target);
      try (Handle handle = Jdbi.open("jdbc:sqlite:" + target)) {
        assertThat(handle.createQuery("select count(*) from reading").mapTo(Long.class).one())
            .isEqualTo(1);
      }
      assertThat(store.damage()).isEmpty();
    }
  }

  private static List<String> tables(Path file) {
    try (Handle handle = Jdbi.open("jdbc:sqlite:" + file)) {
      return handle
          .createQuery("select name from sqlite_master where type = 'table'")
          .mapTo(String.class)
          .list();
    }
  }

  private static Ledger.Line line(EntryBody body) {
    return new Ledger.Line(NOON.plusNanos(7), NOON.plusSeconds(60), Optional.of("Ann"), body);
  }

  private static RawText raw(String source, int n, String verdict) {
    return new RawText(
        source,
        "shop/" + source,
        NOON.plusSeconds(n),
        "{\"n\":" + n + "}",
        verdict,
        Optional.empty());
  }
}
