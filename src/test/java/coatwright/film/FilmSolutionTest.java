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
  private final FilmSolution solution = spirit(FilmParameters.SHELLAC);

  private static FilmSolution spirit(FilmParameters p) {
    return FilmSolution.of(p, Jobs.spirit(p, 3));
  }

  private static double[] activities(FilmSolution s, double... u) {
    double[] a = new double[3];
    s.activities(u, 0, a);
    return a;
  }

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
    FilmSolution s = spirit(p);
    double e = r.number("u_e");
    double w = r.number("u_w");
    double b = r.number("u_r");
    double[] u = {e, w, b};
    double[] a = activities(s, u);
    if (e > 0) {
      assertThat(a[0]).isCloseTo(r.number("a_e"), relative(r.number("a_e")));
    }
    if (b > 0) {
      assertThat(a[2]).isCloseTo(r.number("a_r"), relative(r.number("a_r")));
    }
    assertThat(a[1]).isCloseTo(r.number("a_w"), relative(r.number("a_w")));
    assertThat(s.glassK(u, 0)).isCloseTo(r.number("Tg_K"), relative(r.number("Tg_K")));
    assertThat(s.waterLimit(u, 0))
        .isCloseTo(r.number("spin_phi_w"), relative(r.number("spin_phi_w")));
    FilmGrid grid = new FilmGrid(s.species, 1, SimulationOptions.DEFAULT);
    double d = new FilmEquations(p, grid, s).diffusivity(u, 293.15);
    assertThat(d).isCloseTo(r.number("D_20C"), relative(r.number("D_20C")));
  }

  private static Offset<Double> relative(double value) {
    return within(1e-8 * value);
  }

  @Test
  void pressesInProportionToItsTraceThroughZero() {
    double above = activities(solution, 1e-9, 0.02, 0)[0];
    assertThat(activities(solution, -1e-9, 0.02, 0)[0]).isCloseTo(-above, within(1e-6 * above));
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
    double[] u = {e, w, r};
    for (double a : activities(solution, u)) {
      assertThat(a).isFinite();
    }
    assertThat(solution.waterLimit(u, 0)).isPositive();
    assertThat(solution.glassK(u, 0)).isBetween(90.0, 330.0);
  }

  @Property(tries = 300, seed = "20261125")
  void moreWaterInTheSameFilmIsAlwaysCloserToClouding(
      @ForAll @DoubleRange(min = 0.3, max = 8) double e,
      @ForAll @Scale(4) @DoubleRange(min = 0.001, max = 0.5) double w) {
    double[] wetter = {e, w * 1.1, 0};
    assertThat(solution.blush(wetter, 0)).isGreaterThan(solution.blush(new double[] {e, w, 0}, 0));
  }
}
