package coatwright;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coatwright.climate.ClockStretch;
import coatwright.climate.Happening;
import coatwright.climate.Reading;
import coatwright.climate.Role;
import coatwright.climate.RollUp;
import coatwright.journal.Entry;
import coatwright.journal.Forms;
import coatwright.quantity.RefusedInput;
import coatwright.store.SqliteStore;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The machine's clock beside its steady one, over a real data file. */
class ClockWatchTest {
  private static final ZoneId ZONE = ZoneId.of("Europe/Lisbon");
  private static final Instant TRUE_TIME = Instant.parse("2026-03-14T09:00:00Z");
  private static final Instant UNSET = Instant.parse("1970-01-01T00:00:20Z");

  @TempDir Path folder;

  private final SetClock wall = new SetClock(TRUE_TIME);
  private Duration steady = Duration.ofMinutes(3);
  private Duration asleep = Duration.ZERO;
  private NetworkTime.Sync network = NetworkTime.Sync.UNKNOWN;
  private String boot = "first";
  private final List<ClockStretch> stretches = new ArrayList<>();

  private ClockWatch watch(SqliteStore store, boolean setByHand) {
    ClockWatch watch =
        new ClockWatch(
            new MachineClock(wall, () -> steady, () -> steady.plus(asleep), () -> network, boot),
            store.houseLog(),
            ZONE,
            setByHand,
            stretches::add);
    watch.begin();
    return watch;
  }

  /** Both clocks go on as clocks do. */
  private void passes(Duration time) {
    wall.forward(time);
    steady = steady.plus(time);
  }

  private Reading reading(double temperatureC) {
    return new Reading(
        "wall",
        "wall",
        Role.ROOM,
        Optional.of("bench"),
        Optional.empty(),
        wall.instant(),
        OptionalDouble.of(temperatureC),
        OptionalDouble.of(50),
        OptionalDouble.empty(),
        0.3,
        2,
        List.of());
  }

  private static List<Reading> all(SqliteStore store) {
    store.readings().flush();
    return store.readings().readings("bench", Instant.MIN, Instant.MAX);
  }

  private static List<String> told(SqliteStore store) {
    return store.houseLog().happenings(Instant.MIN, Instant.MAX).stream()
        .map(Happening::says)
        .toList();
  }

  @Test
  void datesWhatCameBeforeTheClockWasSetByOneConstantShift() {
    wall.to(UNSET);
    try (SqliteStore store = SqliteStore.open(folder, Clock.systemUTC());
        ClockWatch watch = watch(store, false)) {
      assertThat(watch.trusted()).isFalse();
      assertThat(watch.trouble().orElseThrow())
          .contains("it says 1970-01-01 01:00:20, before this program was made")
          .contains("set it, or wait until the network does");
      for (int minute = 0; minute < 4; minute++) {
        store.readings().append(reading(20 + minute));
        passes(Duration.ofMinutes(1));
        watch.look();
      }
      assertThat(all(store)).as("nobody knows their dates").isEmpty();
      assertThat(store.houseLog().undated()).isEqualTo(4);

      wall.to(TRUE_TIME.plus(Duration.ofMinutes(4)));
      watch.look();
      store.readings().append(reading(24));

      assertThat(watch.trusted()).isTrue();
      assertThat(store.houseLog().undated()).isZero();
      assertThat(all(store))
          .extracting(Reading::at)
          .containsExactly(
              TRUE_TIME,
              TRUE_TIME.plusSeconds(60),
              TRUE_TIME.plusSeconds(120),
              TRUE_TIME.plusSeconds(180),
              TRUE_TIME.plusSeconds(240));
      assertThat(
              store
                  .readings()
                  .rollUps("bench", TRUE_TIME, TRUE_TIME.plusSeconds(600), Duration.ofMinutes(10)))
          .filteredOn(each -> each.quantity().equals("temperatureC"))
          .extracting(RollUp::count)
          .containsExactly(5L);
      assertThat(told(store))
          .anyMatch(says -> says.contains("4 readings that had no date were put forward by"));
    }
  }

