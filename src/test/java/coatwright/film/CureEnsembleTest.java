package coatwright.film;

import static coatwright.film.Cures.HOUR_S;
import static coatwright.film.Cures.hoursTo;
import static coatwright.film.Cures.steady;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What holds of every curing film, whatever its figures; and where the two-part film stands still.
 */
class CureEnsembleTest {
  static Stream<Curing> all() {
    return Cures.all().stream();
  }

  /** Second order without vitrification has the closed form 1/(1−X) − 1 = k t. */
  @ParameterizedTest(name = "X = {0}")
  @CsvSource({"0.3", "0.6", "0.85", "0.95"})
  void twoPartFollowsTheClosedFormWhereNothingVitrifies(double conversion) {
    TwoPartCure soft =
        new TwoPartCure(
            Cures.facts(45, false),
            55e3,
            0.1,
            new TwoPartCure.Network(-100, 20.0, 0.45, 40, 0.5),
            2,
            Cures.milestones(0.1, 0.2, 0.3, 0.6, 0.85, 0.95),
            OptionalDouble.empty());
    double exact = (1 / (1 - conversion) - 1) / 0.1;
    assertThat(Conversion.steady(soft, 20).hoursTo(conversion))
        .isCloseTo(exact, withinPercentage(0.01));
  }

  /**
   * ∫ k dt over two hours at 10 °C and then 30 °C, straight between, by Simpson with 2000 parts.
   */
  @Test
  void twoPartFollowsTheIntegralOfItsRateThroughChangingAir() {
    TwoPartCure soft =
        new TwoPartCure(
            Cures.facts(45, false),
            55e3,
            0.1,
            new TwoPartCure.Network(-100, 20.0, 0.45, 40, 0.5),
            2,
            Cures.milestones(0.1, 0.2, 0.3, 0.6, 0.85, 0.95),
            OptionalDouble.empty());
    AirCourse warming =
        new AirCourse(
            new double[] {0, 7200, 10_800},
            new double[] {10, 10, 30},
            new double[] {0.5, 0.5, 0.5},
            0.1);
    double hours = hoursTo(Cures.in(soft, warming, 100), Milestone.DRY_HARD);
    double u = 0;
    int parts = 2000;
    for (int i = 0; i < parts; i++) {
      double h = hours / parts;
      u +=
          h
              / 6
              * (rate(soft, warming, i * h)
                  + 4 * rate(soft, warming, (i + 0.5) * h)
                  + rate(soft, warming, (i + 1) * h));
    }
    assertThat(u / (1 + u)).isCloseTo(0.3, within(3e-4));
  }

  private static double rate(TwoPartCure cure, AirCourse air, double atH) {
    return cure.ratePerHour(air.airTempCAt(atH * HOUR_S), 1);
  }

  @Test
  void twoPartInAColdShopIsNeverReadyToRubOutAndHeatStartsItAgain() {
    Prediction cold = CureEnsemble.predict(steady(Cures.twoPart(), 10, 0.5, 100));
    assertThat(cold.milestone(Milestone.DRY_HARD).p50()).isPresent();
    assertThat(cold.milestone(Milestone.RUB_OUT).p50()).isEmpty();
    double month = 30 * 86_400;
    AirCourse heated =
        new AirCourse(
            new double[] {0, month, month + 7200},
            new double[] {10, 10, 25},
            new double[] {0.5, 0.5, 0.5},
            0.1);
    double rubbedH = hoursTo(Cures.in(Cures.twoPart(), heated, 100), Milestone.RUB_OUT);
    assertThat(rubbedH).isGreaterThan(month / HOUR_S).isLessThan(month / HOUR_S + 77);
  }

