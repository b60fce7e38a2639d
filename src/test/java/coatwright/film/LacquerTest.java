package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import coatwright.air.SaturationFunction;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import coatwright.solvent.Solvent;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Lacquer against our own prototype, and against what finishers see (common practice, no source).
 */
class LacquerTest {
  private static final FilmParameters SET = FilmParameters.LACQUER;
  private static final FilmSimulation FULL = new FilmSimulation(SET, SimulationOptions.DEFAULT);

  /** As one well-mixed cell on the board of our own prototype. */
  static final FilmSimulation LUMP =
      new FilmSimulation(
          SET.withSurroundings(new FilmParameters.Surroundings(0.14, 600, 1700, 3.0, 0.3, 0.9)),
          SimulationOptions.DEFAULT.withGrid(1, 2));

  static Stream<Row> rows() {
    return ReferenceTable.read("film/lacquer.csv").stream();
  }

  private static CoatOutcome first(
      FilmSimulation simulation, String blend, double airC, double rh) {
    return simulation
        .run(
            Jobs.job(
                List.of(Jobs.lacquer(LacquerBlend.named(blend).orElseThrow())),
                airC,
                rh,
                SaturationFunction.HYLAND_WEXLER_WATER),
            86_400)
        .lastCoat();
  }

  /**
   * As one cell on the prototype's board; its heat capacity does not fall as the solvents leave.
   */
  @ParameterizedTest(name = "{0}")
  @MethodSource("rows")
  void asOneLumpAgreesWithOurOwnPrototype(Row row) {
    CoatOutcome c = first(LUMP, row.text("blend"), row.number("air_c"), row.number("rh"));
    assertThat(c.touchS().orElseThrow() / 60)
        .isCloseTo(row.number("touch_min"), withinPercentage(1));
    assertThat(c.filmLowC()).isCloseTo(row.number("film_low_c"), within(0.05));
    assertThat(c.filmMinusDewK()).isCloseTo(row.number("film_minus_dew_k"), within(0.05));
    assertThat(c.peakS()).isCloseTo(row.number("water_activity"), withinPercentage(0.5));
  }

  @Test
  void quickBlendsCloudFirstAndASlowEtherHelps() {
    for (double rh : new double[] {0.5, 0.8}) {
      CoatOutcome fast = first(FULL, "fast", 28, rh);
      CoatOutcome regular = first(FULL, "regular", 28, rh);
      CoatOutcome slowed = first(FULL, "slowed", 28, rh);
      assertThat(fast.peakS()).isGreaterThan(1.2 * regular.peakS());
      assertThat(regular.peakS()).isGreaterThan(slowed.peakS());
      assertThat(fast.filmMinusDewK()).isLessThan(regular.filmMinusDewK() - 1);
      assertThat(fast.touchS().orElseThrow()).isLessThan(regular.touchS().orElseThrow());
      assertThat(regular.touchS().orElseThrow()).isLessThan(slowed.touchS().orElseThrow());
    }
  }

  @Test
  void cloudsInDampWarmAirAndNotInTheUsualShop() {
    CoatOutcome damp = first(FULL, "fast", 28, 0.8);
    assertThat(damp.peakS()).isGreaterThan(1.2);
    assertThat(damp.filmMinusDewK()).isNegative();
    assertThat(damp.bloomS().orElseThrow()).isGreaterThan(30);
    for (LacquerBlend blend : LacquerBlend.ALL) {
      CoatOutcome usual = first(FULL, blend.name(), 20, 0.5);
      assertThat(usual.peakS()).isLessThan(0.9);
      assertThat(usual.bloomS().orElseThrow()).isZero();
    }
  }

  /**
   * One to two weeks, an hour between coats: common practice, no source; the figures were set so.
   */
  @Test
  void threeCoatsRubOutWithinTwoWeeksAndAreReadyForAnotherWithinTheHour() {
    FilmRun run =
        FULL.run(Jobs.threeOfLacquer(LacquerBlend.REGULAR, 25, 0.5), 7200 + 40 * Jobs.DAY_S);
    assertThat(run.rubOutS().orElseThrow() / Jobs.DAY_S).isBetween(7.0, 14.0);
    assertThat(run.lastCoat().recoatS().orElseThrow() / 60).isBetween(40.0, 60.0);
    assertThat(run.rubOutS().orElseThrow()).isLessThan(run.fullHardnessS().orElseThrow());
  }

