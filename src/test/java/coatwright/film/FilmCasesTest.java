package coatwright.film;

import static coatwright.air.SaturationFunction.MAGNUS_WATER;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import coatwright.film.ReferenceTable.Row;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Weather, spirit, retarder, thickness, cut, draught and wood, each changed in turn, against our
 * own independent prototype. Its times come from straight lines on a coarse grid, hence the wide
 * limits on rest, rub-out and hardness.
 */
class FilmCasesTest {
  private static final SimulationOptions SIX_CELLS =
      new SimulationOptions(6, 2.2, 1e-4, false, true, 2);
  private static final SimulationOptions EIGHT_CELLS =
      new SimulationOptions(8, 1.8, 1e-4, true, false, 2);
  private static final SimulationOptions FOUR_CELLS =
      new SimulationOptions(4, 2.5, 1e-4, false, true, 2);

  static Stream<Arguments> cases() {
    return Stream.of("reference", "shellac")
        .flatMap(
            set ->
                ReferenceTable.read(set + "/cases.csv").stream()
                    .map(row -> Arguments.of(set, row.text("case"), row)));
  }

  @ParameterizedTest(name = "{0}: {1}")
  @MethodSource("cases")
  void agreesOnClouding(String set, String name, Row r) {
    var simulation = new FilmSimulation(Jobs.asTabulated(set), SIX_CELLS);
    var coat = simulation.run(job(r, List.of(coat(r))), 3600).lastCoat();
    assertThat(coat.peakS()).isCloseTo(r.number("S"), within(0.002));
    if (coat.condensation()) {
      return; // no times are given; the film's lowest temperature is not a coating's
    }
    assertThat(coat.filmLowC()).isCloseTo(r.number("Tmin"), within(0.01));
    assertThat(coat.filmMinusDewK()).isCloseTo(r.number("dTdew"), within(0.01));
    assertThat(coat.hazePeak().orElseThrow()).isCloseTo(r.number("haze_peak"), within(0.005));
    double locked = r.number("haze_locked");
    assertThat(coat.hazeAt1h().orElseThrow())
        .isCloseTo(locked, within(Math.max(0.006, 0.1 * locked)));
    assertThat(coat.bloomS().orElseThrow()).isCloseTo(r.number("bloom_s"), within(3.0));
    assertThat(coat.openTimeS().orElseThrow()).isCloseTo(r.number("open_s"), withinPercentage(0.1));
    assertThat(coat.touchS().orElseThrow() / 60)
        .isCloseTo(r.number("touch_min"), withinPercentage(0.1));
    assertThat(coat.recoatS().orElseThrow() / 60)
        .isCloseTo(r.number("recoat_min"), withinPercentage(0.1));
  }

  @ParameterizedTest(name = "{0}: {1}")
  @MethodSource("cases")
  void agreesOnSixCoatsAndHardening(String set, String name, Row r) {
    var simulation = new FilmSimulation(Jobs.asTabulated(set), EIGHT_CELLS);
    var run = simulation.run(job(r, Jobs.sixTimes(coat(r))), 8700 + 40 * Jobs.DAY_S, 3600);
    double airC = r.number("airTempC");
    assertThat(run.coats().get(3).xBeforeK().orElseThrow())
        .isCloseTo(r.number("x_pre4"), within(0.03));
    assertThat(run.coats().get(5).xBeforeK().orElseThrow())
        .isCloseTo(r.number("x_pre6"), within(0.03));
    assertThat(airC - run.trace().get(0).tgMeanC()).isCloseTo(r.number("x15_coat4"), within(0.5));
    if (run.condensation()) {
      assertThat(run.rubOutS()).isEmpty();
      return;
    }
    reachedAlike(run.rubOutS(), Jobs.DAY_S, r.number("rub_d"), 1);
    reachedAlike(run.fullHardnessS(), Jobs.DAY_S, r.number("hard_d"), 1);
    OptionalDouble rested = run.coats().get(3).restedS();
    reachedAlike(rested, 60, r.number("rest_min"), 1);
  }

  private static void reachedAlike(
      OptionalDouble seconds, double unitS, double expected, double withinPct) {
    if (Double.isInfinite(expected)) {
      assertThat(seconds).isEmpty();
    } else {
      assertThat(seconds.orElseThrow() / unitS).isCloseTo(expected, withinPercentage(withinPct));
    }
  }

  static Stream<Arguments> map() {
    return Stream.of("reference", "shellac")
        .flatMap(
            set ->
                ReferenceTable.read(set + "/blush_map.csv").stream()
                    .map(row -> Arguments.of(set, row.number("T_C"), row.number("RH"), row)));
  }

  @ParameterizedTest(name = "{0}: {1} C {2}")
  @MethodSource("map")
  void agreesOnTheBlushMapOnTheSameFourCells(String set, double airC, double rh, Row r) {
    var simulation = new FilmSimulation(Jobs.set(set), FOUR_CELLS);
    var job = Jobs.job(List.of(Jobs.usualCoat()), airC, rh, MAGNUS_WATER);
    var coat = simulation.run(job, 3600).lastCoat();
    assertThat(coat.peakS()).isCloseTo(r.number("S_max"), within(0.002));
    assertThat(coat.filmMinusDewK()).isCloseTo(r.number("film_minus_dew_min_K"), within(0.02));
    assertThat(coat.hazePeak().orElseThrow()).isCloseTo(r.number("haze_peak"), within(0.005));
    assertThat(coat.hazeAt1h().orElseThrow()).isCloseTo(r.number("haze_after_1h"), within(0.002));
  }

  private static LaidCoat coat(Row r) {
    return Jobs.coat(
        r.number("wetFilmUm"),
        r.number("cutLb"),
        r.number("strengthVolPct"),
        r.number("retarderVolPct"));
  }

  private static FilmJob job(Row r, List<LaidCoat> coats) {
    return new FilmJob(
        coats,
        AirCourse.steady(r.number("airTempC"), r.number("rhFraction"), r.number("draughtMPerS")),
        r.number("woodTempC"),
        FilmJob.USUAL_BOARD_MM,
        MAGNUS_WATER);
  }
}