  @ParameterizedTest
  @MethodSource("all")
  void milestonesComeInTheirOrder(Curing curing) {
    Prediction p = CureEnsemble.predict(steady(curing, 20, 0.6, 90));
    double before = 0;
    for (Milestone m : curing.milestones()) {
      Percentiles range = p.milestone(m);
      double p50 = range.p50().orElseThrow();
      assertThat(p50).isGreaterThanOrEqualTo(before);
      assertThat(range.p10().orElseThrow()).isLessThan(p50);
      assertThat(range.p90().orElse(Double.POSITIVE_INFINITY)).isGreaterThan(p50);
      before = p50;
    }
    assertThat(p.run()).isEmpty();
    assertThat(p.milestone(Milestone.RESTED)).isEqualTo(Percentiles.NONE);
    assertThat(CureEnsemble.predict(steady(curing, 20, 0.6, 90)).recoatUntilS().p50().orElseThrow())
        .isGreaterThanOrEqualTo(p.milestone(Milestone.DRY_TO_RECOAT).p50().orElseThrow());
  }

  /** The members' middle is the model's own answer; thresholds alone spread it by e^±0.35·1.28. */
  @Test
  void theMiddleOfTheEnsembleIsTheModelsAnswerAndThresholdsSpreadItByHalf() {
    CureJob job =
        CureJob.steady(
            Cures.varnish(),
            CureCoat.unthinned(0, 80),
            AirCourse.steady(20, 0.5, 0.1),
            Spreads.told(0, 0));
    Percentiles rub = CureEnsemble.predict(job).milestone(Milestone.RUB_OUT);
    assertThat(rub.p50().orElseThrow() / HOUR_S)
        .isCloseTo(hoursTo(job, Milestone.RUB_OUT), withinPercentage(2.0));
    double spread = Math.log(rub.p90().orElseThrow() / rub.p10().orElseThrow());
    assertThat(spread).isCloseTo(2 * 1.2816 * 0.35, withinPercentage(15.0));
  }

  @Property(tries = 40, seed = "20261125")
  void warmerAirIsNeverLater(
      @ForAll @DoubleRange(min = 11, max = 33) double airC,
      @ForAll @DoubleRange(min = 0.2, max = 0.9) double rh,
      @ForAll @IntRange(min = 0, max = 2) int which) {
    Curing curing = Cures.all().get(which);
    for (Milestone m : curing.milestones()) {
      assertThat(hoursTo(steady(curing, airC + 1, rh, 90), m))
          .isLessThanOrEqualTo(hoursTo(steady(curing, airC, rh, 90), m));
    }
  }

  /** From 14 °C on, so that no dry air cools the waterborne film out of forming. */
  @Property(tries = 40, seed = "20261125")
  void damperAirIsNeverSoonerForOilAndWater(
      @ForAll @DoubleRange(min = 14, max = 33) double airC,
      @ForAll @DoubleRange(min = 0.2, max = 0.9) double rh,
      @ForAll @IntRange(min = 0, max = 1) int which) {
    Curing curing = Cures.all().get(which);
    for (Milestone m : curing.milestones()) {
      assertThat(hoursTo(steady(curing, airC, rh + 0.05, 90), m))
          .isGreaterThanOrEqualTo(hoursTo(steady(curing, airC, rh, 90), m) * (1 - 1e-12));
    }
  }

  /** Near the film-forming temperature dry air is the worse one: its water leaves too coldly. */
  @Test
  void dryAirCanCoolAWaterborneFilmOutOfForming() {
    assertThat(hoursTo(steady(Cures.water(), 11, 0.2, 90), Milestone.DRY_TO_RECOAT)).isInfinite();
    assertThat(hoursTo(steady(Cures.water(), 11, 0.6, 90), Milestone.DRY_TO_RECOAT)).isFinite();
  }

