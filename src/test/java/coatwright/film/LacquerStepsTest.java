package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import coatwright.air.SaturationFunction;
import coatwright.solvent.Solvent;
import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** The method again, with five volatiles and more: what holds for spirit holds for any list. */
class LacquerStepsTest {
  private static final FilmParameters SET = FilmParameters.LACQUER;
  private static final double UNTIL_S = 7200 + 25 * Jobs.DAY_S;

  private static FilmRun run(SimulationOptions o, FilmJob job) {
    return new FilmSimulation(SET, o).run(job, UNTIL_S);
  }

  @Test
  void itsAnswersDoNotHangOnTheStep() {
    for (LacquerBlend blend : LacquerBlend.ALL) {
      FilmJob job = Jobs.threeOfLacquer(blend, 25, 0.5);
      FilmRun usual = run(SimulationOptions.DEFAULT, job);
      FilmRun fine = run(SimulationOptions.DEFAULT.withTolerance(1e-6), job);
      assertThat(usual.rubOutS().orElseThrow())
          .isCloseTo(fine.rubOutS().orElseThrow(), withinPercentage(0.02));
      for (int i = 0; i < 3; i++) {
        CoatOutcome a = usual.coats().get(i);
        CoatOutcome b = fine.coats().get(i);
        assertThat(a.peakS()).isCloseTo(b.peakS(), within(0.003));
        assertThat(a.filmLowC()).isCloseTo(b.filmLowC(), within(0.005));
        assertThat(a.touchS().orElseThrow())
            .isCloseTo(b.touchS().orElseThrow(), withinPercentage(0.05));
      }
    }
  }

  @Test
  void itsAnswersHardlyHangOnTheGrid() {
    FilmJob job = Jobs.threeOfLacquer(LacquerBlend.SLOWED, 25, 0.5);
    FilmRun usual = run(SimulationOptions.DEFAULT.withMerging(false), job);
    FilmRun fine = run(SimulationOptions.DEFAULT.withGrid(16, 1.35).withMerging(false), job);
    FilmRun merged = run(SimulationOptions.DEFAULT, job);
    assertThat(usual.rubOutS().orElseThrow())
        .isCloseTo(fine.rubOutS().orElseThrow(), withinPercentage(1));
    assertThat(merged.rubOutS().orElseThrow())
        .isCloseTo(usual.rubOutS().orElseThrow(), withinPercentage(0.1));
    assertThat(usual.coats().get(0).peakS()).isCloseTo(fine.coats().get(0).peakS(), within(0.015));
    assertThat(usual.coats().get(2).xBeforeK().orElseThrow())
        .isCloseTo(fine.coats().get(2).xBeforeK().orElseThrow(), within(0.3));
  }

  @Test
  void aTraceOfAnotherSolventChangesNothing() {
    LacquerBlend traced =
        new LacquerBlend(
            "traced",
            List.of(
                new LacquerBlend.Part(Solvent.ACETONE, 30),
                new LacquerBlend.Part(Solvent.TOLUENE, 30),
                new LacquerBlend.Part(Solvent.BUTYL_ACETATE, 39.998),
                new LacquerBlend.Part(Solvent.BUTOXYETHANOL, 0.001),
                new LacquerBlend.Part(Solvent.BUTANOL, 0.001)));
    CoatOutcome plain =
        run(SimulationOptions.DEFAULT, Jobs.oneOfLacquer(LacquerBlend.REGULAR, 28, 0.8)).lastCoat();
    CoatOutcome more =
        run(SimulationOptions.DEFAULT, Jobs.oneOfLacquer(traced, 28, 0.8)).lastCoat();
    assertThat(more.peakS()).isCloseTo(plain.peakS(), within(1e-3));
    assertThat(more.touchS().orElseThrow())
        .isCloseTo(plain.touchS().orElseThrow(), withinPercentage(0.1));
  }

  @Test
  void allocatesNothingWhileItSteps() {
    var bean = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    var coarse = new FilmSimulation(SET, SimulationOptions.DEFAULT.withTolerance(1e-3));
    var fine = new FilmSimulation(SET, SimulationOptions.DEFAULT.withTolerance(1e-6));
    FilmJob job = Jobs.threeOfLacquer(LacquerBlend.SLOWED, 20, 0.5);
    for (int i = 0; i < 5; i++) {
      coarse.run(job, UNTIL_S);
      fine.run(job, UNTIL_S);
    }
    long start = bean.getCurrentThreadAllocatedBytes();
    FilmRun few = coarse.run(job, UNTIL_S);
    long middle = bean.getCurrentThreadAllocatedBytes();
    FilmRun many = fine.run(job, UNTIL_S);
    long end = bean.getCurrentThreadAllocatedBytes();
    assertThat(many.work().steps()).isGreaterThan(3 * few.work().steps());
    assertThat(end - middle).isLessThanOrEqualTo(middle - start + 64);
    assertThat(end - middle).isLessThan(20_000);
  }

  @Property(tries = 100, seed = "20261125")
  void survivesEveryShopItMayMeet(
      @ForAll @DoubleRange(min = 5, max = 38) double airC,
      @ForAll @DoubleRange(min = 0.15, max = 0.97) double rh,
      @ForAll @DoubleRange(min = 0, max = 40) double woodC,
      @ForAll @DoubleRange(min = 5, max = 45) double solidsPct,
      @ForAll @DoubleRange(min = 25, max = 200) double wetUm,
      @ForAll @DoubleRange(min = 0, max = 60) double thinnerPct,
      @ForAll @DoubleRange(min = 0, max = 2) double draught,
      @ForAll @IntRange(min = 0, max = 2) int can,
      @ForAll @IntRange(min = 0, max = 2) int thinner) {
    LaidCoat coat =
        new LaidCoat(
            0,
            wetUm,
            new Poured.Lacquer(
                solidsPct, LacquerBlend.ALL.get(can), thinnerPct, LacquerBlend.ALL.get(thinner)),
            OptionalDouble.empty());
    var job =
        new FilmJob(
            List.of(coat, coat.at(2400)),
            AirCourse.steady(airC, rh, draught),
            woodC,
            FilmJob.USUAL_BOARD_MM,
            SaturationFunction.HYLAND_WEXLER_WATER);
    double until = 2400 + 5 * Jobs.DAY_S;
    var run = new FilmSimulation(SET, SimulationOptions.DEFAULT).run(job, until, until);
    for (CoatOutcome o : run.coats()) {
      assertThat(o.peakS()).isFinite().isNotNegative();
      assertThat(o.filmLowC()).isBetween(-25.0, Math.max(airC, woodC) + 0.1);
      assertThat(o.hazePeak().orElseThrow()).isBetween(0.0, 1.0);
    }
    FilmSample end = run.trace().get(0);
    assertThat(end.filmTempC()).isCloseTo(airC, within(0.5));
  }
}
