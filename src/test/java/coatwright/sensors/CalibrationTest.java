package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.climate.Mistrust;
import coatwright.climate.Reading;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Corrections by checks, and how sure a humidity is the longer it was not checked. */
class CalibrationTest {
  private static final Instant INSTALLED = Instant.parse("2026-01-05T08:00:00Z");
  private static final Duration QUARTER = Duration.ofDays(91);

  private final Books books = new Books();
  private final SourceMapping mapping = Mappings.mqtt("wall", "shop/wall");
  private final Calibration calibration = new Calibration(mapping, books);

  /** Books a test writes in. */
  private static final class Books implements Upkeep {
    final List<Check> checks = new ArrayList<>();
    Duration vapourADay = Duration.ZERO;
    Optional<Instant> boxed = Optional.empty();
    Optional<Instant> clouded = Optional.empty();

    @Override
    public List<Check> checks(String source, String sensor) {
      return checks;
    }

    @Override
    public Optional<Instant> boxedSince(String source, String sensor, Instant at) {
      return boxed;
    }

    @Override
    public Optional<Instant> heardSince(String source) {
      return Optional.of(INSTALLED);
    }

    @Override
    public Duration inVapour(String room, Instant from, Instant to) {
      return vapourADay.multipliedBy(Duration.between(from, to).toDays());
    }

    @Override
    public Optional<Instant> cloudedAfter(String room, Instant from) {
      return clouded.filter(at -> at.isAfter(from));
    }

    void check(Instant at, double gain, double offset) {
      checks.add(
          new Check(at, new Correction(Quantity.RELATIVE_HUMIDITY, gain, offset, at, "salts")));
    }
  }

  private Calibration.Standing after(Duration time) {
    return calibration.standing("wall", INSTALLED.plus(time));
  }

  private Reading says(double rh, Instant at) {
    return new Intake(mapping, new Neighbours(), books)
        .take(
            RawReading.of(
                "shop/wall",
                "{\"t\":20,\"h\":%s}".formatted(rh).getBytes(StandardCharsets.UTF_8),
                at,
                RawReading.Way.MESSAGE))
        .readings()
        .get(0);
  }

  @Test
  void growsLessSureByHalfAPointAYearAndByAPointAHundredHoursOfFinishing() {
    double fresh = Chip.UNKNOWN.rhErrorPct();
    assertThat(after(Duration.ofDays(731)).rhErrorPct()).isCloseTo(fresh + 1.0, within(0.01));
    books.vapourADay = Duration.ofHours(2);
    Calibration.Standing worked = after(Duration.ofDays(100));
    assertThat(worked.vapourHours()).isEqualTo(200);
    assertThat(worked.rhErrorPct()).isCloseTo(fresh + 0.14 + 2.0, within(0.01));
    books.check(INSTALLED.plus(Duration.ofDays(100)), 1.02, 0.4);
    assertThat(after(Duration.ofDays(100)).rhErrorPct()).as("a check").isEqualTo(fresh);
  }

  @Test
  void carriesItIntoEveryReading() {
    books.vapourADay = Duration.ofHours(4);
    Reading reading = says(50, INSTALLED.plus(Duration.ofDays(50)));
    assertThat(reading.rhErrorPct()).isCloseTo(3.5 + 0.07 + 2.0, within(0.01));
    assertThat(reading.flags()).isEmpty();
  }

  @Test
  void asksForAFirstCheckInThreeMonthsAndThenTwiceAYearOrQuarterlyWhereFinishingIsDone() {
    assertThat(after(Duration.ofDays(10)).due()).contains(INSTALLED.plus(QUARTER));
    books.check(INSTALLED.plus(QUARTER), 1, 0);
    assertThat(after(Duration.ofDays(100)).due()).contains(INSTALLED.plus(QUARTER).plus(QUARTER));
    books.check(INSTALLED.plus(Duration.ofDays(182)), 1, 0);
    assertThat(after(Duration.ofDays(200)).due())
        .contains(INSTALLED.plus(Duration.ofDays(182 + 182)));
    books.vapourADay = Duration.ofHours(1);
    assertThat(after(Duration.ofDays(200)).due())
        .contains(INSTALLED.plus(Duration.ofDays(182 + 91)));
  }

  @Test
  void asksForACheckAfterACloudedBatch() {
    Instant clouded = INSTALLED.plus(Duration.ofDays(20));
    books.clouded = Optional.of(clouded);
    Calibration.Standing standing = after(Duration.ofDays(21));
    assertThat(standing.due()).contains(clouded);
    assertThat(standing.isDue()).isTrue();
    assertThat(standing.isOverdue()).isFalse();
    books.check(clouded.plusSeconds(60), 1, 0);
    assertThat(after(Duration.ofDays(22)).isDue()).isFalse();
  }

  @Test
  void aCheckLongOverdueInVapourPutsTheSensorInDoubt() {
    books.vapourADay = Duration.ofMinutes(30);
    assertThat(after(Duration.ofDays(120)).isDue()).isTrue();
    assertThat(says(50, INSTALLED.plus(Duration.ofDays(120))).mistrust()).isEmpty();
    assertThat(says(50, INSTALLED.plus(Duration.ofDays(183))).mistrust())
        .contains(Mistrust.CHECK_OVERDUE);
    books.vapourADay = Duration.ZERO;
    assertThat(says(50, INSTALLED.plus(Duration.ofDays(400))).mistrust())
        .as("clean air: it only grows less sure")
        .isEmpty();
  }

  @Test
  void correctsByTheNewestCheckAndKeepsWhatWasSent() {
    books.check(INSTALLED, 1.05, -1.0);
    books.check(INSTALLED.plus(Duration.ofDays(90)), 1.10, -2.0);
    Reading before = says(60, INSTALLED.plus(Duration.ofDays(30)));
    Reading after = says(60, INSTALLED.plus(Duration.ofDays(91)));
    assertThat(before.rhPct().orElseThrow()).isCloseTo(62, within(1e-9));
    assertThat(after.rhPct().orElseThrow()).isCloseTo(64, within(1e-9));
    assertThat(after.sent().orElseThrow().rhPct()).hasValue(60);
    assertThat(after.flags()).contains("corrected");
  }

  @Test
  void addsTwoPointsAboveNinetyWhereNoSaltTests() {
    books.check(INSTALLED, 1, 0);
    assertThat(says(92, INSTALLED).rhErrorPct()).isEqualTo(Chip.UNKNOWN.rhErrorPct() + 2);
  }

  @Test
  void keepsWhatASaltMakesOutOfTheRoomsAir() {
    books.boxed = Optional.of(INSTALLED);
    Intake intake = new Intake(mapping, new Neighbours(), books);
    Intake.Taken taken =
        intake.take(
            RawReading.of(
                "shop/wall",
                "{\"t\":20,\"h\":33.4}".getBytes(StandardCharsets.UTF_8),
                INSTALLED.plusSeconds(60),
                RawReading.Way.MESSAGE));
    assertThat(taken.readings()).isEmpty();
    assertThat(taken.verdict().heldBack().get(0).reason()).contains("in the box with a salt");
    assertThat(taken.sent()).extracting(JustSent::rhPct).containsExactly(33.4);
  }
}