  @Property(tries = 40, seed = "20261125")
  void aThickerCoatIsNeverSooner(
      @ForAll @DoubleRange(min = 20, max = 200) double wetUm,
      @ForAll @IntRange(min = 0, max = 2) int which) {
    Curing curing = Cures.all().get(which);
    for (Milestone m : curing.milestones()) {
      assertThat(hoursTo(steady(curing, 20, 0.6, 1.3 * wetUm), m))
          .isGreaterThanOrEqualTo(hoursTo(steady(curing, 20, 0.6, wetUm), m));
    }
  }

  /** Equivalent time is not the time at the mean: rates curve upward with temperature. */
  @Test
  void aDayAndNightCureOilFasterThanTheirMean() {
    AirCourse swinging = Cures.dayAndNight(16, 8, 0.5, 40);
    double swings = hoursTo(Cures.in(Cures.varnish(), swinging, 80), Milestone.RUB_OUT);
    double mean = hoursTo(steady(Cures.varnish(), 16, 0.5, 80), Milestone.RUB_OUT);
    assertThat(swings / mean).isBetween(0.7, 0.95);
  }

  /** The clock against the same integral in steps of a minute; the goal is one in a thousand. */
  @Test
  void theClockIsExactToOneInAThousandThroughColdNights() {
    AirCourse swinging = Cures.dayAndNight(14, 9, 0.7, 40);
    OxidativeCure varnish = Cures.varnish();
    double hours = hoursTo(Cures.in(varnish, swinging, 80), Milestone.RUB_OUT);
    double worth = 0;
    for (double s = 30; s < hours * HOUR_S; s += 60) {
      worth += varnish.rate(swinging.airTempCAt(s), swinging.rhFractionAt(s)) / 60;
    }
    assertThat(worth).isCloseTo(336, withinPercentage(0.1));
  }

  @Test
  void aColdNightAfterCoatingHoldsWaterborneBackUntilMorning() {
    AirCourse cooling =
        new AirCourse(
            new double[] {0, 3600, 7200, 43_200, 46_800},
            new double[] {18, 18, 11, 11, 20},
            new double[] {0.6, 0.6, 0.9, 0.9, 0.5},
            0.1);
    double night = hoursTo(Cures.in(Cures.water(), cooling, 200), Milestone.DRY_TO_RECOAT);
    double steady = hoursTo(steady(Cures.water(), 18, 0.6, 200), Milestone.DRY_TO_RECOAT);
    assertThat(night).isGreaterThan(1.5 * steady);
  }

  @Test
  void belowItsFilmFormingTemperatureWaterborneReachesNothing() {
    Prediction p = CureEnsemble.predict(steady(Cures.water(), 6, 0.5, 100));
    for (Milestone m : Cures.water().milestones()) {
      assertThat(p.milestone(m).p50()).isEmpty();
    }
  }

  @Test
  void aCoatOnOneThatIsStillSoftTakesLonger() {
    CureCoat second = CureCoat.unthinned(10 * HOUR_S, 80);
    AirCourse air = AirCourse.steady(20, 0.5, 0.1);
    for (Curing curing : List.of(Cures.varnish(), Cures.water())) {
      double soon = recoatHours(stack(curing, CureCoat.unthinned(9.8 * HOUR_S, 80), second, air));
      double alone = recoatHours(stack(curing, CureCoat.unthinned(-500 * HOUR_S, 80), second, air));
      assertThat(soon).isGreaterThan(1.2 * alone);
      assertThat(alone)
          .isCloseTo(hoursTo(steady(curing, 20, 0.5, 80), Milestone.DRY_TO_RECOAT), within(1e-6));
    }
  }

  private static double recoatHours(CureJob job) {
    return hoursTo(job, Milestone.DRY_TO_RECOAT);
  }

  private static CureJob stack(Curing curing, CureCoat first, CureCoat second, AirCourse air) {
    return new CureJob(
        curing,
        List.of(first, second),
        air,
        20,
        Spreads.told(0, 0),
        List.of(),
        second.atS(),
        List.of(),
        0);
  }

