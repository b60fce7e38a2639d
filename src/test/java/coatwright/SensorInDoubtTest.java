package coatwright;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.climate.RoomAir;
import coatwright.outlook.Outlook;
import coatwright.outlook.SessionOutlook;
import coatwright.watch.Warning;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A sensor that was wet walks through the house: it may warn, and it allows nothing. */
class SensorInDoubtTest {
  private static final Instant MORNING = Instant.parse("2026-03-20T09:00:00Z");

  @TempDir Path folder;

  @Test
  void aSensorThatWasWetAllowsNoCoatUntilItHasBeenDryForADay() throws IOException {
    try (SmallShop quay = new SmallShop(folder, MORNING)) {
      wet(quay);
      quay.breathes(20, 50, Duration.ofHours(4));

      RoomAir air = quay.shop.climate().now(SmallShop.ROOM);
      assertThat(air.air().orElseThrow().rhPct()).isBetween(49.0, 51.0);
      assertThat(air.mistrust().orElseThrow()).startsWith("wall is in doubt: it was wet");
      SessionOutlook session = session(quay);
      assertThat(session.outlook().summary()).isEqualTo(Outlook.Summary.CANT_TELL);
      assertThat(session.outlook().decidedBy()).isEqualTo("air-in-doubt");
      assertThat(session.line()).contains("the sensor is in doubt");

      quay.breathes(20, 50, Duration.ofHours(21));
      assertThat(quay.shop.climate().now(SmallShop.ROOM).mistrust()).isEmpty();
      assertThat(session(quay).outlook().summary())
          .isIn(Outlook.Summary.BRUSH, Outlook.Summary.TAKE_CARE);
    }
  }

  @Test
  void aSensorInDoubtEndsNoWarning() throws IOException {
    try (SmallShop quay = new SmallShop(folder, MORNING)) {
      assertThat(warnsAfter(quay, 96.5)).as("never wet: dry air ends it").isFalse();
    }
    try (SmallShop quay = new SmallShop(folder.resolve("other"), MORNING)) {
      assertThat(warnsAfter(quay, 98.4)).as("wet: dry air it tells ends nothing").isTrue();
    }
  }

  @Test
  void aSensorInDoubtMayBeginAWarning() throws IOException {
    try (SmallShop quay = new SmallShop(folder, MORNING)) {
      wet(quay);
      quay.breathes(20, 60, Duration.ofHours(4));
      layACoat(quay);
      quay.breathes(20, 88, Duration.ofMinutes(5));
      judge(quay);

      assertThat(quay.rung).extracting(Warning::kind).contains("clouding");
    }
  }

  @Test
  void whatAnUncheckedSensorMayErrIsCarriedIntoTheMargin() throws IOException {
    try (SmallShop quay = new SmallShop(folder, MORNING)) {
      quay.breathes(20, 60, Duration.ofHours(4));
      double freshPct = quay.shop.climate().now(SmallShop.ROOM).air().orElseThrow().rhErrorPct();
      Outlook.Clouding fresh = session(quay).outlook().clouding().orElseThrow();
      layACoat(quay);
      quay.clock.forward(Duration.ofDays(60));
      for (int day = 1; day <= 25; day++) {
        quay.shop
            .forms(quay.clock)
            .coat(
                Map.of(
                    "part",
                    "frame/front",
                    "jar",
                    "A",
                    "start",
                    "2026-04-%02dT07:00".formatted(day),
                    "end",
                    "2026-04-%02dT17:00".formatted(day)));
      }
      quay.breathes(20, 60, Duration.ofHours(4));

      double workedPct = quay.shop.climate().now(SmallShop.ROOM).air().orElseThrow().rhErrorPct();
      // 25 days of 10.5 h are 262 h: 2.6 points, and 0.08 for two months.
      assertThat(workedPct - freshPct).isBetween(2.6, 2.8);
      Outlook.Clouding worked = session(quay).outlook().clouding().orElseThrow();
      assertThat(range(worked)).isGreaterThan(1.3 * range(fresh));
      assertThat(worked.waterRatioP90().orElseThrow())
          .isGreaterThan(fresh.waterRatioP90().orElseThrow());
    }
  }

  private static double range(Outlook.Clouding clouding) {
    return clouding.marginP90K().orElseThrow() - clouding.marginP10K().orElseThrow();
  }

  /** Whether clouding is still warned of after 45 min of such damp and 20 min of dry air. */
  private static boolean warnsAfter(SmallShop quay, double dampPct) {
    quay.breathes(20, 60, Duration.ofHours(4));
    layACoat(quay);
    quay.breathes(20, 92, Duration.ofMinutes(5));
    judge(quay);
    quay.breathes(20, dampPct, Duration.ofMinutes(45));
    judge(quay);
    assertThat(quay.meaning.watch().open()).extracting(Warning::kind).contains("clouding");
    for (int minute = 0; minute < 20; minute++) {
      quay.breathes(20, 45, Duration.ofMinutes(1));
      judge(quay);
    }
    return quay.meaning.watch().open().stream().anyMatch(w -> w.kind().equals("clouding"));
  }

  private static void wet(SmallShop quay) {
    quay.breathes(20, 92, Duration.ofMinutes(10));
    quay.breathes(20, 98.4, Duration.ofMinutes(45));
  }

  private static void layACoat(SmallShop quay) {
    quay.shop.forms(quay.clock).piece(Map.of("name", "frame", "room", SmallShop.ROOM));
    quay.shop.forms(quay.clock).part(Map.of("part", "frame/front"));
    quay.shop.forms(quay.clock).jar(Map.of("name", "A", "finish", "shellac-pale", "cut", "1.5lb"));
    quay.shop.forms(quay.clock).coat(Map.of("part", "frame/front", "jar", "A"));
  }

  private static void judge(SmallShop quay) {
    quay.meaning.outlooks().refresh(quay.clock.instant(), "the air since");
    quay.meaning.watch().judge(quay.clock.instant());
  }

  private static SessionOutlook session(SmallShop quay) {
    return quay.meaning.outlooks().session(SmallShop.ROOM, quay.clock.instant());
  }
}