  @Test
  void leavesAReadingItsOwnTimeThatTheWrongClockCannotHaveGiven() {
    wall.to(UNSET);
    try (SqliteStore store = SqliteStore.open(folder, Clock.systemUTC());
        ClockWatch watch = watch(store, false)) {
      passes(Duration.ofMinutes(1));
      Instant own = TRUE_TIME.minusSeconds(30);
      SetClock sensors = new SetClock(own);
      Instant machine = wall.instant();
      wall.to(sensors.instant());
      Reading ownTimed = reading(21);
      wall.to(machine);
      store.readings().append(ownTimed);

      wall.to(TRUE_TIME);
      watch.look();

      assertThat(all(store)).extracting(Reading::at).containsExactly(own);
    }
  }

  @Test
  void tellsThatTheClockWasPutForwardAndBackAndReordersNothing() {
    try (SqliteStore store = SqliteStore.open(folder, Clock.systemUTC());
        ClockWatch watch = watch(store, false)) {
      store.readings().append(reading(20));
      passes(Duration.ofMinutes(1));
      wall.forward(Duration.ofMinutes(510));
      watch.beforeReading();
      store.readings().append(reading(21));
      passes(Duration.ofMinutes(1));
      wall.forward(Duration.ofHours(-10));
      watch.beforeReading();
      store.readings().append(reading(22));

      assertThat(watch.trusted()).isTrue();
      assertThat(all(store))
          .extracting(each -> each.temperatureC().getAsDouble())
          .containsExactlyInAnyOrder(20.0, 21.0, 22.0);
      assertThat(stretches).extracting(ClockStretch::id).isSorted().hasSize(2);
      assertThat(told(store))
          .containsExactly(
              "the machine's clock was put forward by 8 h 30 min, from 2026-03-14 09:01:00 to"
                  + " 2026-03-14 17:31:00",
              "the machine's clock was put back by 10 h 0 min, from 2026-03-14 17:32:00 to"
                  + " 2026-03-14 07:32:00");
    }
  }

  @Test
  void beginsAStretchWithoutAWordWhenTheClockIsOnlyNudged() {
    try (SqliteStore store = SqliteStore.open(folder, Clock.systemUTC());
        ClockWatch watch = watch(store, false)) {
      wall.forward(Duration.ofSeconds(-5));
      watch.look();

      assertThat(stretches).hasSize(1);
      assertThat(told(store)).isEmpty();
    }
  }

  @Test
  void tellsSleepFromAClockThatWasPutForward() {
    try (SqliteStore store = SqliteStore.open(folder, Clock.systemUTC());
        ClockWatch watch = watch(store, false)) {
      asleep = Duration.ofHours(7);
      wall.forward(Duration.ofHours(7));
      watch.look();

      assertThat(told(store))
          .containsExactly("the machine slept for 7 h 0 min; nothing was heard meanwhile");
    }
  }

  @Test
  void tellsHowLongNobodyListenedAndWhetherItWasStoppedOrEndedWithoutAWord() {
    try (SqliteStore store = SqliteStore.open(folder, Clock.systemUTC())) {
      ClockWatch watch = watch(store, false);
      watch.start();
      watch.close();
      passes(Duration.ofHours(3));
      boot = "second";
      watch(store, false);
      passes(Duration.ofMinutes(61));
      watch(store, false);

      assertThat(told(store))
          .hasSize(2)
          .first()
          .asString()
          .startsWith("Coatwright did not run from 2026-03-14 09:00:00 to 2026-03-14 12:00:00")
          .contains("it was stopped");
      assertThat(told(store).get(1)).contains("it ended without a word");
    }
  }

