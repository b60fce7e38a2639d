package coatwright.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.air.SaturatedSalt;
import coatwright.climate.TestClock;
import coatwright.quantity.RefusedInput;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class SaltBookTest {
  private static final Instant NOON = Instant.parse("2026-03-14T12:00:00Z");

  private final TestClock clock = new TestClock(NOON);
  private final LiveJournal journal = new LiveJournal(new MemoryLedger());
  private final List<SaltBook.Sent> sent = new ArrayList<>();
  private final SaltBook book = new SaltBook(journal, new OneHygrometer(), clock, ZoneOffset.UTC);

  private final class OneHygrometer implements SaltBook.Live {
    @Override
    public Map<String, List<String>> sensors() {
      return Map.of("wall", List.of("wall"), "radio", List.of("r/1", "r/2"));
    }

    @Override
    public List<SaltBook.Sent> justSent(String source, String sensor) {
      return sensor.equals("wall") ? sent : List.of();
    }

    @Override
    public double corrected(String source, String sensor, double sentRhPct, Instant at) {
      return sentRhPct + 1;
    }
  }

  private void sends(double fromPct, double toPct, double tempC) {
    sent.clear();
    for (int minute = 0; minute <= 12; minute++) {
      double share = minute / 12.0;
      sent.add(
          new SaltBook.Sent(
              clock.instant().minus(Duration.ofMinutes(12 - minute)),
              OptionalDouble.of(tempC),
              fromPct + share * (toPct - fromPct)));
    }
  }

  private void reads(String salt) {
    book.write(Map.of("source", "wall", "salt", salt, "temp", "20C", "settled", "yes"));
  }

  @Test
  void twoSaltsGiveGainAndOffset() {
    // An element that lost a tenth of its span and reads two points low at the dry end.
    reads("MgCl2=31.1%");
    clock.pass(Duration.ofHours(2));
    reads("NaCl=70.2%");

    SaltBook.Found found = book.found("wall", "wall").get(0);
    assertThat(book.found("wall", "wall")).hasSize(1);
    assertThat(found.at()).isEqualTo(NOON.plus(Duration.ofHours(2)));
    double gain = (75.48 - 33.07) / (70.2 - 31.1);
    assertThat(found.fit().gain()).isCloseTo(gain, within(1e-3));
    assertThat(found.fit().applyTo(31.1)).isCloseTo(33.07, within(0.01));
    assertThat(found.fit().applyTo(70.2)).isCloseTo(75.48, within(0.01));
    assertThat(found.fit().isPassed()).isTrue();
  }

  @Test
  void oneSaltGivesAnOffsetAndSaysThatItIsNoMore() {
    reads("NaCl=72.0%");
    SaltFit fit = book.found("wall", "wall").get(0).fit();
    assertThat(fit.gain()).isEqualTo(1);
    assertThat(fit.offsetPct()).isCloseTo(3.48, within(0.01));
    assertThat(fit.sentence()).contains("one salt cannot tell a tilt from a shift");
  }

  @Test
  void anElementBeyondTheLimitsIsToBeReplaced() {
    reads("MgCl2=33.0%,NaCl=66.0%");
    SaltFit tilted = book.found("wall", "wall").get(0).fit();
    assertThat(tilted.gain()).isGreaterThan(1.10);
    assertThat(tilted.isPassed()).isFalse();
    assertThat(tilted.sentence()).contains("replace the sensor");

    assertThat(new SaltFit(1, 8.1, 1).isPassed()).isFalse();
    assertThat(new SaltFit(0.93, -8, 2).isPassed()).isTrue();
  }

  @Test
  void aCheckDaysLaterIsAnotherCheck() {
    reads("MgCl2=32.0%");
    clock.pass(Duration.ofDays(90));
    reads("NaCl=74.0%");
    assertThat(book.found("wall", "wall")).hasSize(2);
    assertThat(book.found("wall", "wall").get(1).points()).hasSize(1);
  }

  @Test
  void readsTheSensorLiveOnceItHasSettled() {
    sends(72.0, 73.4, 21.0);
    assertThat(book.reads("wall", "wall").orElseThrow().settled()).isFalse();
    assertThatThrownBy(() -> book.write(Map.of("source", "wall", "salt", "NaCl")))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("moved by 1.3 % over the last 10 min")
        .hasMessageContaining("wait until it moves by less than 0.2 %");

    sends(73.3, 73.4, 21.0);
    book.write(Map.of("source", "wall", "salt", "NaCl"));
    SaltCheck.Point point = book.found("wall", "wall").get(0).points().get(0);
    assertThat(point.sentRhPct()).isEqualTo(73.4);
    assertThat(point.shownRhPct()).as("before").isEqualTo(74.4);
    assertThat(point.sensorTempC()).isEqualTo(21.0);
    assertThat(point.expectedRhPct()).isEqualTo(SaturatedSalt.SODIUM_CHLORIDE.rhPct(21.0));
  }

  @Test
  void tellsEveryFaultAtOnceWithItsRemedy() {
    assertThatThrownBy(() -> book.write(Map.of("source", "wal", "salt", "sugar=70%", "temp", "20")))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("did you mean wall?");
    assertThatThrownBy(() -> book.write(Map.of("source", "wall", "salt", "sugar=70", "temp", "20")))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("use one of: LiCl, MgCl2")
        .hasMessageContaining("\"70\"")
        .hasMessageContaining("\"20\"")
        .hasMessageContaining("say --settled");
    assertThatThrownBy(
            () ->
                book.write(
                    Map.of(
                        "source",
                        "wall",
                        "salt",
                        "NaCl=74%",
                        "temp",
                        "20C",
                        "sensorTemp",
                        "22C",
                        "settled",
                        "yes")))
        .hasMessageContaining("2.0 K apart")
        .hasMessageContaining("let both come to one temperature");
    assertThatThrownBy(() -> book.write(Map.of("source", "radio", "step", "begin")))
        .hasMessageContaining("name one of: r/1, r/2");
    assertThat(journal.entries()).isEmpty();
  }

  @Test
  void aStruckReadingNoLongerCountsAndStaysInTheBook() {
    reads("NaCl=72.0%");
    journal.write(
        List.of(
            new Ledger.Line(
                NOON, NOON, Optional.empty(), new Strike("e1", "the box was not shut"))));
    assertThat(book.found("wall", "wall")).isEmpty();
    assertThat(book.lines()).hasSize(1);
  }

  @Test
  void knowsWhatLiesInTheBox() {
    book.write(Map.of("source", "wall", "step", "begin"));
    assertThat(book.boxedSince("wall", "wall", NOON.plusSeconds(3600))).contains(NOON);
    assertThat(book.boxedSince("wall", "wall", NOON.plus(Duration.ofHours(25))))
        .as("forgotten for a day")
        .isEmpty();
    clock.pass(Duration.ofHours(1));
    book.write(Map.of("source", "wall", "step", "end"));
    assertThat(book.boxedSince("wall", "wall", clock.instant())).isEmpty();
  }

  @Test
  void reckonsBetweenChecksByAStraightLine() {
    List<SaltBook.Found> checks =
        List.of(
            new SaltBook.Found(NOON, List.of(), new SaltFit(1.00, 0, 2)),
            new SaltBook.Found(
                NOON.plus(Duration.ofDays(100)), List.of(), new SaltFit(1.08, 2, 2)));
    assertThat(SaltBook.heldAt(checks, NOON.minusSeconds(1))).isEmpty();
    SaltFit half = SaltBook.heldAt(checks, NOON.plus(Duration.ofDays(50))).orElseThrow();
    assertThat(half.gain()).isCloseTo(1.04, within(1e-9));
    assertThat(half.offsetPct()).isCloseTo(1, within(1e-9));
    assertThat(SaltBook.heldAt(checks, NOON.plus(Duration.ofDays(900))).orElseThrow())
        .isEqualTo(new SaltFit(1.08, 2, 2));
  }

  /** A sensor tilted and shifted by any amount is set right by two salts. */
  @Property(seed = "20261125")
  void findsWhateverTiltAndShiftThereIs(
      @ForAll @DoubleRange(min = 0.85, max = 1.15) double tilt,
      @ForAll @DoubleRange(min = -6, max = 6) double shift,
      @ForAll @DoubleRange(min = 11, max = 97) double truePct) {
    SaltFit fit =
        SaltFit.of(
            List.of(
                point(SaturatedSalt.MAGNESIUM_CHLORIDE, tilt, shift),
                point(SaturatedSalt.SODIUM_CHLORIDE, tilt, shift)));
    assertThat(fit.applyTo(tilt * truePct + shift)).isCloseTo(truePct, within(1e-9));
  }

  private static SaltCheck.Point point(SaturatedSalt salt, double tilt, double shift) {
    double expected = salt.rhPct(20);
    return new SaltCheck.Point(
        salt.formula(),
        20,
        20,
        expected,
        tilt * expected + shift,
        tilt * expected + shift,
        OptionalDouble.empty());
  }
}