  @ParameterizedTest
  @MethodSource("all")
  void aFailedTestMovesTheDatesBackAndAPassedOneForward(Curing curing) {
    AirCourse air = AirCourse.steady(20, 0.5, 0.1);
    double hardS = hoursTo(Cures.in(curing, air, 80), Milestone.DRY_HARD) * HOUR_S;
    double told = rubOutS(curing, air);
    double failed =
        rubOutS(curing, air, new BenchTest.Seen(BenchTest.THUMBNAIL, 1.5 * hardS, false));
    double passed =
        rubOutS(curing, air, new BenchTest.Seen(BenchTest.THUMBNAIL, 0.6 * hardS, true));
    assertThat(failed).isGreaterThan(1.1 * told);
    assertThat(passed).isLessThan(0.9 * told);
  }

  private static double rubOutS(Curing curing, AirCourse air, BenchTest.Seen... tests) {
    return CureEnsemble.predict(Cures.in(curing, air, 80, tests))
        .milestone(Milestone.RUB_OUT)
        .p50()
        .orElseThrow();
  }

  /** A rubbed-out spot that stayed fine teaches this person's own limit most sharply. */
  @Test
  void rubbingOutASpotNarrowsTheDate() {
    AirCourse air = AirCourse.steady(20, 0.5, 0.1);
    double rubS = hoursTo(Cures.in(Cures.varnish(), air, 80), Milestone.RUB_OUT) * HOUR_S;
    Prediction told = CureEnsemble.predict(Cures.in(Cures.varnish(), air, 80));
    Prediction tried =
        CureEnsemble.predict(
            Cures.in(
                Cures.varnish(),
                air,
                80,
                new BenchTest.Seen(BenchTest.RUBBED_OUT, 0.6 * rubS, false),
                new BenchTest.Seen(BenchTest.RUBBED_OUT, rubS, true)));
    assertThat(width(tried)).isLessThan(0.85 * width(told));
    assertThat(tried.effectiveMembers()).isLessThan(told.effectiveMembers());
    assertThat(told.nextTest()).isPresent();
  }

  private static double width(Prediction p) {
    Percentiles rub = p.milestone(Milestone.RUB_OUT);
    return Math.log(rub.p90().orElseThrow() / rub.p10().orElseThrow());
  }

  @ParameterizedTest
  @MethodSource("all")
  void aGapWidensTheRangeAtBothEnds(Curing curing) {
    AirCourse air = AirCourse.steady(20, 0.5, 0.1);
    CureJob seen = Cures.in(curing, air, 80);
    CureJob blind =
        new CureJob(
            curing,
            seen.coats(),
            air,
            20,
            seen.spreads(),
            List.of(),
            seen.nowS(),
            List.of(new EnsembleJob.Gap(600, 40 * HOUR_S)),
            4);
    Percentiles known = CureEnsemble.predict(seen).milestone(Milestone.DRY_HARD);
    Percentiles wide = CureEnsemble.predict(blind).milestone(Milestone.DRY_HARD);
    assertThat(wide.p10().orElseThrow()).isLessThan(known.p10().orElseThrow());
    assertThat(wide.p50().orElseThrow()).isEqualTo(known.p50().orElseThrow());
    assertThat(wide.p90().orElseThrow()).isGreaterThan(known.p90().orElseThrow());
  }

  @Test
  void dewOnTheWoodGivesNoTimes() {
    CureJob wet =
        new CureJob(
            Cures.varnish(),
            List.of(CureCoat.unthinned(0, 80)),
            AirCourse.steady(20, 0.8, 0.1),
            12,
            Spreads.told(0.2, 0),
            List.of(),
            0,
            List.of(),
            0);
    Prediction p = CureEnsemble.predict(wet);
    assertThat(p.condensation()).isTrue();
    assertThat(p.milestones()).isEqualTo(Map.of());
    assertThat(CureEnsemble.predict(wet).recoatUntilS()).isEqualTo(Percentiles.NONE);
  }
}
