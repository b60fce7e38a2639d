package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FilmEquationsTest {
  private static final SimulationOptions UNMERGED = SimulationOptions.DEFAULT.withMerging(false);

  /** A two-coat stack in mid-air: every cell different, solvents within. */
  private static final class Stack {
    final FilmGrid grid;
    final FilmEquations equations;
    final double[] y;
    final double[] f;

    Stack(int species, FilmParameters p, AirCourse air) {
      boolean lacquer = p.medium() instanceof Medium.Lacquer;
      LaidCoat coat = lacquer ? Jobs.slowLacquer() : Jobs.coat(75, 1.5, 95, species > 2 ? 2 : 0);
      Species volatiles = Species.of(p, List.of(coat));
      assertThat(volatiles.count).isEqualTo(species);
      grid = new FilmGrid(volatiles, 2, UNMERGED);
      equations = new FilmEquations(p, grid, FilmSolution.of(p, volatiles));
      y = new double[grid.mostUnknowns()];
      f = new double[grid.mostUnknowns()];
      grid.clear(0.018);
      FilmJob job = FilmJob.of(List.of(coat), air, 20);
      grid.lay(coat, y);
      grid.lay(coat, y);
      equations.prepare(job, new AirCursor(air, 0));
      Random random = new Random(7);
      double[] most = {2, 0.2, 0.05, 1, 0.5};
      for (int j = 0; j < grid.cells; j++) {
        for (int s = 0; s < species; s++) {
          y[j * species + s] = most[s] * (0.02 + random.nextDouble());
        }
      }
      y[grid.film()] = 287;
      for (int i = 0; i < FilmGrid.WOOD_CELLS; i++) {
        y[grid.film() + 1 + i] = 289 + 0.4 * i;
      }
    }
  }

  /** Shellac with two or three volatiles, lacquer with five; water loosens the second of each. */
  private static List<FilmParameters> setsOf(int species) {
    return species < 5
        ? List.of(FilmParameters.SHELLAC, FilmParameters.REFERENCE)
        : List.of(
            FilmParameters.LACQUER,
            FilmParameters.LACQUER.withDiffusion(FilmParameters.REFERENCE.diffusion()));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 5})
  void hasTheJacobianThatCentralDifferencesGive(int species) {
    for (FilmParameters p : setsOf(species)) {
      Stack s = new Stack(species, p, AirCourse.steady(22, 0.6, 0.3));
      int n = s.grid.unknowns();
      ArrowMatrix matrix = ArrowMatrix.of(species, s.grid.thickness.length);
      s.equations.rates(0, s.y, s.f);
      s.equations.jacobian(s.y, s.f, matrix);
      double[] up = new double[n];
      double[] down = new double[n];
      double[] unit = new double[n];
      double[] exact = new double[n];
      for (int k = 0; k < n; k++) {
        double was = s.y[k];
        double d = 1e-5 * Math.max(0.1, Math.abs(was)) * (k >= s.grid.film() ? 0.01 : 1);
        s.y[k] = was + d;
        s.equations.rates(0, s.y, up);
        s.y[k] = was - d;
        s.equations.rates(0, s.y, down);
        s.y[k] = was;
        unit[k] = 1;
        matrix.multiply(unit, exact);
        unit[k] = 0;
        double size = 0;
        for (int i = 0; i < n; i++) {
          size = Math.max(size, Math.abs(exact[i]));
        }
        for (int i = 0; i < n; i++) {
          double difference = (up[i] - down[i]) / (2 * d);
          assertThat(exact[i])
              .as("d rate %d by unknown %d", i, k)
              .isCloseTo(difference, within(1e-5 * Math.abs(difference) + 1e-6 * size));
        }
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 5})
  void solvesWhatItFactored(int species) {
    Stack s = new Stack(species, setsOf(species).get(0), AirCourse.steady(22, 0.6, 0.3));
    int n = s.grid.unknowns();
    ArrowMatrix matrix = ArrowMatrix.of(species, s.grid.thickness.length);
    s.equations.rates(0, s.y, s.f);
    s.equations.jacobian(s.y, s.f, matrix);
    Random random = new Random(3);
    double[] wanted = random.doubles(n, -1, 1).toArray();
    for (double shift : new double[] {1e-5, 0.2, 40}) {
      double[] x = new double[n];
      matrix.multiply(wanted, x);
      for (int i = 0; i < n; i++) {
        x[i] = shift * wanted[i] - x[i];
      }
      matrix.factor(shift);
      matrix.solve(x);
      for (int i = 0; i < n; i++) {
        assertThat(x[i]).isCloseTo(wanted[i], within(1e-7));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3})
  void theBlocksWrittenOutSolveAsTheLoopsDo(int species) {
    Stack s = new Stack(species, FilmParameters.SHELLAC, AirCourse.steady(22, 0.6, 0.3));
    ArrowMatrix writtenOut = ArrowMatrix.of(species, s.grid.thickness.length);
    ArrowMatrix loops = new ArrowMatrixOfMany(species, s.grid.thickness.length);
    s.equations.rates(0, s.y, s.f);
    s.equations.jacobian(s.y, s.f, writtenOut);
    s.equations.jacobian(s.y, s.f, loops);
    double[] one = s.f.clone();
    double[] other = s.f.clone();
    writtenOut.factor(0.2);
    writtenOut.solve(one);
    loops.factor(0.2);
    loops.solve(other);
    for (int i = 0; i < s.grid.unknowns(); i++) {
      assertThat(other[i]).isCloseTo(one[i], within(1e-11 * Math.abs(one[i]) + 1e-15));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 5})
  void losesInTheFilmExactlyWhatLeavesItsSurface(int species) {
    Stack s = new Stack(species, setsOf(species).get(1), AirCourse.steady(26, 0.8, 0.3));
    s.equations.rates(0, s.y, s.f);
    for (int i = 0; i < species; i++) {
      double content = 0;
      double turnover = 0;
      for (int j = 0; j < s.grid.cells; j++) {
        double change = s.f[j * species + i] * s.grid.thickness[j];
        content += change;
        turnover += Math.abs(change);
      }
      double leaves = s.equations.evaporation(0, s.y, i);
      assertThat(content + leaves).isCloseTo(0, within(1e-12 * turnover));
    }
  }

  @Test
  void warmsTheWoodByWhatTheFilmGivesIt() {
    Stack s = new Stack(2, FilmParameters.SHELLAC, AirCourse.steady(22, 0.6, 0.3));
    s.equations.rates(0, s.y, s.f);
    var around = FilmParameters.SHELLAC.surroundings();
    double gained = 0;
    for (int i = 0; i < FilmGrid.WOOD_CELLS; i++) {
      gained +=
          s.f[s.grid.film() + 1 + i]
              * s.grid.wood[i]
              * around.woodDensityKgPerM3()
              * around.woodHeatJPerKgK();
    }
    double conduction =
        around.woodConductivityWPerMK()
            / (s.grid.wood[0] / 2)
            * (s.y[s.grid.film()] - s.y[s.grid.film() + 1]);
    assertThat(gained).isCloseTo(conduction, within(1e-10 * Math.abs(conduction)));
  }

  @Test
  void conservesEveryVolumeWhenAnOldCoatIsMerged() {
    FilmGrid grid =
        new FilmGrid(Jobs.spirit(FilmParameters.SHELLAC, 2), 3, SimulationOptions.DEFAULT);
    double[] y = new double[grid.mostUnknowns()];
    grid.clear(0.018);
    grid.lay(Jobs.usualCoat(), y);
    for (int j = 0; j < grid.cells; j++) {
      y[2 * j] = 0.1 * (j + 1);
      y[2 * j + 1] = 0.01 * (j + 1);
      grid.haze[j] = 0.1 * j;
    }
    double spirit = content(grid, y, 0);
    double water = content(grid, y, 1);
    double haze = 0;
    for (int j = 0; j < grid.cells; j++) {
      haze += grid.haze[j] * grid.thickness[j];
    }
    double resin = grid.resinM;
    grid.lay(Jobs.usualCoat().at(900), y);
    assertThat(grid.cells).isEqualTo(3 + 8);
    int old = 3;
    double mergedSpirit = 0;
    double mergedWater = 0;
    double mergedHaze = 0;
    double mergedResin = 0;
    for (int j = 0; j < old; j++) {
      mergedSpirit += y[2 * j] * grid.thickness[j];
      mergedWater += y[2 * j + 1] * grid.thickness[j];
      mergedHaze += grid.haze[j] * grid.thickness[j];
      mergedResin += grid.thickness[j];
    }
    assertThat(mergedSpirit).isCloseTo(spirit, within(1e-12 * spirit));
    assertThat(mergedWater).isCloseTo(water, within(1e-12 * water));
    assertThat(mergedHaze).isCloseTo(haze, within(1e-12 * haze));
    assertThat(mergedResin).isCloseTo(resin, within(1e-12 * resin));
  }

  private static double content(FilmGrid grid, double[] y, int species) {
    double sum = 0;
    for (int j = 0; j < grid.cells; j++) {
      sum += y[2 * j + species] * grid.thickness[j];
    }
    return sum;
  }

  @Test
  void makesTheTopCellUnderOnePerCentOfTheCoat() {
    FilmGrid grid =
        new FilmGrid(Jobs.spirit(FilmParameters.SHELLAC, 2), 1, SimulationOptions.DEFAULT);
    grid.clear(0.018);
    grid.lay(Jobs.usualCoat(), new double[grid.mostUnknowns()]);
    assertThat(grid.thickness[7] / grid.newestM).isCloseTo(0.0073, within(1e-4));
  }

  /** USDA Wood Handbook, chapter 4, at 9 % moisture and specific gravity 0.55. */
  @Test
  void boardsOfTheReferenceShopHaveTheHandbooksHeatConstants() {
    var around = FilmParameters.SHELLAC.surroundings();
    assertThat(around.woodConductivityWPerMK()).isCloseTo(0.1455118, within(1e-7));
    assertThat(around.woodDensityKgPerM3()).isCloseTo(599.5, within(1e-9));
    assertThat(around.woodHeatJPerKgK()).isCloseTo(1534.4225, within(1e-3));
  }
}