  @Test
  void whatIsNotReachedIsAbsent() {
    FilmRun run = FULL.run(Jobs.threeOfLacquer(LacquerBlend.SLOWED, 20, 0.5), 7200 + Jobs.DAY_S);
    assertThat(run.rubOutS()).isEmpty();
    assertThat(run.fullHardnessS()).isEmpty();
    assertThat(run.dryHardS()).isPresent();
    FilmRun dew =
        FULL.run(
            FilmJob.of(
                List.of(Jobs.lacquer(LacquerBlend.FAST)), AirCourse.steady(25, 0.8, 0.1), 15),
            3600);
    assertThat(dew.condensation()).isTrue();
    assertThat(dew.lastCoat().touchS()).isEmpty();
  }

  /** A trace of water presses by its coefficient: for a tenth of a per mille in pure toluene. */
  @Test
  void waterPressesTheMoreTheLessItIsLiked() {
    double[] pressures = new double[2];
    int i = 0;
    for (LacquerBlend blend : List.of(pure(Solvent.ACETONE), pure(Solvent.TOLUENE))) {
      Species species = Species.of(SET, List.of(Jobs.lacquer(blend)));
      FilmSolution solution = FilmSolution.of(SET, species);
      double[] u = {1e6, 1e2};
      double moles = u[0] / species.volume[0] + u[1] / species.volume[1];
      double share = u[1] / species.volume[1] / moles;
      double[] a = new double[2];
      solution.activities(u, 0, a);
      pressures[i++] = a[1] / share;
      assertThat(solution.blush(u, 0)).isCloseTo(a[1], withinPercentage(1e-9));
    }
    assertThat(pressures[0]).isCloseTo(6, withinPercentage(0.5));
    assertThat(pressures[1]).isCloseTo(300, withinPercentage(1));
  }

  private static LacquerBlend pure(Solvent solvent) {
    return new LacquerBlend("pure", List.of(new LacquerBlend.Part(solvent, 100)));
  }

  @Test
  void thinningPoursTheSumOfBothCans() {
    var thinned = new Poured.Lacquer(30, LacquerBlend.REGULAR, 40, LacquerBlend.FAST);
    double all = 0;
    for (Solvent s : thinned.solvents()) {
      all += thinned.perResin(s);
    }
    assertThat(thinned.solidsFraction()).isCloseTo(0.18, within(1e-12));
    assertThat(all).isCloseTo(0.82 / 0.18, within(1e-9));
    assertThat(thinned.perResin(Solvent.ACETONE))
        .isCloseTo((0.6 * 0.7 * 0.3 + 0.4 * 0.6) / 0.18, within(1e-9));
  }

  @Test
  void refusesBlendsThatCannotBe() {
    assertThatThrownBy(
            () -> new LacquerBlend("short", List.of(new LacquerBlend.Part(Solvent.ACETONE, 60))))
        .hasMessageContaining("60.00 %; they must make 100");
    assertThatThrownBy(() -> pure(Solvent.WATER)).hasMessageContaining("names water");
    assertThatThrownBy(() -> LaidCoat.lacquer(0, 100, 1, LacquerBlend.FAST, 0))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("solids by volume is 1");
    assertThatThrownBy(() -> Jobs.lacquer(LacquerBlend.FAST).cutGPerL())
        .hasMessageContaining("no cut");
    assertThatThrownBy(() -> new LacquerDrying(FilmParameters.SHELLAC, LacquerBlend.FAST, 20, 0.1))
        .hasMessageContaining("shellac is none");
  }

  @Test
  void theEnsembleTellsARangeOfIt() {
    FilmJob job = Jobs.oneOfLacquer(LacquerBlend.REGULAR, 28, 0.8);
    Prediction p =
        Ensemble.predict(EnsembleJob.untested(SET, job, new Spreads(0.2, 0.15, 0, 0, 0, 0, 0)));
    OptionalDouble p90 = p.peakS().p90();
    assertThat(p90.orElseThrow()).isGreaterThan(p.peakS().p50().orElseThrow() + 0.01);
    Percentiles rub = p.milestone(Milestone.RUB_OUT);
    assertThat(rub.p90().orElseThrow()).isGreaterThan(2 * rub.p10().orElseThrow());
  }
}
