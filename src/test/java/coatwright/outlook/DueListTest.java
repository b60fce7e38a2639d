package coatwright.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import coatwright.film.AirCourse;
import coatwright.film.FilmJob;
import coatwright.film.FilmParameters;
import coatwright.film.FilmRun;
import coatwright.film.FilmSimulation;
import coatwright.film.LaidCoat;
import coatwright.film.SimulationOptions;
import coatwright.journal.Observation.What;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class DueListTest {
  private static final double LAST_COAT_H = 145 / 60.0;

  private static TestShop sixCoats(DoubleUnaryOperator tempC, double untilH) {
    return new TestShop().jar().air(-3, untilH, 5, tempC, h -> 50).sixCoats(tempC.applyAsDouble(0));
  }

  private static double daysFromLastCoat(Instant date) {
    Instant last = TestShop.START.plusSeconds(145 * 60);
    return Duration.between(last, date).toSeconds() / 86_400.0;
  }

  private static double rubOutDays(Due due) {
    return daysFromLastCoat(due.p50().orElseThrow());
  }

  private static double widthLn(Due due) {
    return Math.log(
        daysFromLastCoat(due.p90().orElseThrow()) / daysFromLastCoat(due.p10().orElseThrow()));
  }

  /** The same coats by a full run in the same air, knot by knot. */
  private static double fullRunDays(DoubleUnaryOperator tempC) {
    List<LaidCoat> coats = new ArrayList<>();
    for (double min : new double[] {0, 15, 30, 45, 105, 145}) {
      coats.add(LaidCoat.plain(min * 60, 75, 1.5 * TestShop.LB, 95));
    }
    int n = 10 * 24 * 12;
    double[] timeS = new double[n];
    double[] airC = new double[n];
    double[] rh = new double[n];
    for (int i = 0; i < n; i++) {
      timeS[i] = i * 300;
      airC[i] = tempC.applyAsDouble(i / 12.0);
      rh[i] = 0.5;
    }
    FilmRun run =
        new FilmSimulation(FilmParameters.SHELLAC, SimulationOptions.DEFAULT)
            .run(
                FilmJob.of(coats, new AirCourse(timeS, airC, rh, 0.1), tempC.applyAsDouble(0)),
                n * 300.0);
    return run.rubOutS().getAsDouble() / 86_400;
  }

  /** Twenty degrees but for one night, and the same mean spread evenly. */
  private static double coldNight(double h) {
    return h > 10 && h < 20 ? 6 : 20;
  }

  private static double sameMean(double h) {
    double daysShown = 8;
    return 20 - 14 * 10 / (daysShown * 24);
  }

  @Test
  void aColdNightCountsThoughTheMeanIsTheSame() {
    double cold = rubOutDays(sixCoats(DueListTest::coldNight, 192).due(191, "rub out"));
    double even = rubOutDays(sixCoats(DueListTest::sameMean, 192).due(191, "rub out"));
    assertThat(cold).isCloseTo(fullRunDays(DueListTest::coldNight), withinPercentage(1));
    assertThat(even).isCloseTo(fullRunDays(DueListTest::sameMean), withinPercentage(1));
    assertThat(Math.abs(cold / even - 1)).isGreaterThan(0.02);
  }

  @Test
  void aLostHourIsReportedAsAGapAndWidensTheRange() {
    Due whole = sixCoats(h -> 20, 24).due(23.9, "rub out");
    TestShop lost =
        new TestShop()
            .jar()
            .air(-3, 10, 5, h -> 20, h -> 50)
            .air(11, 24, 5, h -> 20, h -> 50)
            .sixCoats(20);
    Due gapped = lost.due(23.9, "rub out");
    assertThat(gapped.p10().orElseThrow()).isBefore(whole.p10().orElseThrow());
    assertThat(gapped.p90().orElseThrow()).isAfter(whole.p90().orElseThrow());
    assertThat(lost.outlooks.prediction(TestShop.DOOR).orElseThrow().job().gaps())
        .singleElement()
        .satisfies(
            g -> assertThat(g.length()).isBetween(Duration.ofMinutes(50), Duration.ofMinutes(70)));
  }

  @Test
  void countsEveryMilestoneFromTheLastCoatInTheirOrder() {
    TestShop shop = sixCoats(h -> 20, 3);
    shop.due(LAST_COAT_H + 0.05, "rub out");
    List<Due> all = shop.outlooks.due(Optional.of("cabinet"));
    assertThat(all)
        .extracting(Due::milestone)
        .containsSubsequence(
            "dry to touch", "dry to recoat", "dry hard", "rub out", "wrap", "full hardness");
    assertThat(all).extracting(Due::milestone).contains("too tacky to go on");
    assertThat(rubOutDays(shop.listed("rub out"))).isCloseTo(3.75, withinPercentage(2));
    assertThat(shop.listed("dry hard").estimate()).isTrue();
    assertThat(shop.listed("dry to recoat").until()).isEmpty();
    assertThat(shop.outlooks.due(Optional.of("stool"))).isEmpty();
  }

  @Test
  void namesTheTestToMakeAndWhatWouldNarrowTheDateMost() {
    Due due = sixCoats(h -> 20, 24).due(23.9, "rub out");
    assertThat(due.test().orElseThrow())
        .contains("Smell it close up")
        .contains("narrow the date most");
  }

  @Test
  void aThumbnailThatFailsMovesTheDateLaterAndTheReasonSaysSo() {
    TestShop shop = sixCoats(h -> 20, 24);
    double before = rubOutDays(shop.due(14, "rub out"));
    shop.note(LAST_COAT_H + 12, What.THUMBNAIL, false);
    Due after = shop.due(LAST_COAT_H + 12.1, "rub out");
    assertThat(rubOutDays(after)).isGreaterThan(1.3 * before);
    assertThat(after.reason().orElseThrow()).isEqualTo("thumbnail test failed at 02:25");
    assertThat(daysFromLastCoat(after.was().orElseThrow())).isCloseTo(before, withinPercentage(1));
    assertThat(shop.listed("dry hard").p50().orElseThrow())
        .isAfterOrEqualTo(TestShop.START.plusSeconds(Math.round((LAST_COAT_H + 12) * 3600)));
  }

  @Test
  void aThumbnailThatPassesEarlyMovesTheDateEarlierAndEndsTheWaitForDryHard() {
    TestShop shop = sixCoats(h -> 20, 24);
    double before = rubOutDays(shop.due(6, "rub out"));
    shop.note(LAST_COAT_H + 4, What.THUMBNAIL, true);
    assertThat(rubOutDays(shop.due(LAST_COAT_H + 4.1, "rub out"))).isLessThan(0.85 * before);
  }

  @Test
  void aTestNoFilmOfTheModelExplainsTakesTheDatesAwayUntilOnePasses() {
    TestShop shop = sixCoats(h -> 20, 24 * 9);
    Instant before = shop.due(24 * 8, "rub out").p50().orElseThrow();
    shop.note(24 * 8.0, What.THUMBNAIL, false);

    Due after = shop.due(24 * 8.01, "rub out");

    assertThat(after.cantTell()).isTrue();
    assertThat(after.p50()).isEmpty();
    assertThat(after.was()).contains(before);
    assertThat(after.reason().orElseThrow())
        .startsWith("thumbnail test failed at ")
        .contains("nine in ten such films are dry hard by ");
    assertThat(shop.outlooks.due(Optional.of("cabinet"))).hasSize(1);

    shop.note(24 * 8.1, What.THUMBNAIL, true);
    assertThat(shop.due(24 * 8.11, "rub out").cantTell()).isFalse();
  }

  @Test
  void aTestThatWasStruckOutNoLongerCounts() {
    TestShop shop = sixCoats(h -> 20, 24);
    double before = rubOutDays(shop.due(14.5, "rub out"));
    var note = shop.note(LAST_COAT_H + 12, What.THUMBNAIL, false);
    shop.due(LAST_COAT_H + 12.1, "rub out");
    shop.write(shop.now(), new coatwright.journal.Strike(note.id(), "wrong part"));
    Due back = shop.due(LAST_COAT_H + 12.2, "rub out");
    assertThat(rubOutDays(back)).isCloseTo(before, withinPercentage(1));
    assertThat(back.reason()).contains("a note was struck out");
  }

  @Test
  void aGaugedWetFilmMovesTheDateAndNarrowsTheRange() {
    TestShop gauged = new TestShop().jar().air(-3, 24, 5, h -> 20, h -> 50);
    for (double min : new double[] {0, 15, 30, 45, 105, 145}) {
      gauged.coat(min / 60, OptionalDouble.of(60), OptionalDouble.of(20));
    }
    Due told = gauged.due(23.9, "rub out");
    Due usual = sixCoats(h -> 20, 24).due(23.9, "rub out");
    assertThat(rubOutDays(told) / rubOutDays(usual)).isCloseTo(0.65, withinPercentage(3));
    assertThat(widthLn(told)).isLessThan(widthLn(usual));
  }

  @Test
  void aRoomColderThanExpectedMovesTheDateAndSaysByHowMuch() {
    TestShop shop = sixCoats(h -> h < 6 ? 20 : 13, 30);
    shop.due(6, "rub out");
    Due after = shop.due(29.9, "rub out");
    assertThat(after.was()).isPresent();
    assertThat(after.p50().orElseThrow()).isAfter(after.was().orElseThrow());
    assertThat(after.reason().orElseThrow())
        .containsPattern("the room was [67]\\.\\d K cooler than expected");
  }

  @Test
  void keepsAPredictionOnlyWhenItMoved() {
    TestShop shop = sixCoats(h -> 20, 24);
    shop.due(6, "rub out");
    int kept = shop.predictions.history("cabinet/left-door", "rub out").size();
    shop.due(6.2, "rub out");
    shop.due(6.4, "rub out");
    assertThat(shop.predictions.history("cabinet/left-door", "rub out")).hasSize(kept);
  }

  @Test
  void anotherCoatIsTheReasonForANewDate() {
    TestShop shop = new TestShop().jar().air(-3, 24, 5, h -> 20, h -> 50);
    shop.coat(0, OptionalDouble.empty(), OptionalDouble.of(20));
    shop.due(0.1, "rub out");
    shop.coat(0.5, OptionalDouble.empty(), OptionalDouble.of(20));
    Due after = shop.due(0.6, "rub out");
    assertThat(after.reason()).contains("coat 2 went on at 12:30");
  }

  @Test
  void tellsListenersOnlyWhenADateMoved() {
    TestShop shop = sixCoats(h -> 20, 24);
    List<List<Due>> told = new ArrayList<>();
    shop.outlooks.onDue(told::add);
    shop.due(6, "rub out");
    assertThat(told).hasSize(1);
    shop.due(6.1, "rub out");
    assertThat(told).hasSize(1);
  }

  @Test
  void saysWhyNothingCanBeToldWhenNobodyMeasuredTheAir() {
    TestShop shop = new TestShop().jar().air(20, 24, 5, h -> 20, h -> 50).sixCoats(20);
    Due due = shop.due(23.9, "rub out");
    assertThat(due.reached()).isFalse();
    assertThat(due.reason().orElseThrow()).contains("nobody measured the air");
    assertThat(due.cantTell()).as("not: it will never get there").isTrue();
  }

  @Test
  void aRoomTooDampToHardenGetsNoDateInsteadOfAnEverMovingOne() {
    TestShop shop = new TestShop().jar().air(-3, 48, 5, h -> 30, h -> 92).sixCoats(30);
    Due due = shop.due(47.9, "rub out");
    assertThat(due.reached()).isFalse();
    assertThat(due.p50()).isEmpty();
  }

  @Test
  void rubbingOutFineTakesTheLineOff() {
    TestShop shop = sixCoats(h -> 20, 120);
    shop.due(100, "rub out");
    shop.note(101, What.RUBBED_OUT, true);
    shop.due(102, "full hardness");
    assertThat(shop.outlooks.due(Optional.empty()))
        .extracting(Due::milestone)
        .doesNotContain("rub out");
  }
}
