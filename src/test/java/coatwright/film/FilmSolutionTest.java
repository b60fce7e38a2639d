package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.film.ReferenceTable.Row;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class FilmSolutionTest {
  private final FilmSolution solution = new FilmSolution(FilmParameters.SHELLAC.solution());

  static Stream<Arguments> points() {
    return Stream.of("reference", "shellac")
        .flatMap(
            set ->
                ReferenceTable.read(set + "/points.csv").stream()
                    .map(row -> Arguments.of(set, row)));
  }

  /** Our own prototype, to the ten digits it prints. */
  @ParameterizedTest
  @MethodSource("points")
  void hasTheActivitiesGlassTransitionsAndLimitsOfOurPrototype(String set, Row r) {
    FilmParameters p = Jobs.set(set);
    FilmSolution s = new FilmSolution(p.solution());
    double e = r.number("u_e");
    double w = r.number("u_w");
    double b = r.number("u_r");
    s.activities(e, w, b);
    if (e > 0) {
      assertThat(s.aE).isCloseTo(r.number("a_e"), relative(r.number("a_e")));
    }
    if (b > 0) {
      assertThat(s.aR).isCloseTo(r.number("a_r"), relative(r.number("a_r")));
    }
    assertThat(s.aW).isCloseTo(r.number("a_w"), relative(r.number("a_w")));
    assertThat(s.glassK(e, w, b)).isCloseTo(r.number("Tg_K"), relative(r.number("Tg_K")));
    assertThat(s.waterLimit(e, w, b))
        .isCloseTo(r.number("spin_phi_w"), relative(r.number("spin_phi_w")));
    FilmGrid grid = new FilmGrid(3, 1, SimulationOptions.DEFAULT);
    double d = new FilmEquations(p, grid, s).diffusivity(e, w, b, 293.15);
    assertThat(d).isCloseTo(r.number("D_20C"), relative(r.number("D_20C")));
  }

  private static Offset<Double> relative(double value) {
    return within(1e-8 * value);
  }

  @Test
  void pressesInProportionToItsTraceThroughZero() {
    solution.activities(1e-9, 0.02, 0);
    double above = solution.aE;
    solution.activities(-1e-9, 0.02, 0);
    assertThat(solution.aE).isCloseTo(-above, within(1e-6 * above));
  }

  @Test
  void aDryFilmAtHalfHumidityHoldsOneAndThreeQuarterPerCentOfWater() {
    double water = MoistureRest.water(solution, 0.5);
    assertThat(water / (1 + water)).isCloseTo(0.0171, within(5e-4));
  }

  @Test
  void softensFromGlassToLiquidByTheUniversalCurve() {
    assertThat(FilmSolution.lnViscosity(0) / Math.log(10)).isCloseTo(12, within(1e-12));
    assertThat(FilmSolution.lnViscosity(20.7) / Math.log(10)).isCloseTo(7, within(0.01));
    assertThat(FilmSolution.lnViscosity(55) / Math.log(10)).isCloseTo(3, within(0.01));
    assertThat(FilmSolution.lnViscosity(-50) / Math.log(10)).isCloseTo(20, within(1e-12));
  }

  @Property(tries = 500, seed = "20261125")
  void neverLeavesTheNumbers(
      @ForAll @Scale(7) @DoubleRange(min = -1e-6, max = 30) double e,
      @ForAll @Scale(7) @DoubleRange(min = -1e-6, max = 5) double w,
      @ForAll @Scale(7) @DoubleRange(min = -1e-6, max = 2) double r) {
    solution.activities(e, w, r);
    assertThat(solution.aE).isFinite();
    assertThat(solution.aW).isFinite();
    assertThat(solution.aR).isFinite();
    assertThat(solution.waterLimit(e, w, r)).isPositive();
    assertThat(solution.glassK(e, w, r)).isBetween(90.0, 330.0);
  }

  @Property(tries = 300, seed = "20261125")
  void moreWaterInTheSameFilmIsAlwaysCloserToClouding(
      @ForAll @DoubleRange(min = 0.3, max = 8) double e,
      @ForAll @Scale(4) @DoubleRange(min = 0.001, max = 0.5) double w) {
    assertThat(solution.blush(e, w * 1.1, 0)).isGreaterThan(solution.blush(e, w, 0));
  }
}