  @Test
  void leavesASignOfLifeEveryHour() {
    try (SqliteStore store = SqliteStore.open(folder, Clock.systemUTC());
        ClockWatch watch = watch(store, false)) {
      passes(Duration.ofMinutes(59));
      watch.look();
      assertThat(store.houseLog().lastSign().orElseThrow().at()).isEqualTo(TRUE_TIME);
      passes(Duration.ofMinutes(1));
      watch.look();
      assertThat(store.houseLog().lastSign().orElseThrow().at())
          .isEqualTo(TRUE_TIME.plus(Duration.ofHours(1)));
    }
  }

  @Test
  void doesNotTrustAClockThatStandsBeforeTheNewestOnRecord() {
    try (SqliteStore store = SqliteStore.open(folder, Clock.systemUTC())) {
      watch(store, false);
      wall.to(TRUE_TIME.minus(Duration.ofDays(14)));
      boot = "second";
      ClockWatch watch = watch(store, false);

      assertThat(watch.trouble().orElseThrow())
          .contains(
              "it says 2026-02-28 09:00:00, and the newest on record is of 2026-03-14 09:00:00");
    }
  }

  @Test
  void believesAPersonWhoSetTheClockWhereNoNetworkDoes() {
    network = NetworkTime.Sync.NO;
    try (SqliteStore store = SqliteStore.open(folder, Clock.systemUTC())) {
      assertThat(watch(store, false).trouble().orElseThrow())
          .contains("no network time has set it")
          .contains("write clock: by-hand under shop");
      assertThat(watch(store, true).trusted()).isTrue();
    }
  }

  @Test
  void trustsTheClockWhenTheNetworkHasSetItThoughItDidNotJump() {
    network = NetworkTime.Sync.NO;
    try (SqliteStore store = SqliteStore.open(folder, Clock.systemUTC());
        ClockWatch watch = watch(store, false)) {
      store.readings().append(reading(20));
      passes(Duration.ofSeconds(40));
      network = NetworkTime.Sync.YES;
      watch.look();

      assertThat(watch.trusted()).isTrue();
      assertThat(all(store)).extracting(Reading::at).containsExactly(TRUE_TIME);
    }
  }

  @Test
  void asksForFullDatesWhileTheClockIsNotToBeTrustedAndNotesThatItWasSo() {
    try (SqliteStore store = SqliteStore.open(folder, Clock.systemUTC())) {
      wall.to(UNSET);
      Forms inner = new Echo(wall);
      DatedForms forms =
          new DatedForms(
              Echo::new, () -> Optional.of("the clock says 1970"), store.houseLog(), wall, ZONE);

      assertThatThrownBy(() -> forms.coat(Map.of("part", "a/b")))
          .isInstanceOf(RefusedInput.class)
          .hasMessageContaining("start: is needed now: the clock says 1970; write it like 2026-03");
      assertThatThrownBy(() -> forms.coat(Map.of("part", "a/b", "start", "-20min")))
          .hasMessageContaining("needs its day and year now");
      List<Entry> written = forms.coat(Map.of("part", "a/b", "start", "2026-03-14T09:20"));

      assertThat(written.get(0).at()).isEqualTo(Instant.parse("2026-03-14T09:20:01Z"));
      assertThat(told(store)).hasSize(1).first().asString().contains("entry e1 was written while");
      assertThat(inner.strike(Map.of())).hasSize(1);
    }
  }

  /** Forms that write down what time it is to them. */
  private record Echo(Clock clock) implements Forms {
    private List<Entry> now() {
      Instant now = clock.instant();
      return List.of(
          new Entry("e1", now, now, Optional.empty(), new coatwright.journal.Strike("e0", "try")));
    }

    @Override
    public List<Entry> piece(Map<String, String> form) {
      return now();
    }

    @Override
    public List<Entry> part(Map<String, String> form) {
      return now();
    }

    @Override
    public List<Entry> jar(Map<String, String> form) {
      return now();
    }

    @Override
    public List<Entry> coat(Map<String, String> form) {
      return now();
    }

    @Override
    public List<Entry> note(Map<String, String> form) {
      return now();
    }

    @Override
    public List<Entry> strike(Map<String, String> form) {
      return now();
    }
  }
}
