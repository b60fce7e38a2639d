package coatwright.film;

import static coatwright.air.SaturationFunction.MAGNUS_WATER;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Against our own independent prototype (Python, same equations; see the README beside the tables):
 * agreement of two implementations, not truth. Same grids, Magnus water vapour.
 */
class FilmAgainstOwnPrototypeTest {
  private static final SimulationOptions SAME_GRID =
      new SimulationOptions(8, 1.8, 1e-4, false, true, Double.POSITIVE_INFINITY);

  @ParameterizedTest(name = "{0} {1} C {2} %")
  @CsvSource({
    "reference, 20, 50", "reference, 28, 80", "reference, 15, 70", "reference, 24, 50",
    "shellac, 20, 50", "shellac, 28, 80", "shellac, 15, 70", "shellac, 24, 50"
  })
  void followsTheFirstHalfHourOfOneCoatAtTheUsualTolerance(String set, double airC, double rhPct) {
    compareOneCoat(set, airC, rhPct, 1e-4, new Allowed(0.01, 1e-4, 0.02, 0.05, 0.005, 0.003));
  }

  @ParameterizedTest(name = "{0} {1} C {2} %")
  @CsvSource({"reference, 28, 80", "shellac, 20, 50", "shellac, 28, 80"})
  void followsItAHundredTimesCloserAtATightTolerance(String set, double airC, double rhPct) {
    compareOneCoat(set, airC, rhPct, 1e-6, new Allowed(1e-4, 2e-6, 5e-4, 1e-3, 1e-5, 2e-5));
  }

  private record Allowed(
      double filmK, double u, double glassK, double skinK, double blush, double haze) {}

  private static void compareOneCoat(
      String set, double airC, double rhPct, double rtol, Allowed allowed) {
    var rows = ReferenceTable.read("%s/coat1_%.0f_%.0f.csv".formatted(set, airC, rhPct));
    double[] times = rows.stream().mapToDouble(r -> r.number("t")).toArray();
    var simulation = new FilmSimulation(Jobs.set(set), SAME_GRID.withTolerance(rtol));
    var job = Jobs.job(List.of(Jobs.usualCoat()), airC, rhPct / 100, MAGNUS_WATER);
    var trace = simulation.run(job, 1800, times).trace();
    assertThat(trace).hasSameSizeAs(rows);
    for (int i = 0; i < rows.size(); i++) {
      compare(rows.get(i), trace.get(i), allowed);
    }
  }

  @ParameterizedTest(name = "{0} {1} C")
  @CsvSource({
    "reference, 15",
    "reference, 20",
    "reference, 24",
    "shellac, 15",
    "shellac, 20",
    "shellac, 24"
  })
  void followsSixCoatsAndTwelveDays(String set, double airC) {
    var rows = ReferenceTable.read("%s/stack_%.0f_50.csv".formatted(set, airC));
    double[] times = rows.stream().mapToDouble(r -> r.number("t")).toArray();
    var simulation = new FilmSimulation(Jobs.set(set), SAME_GRID.withTolerance(1e-5));
    var job = Jobs.job(Jobs.sixTimes(Jobs.usualCoat()), airC, 0.5, MAGNUS_WATER);
    var run = simulation.run(job, times[times.length - 1], times);
    for (int i = 0; i < rows.size(); i++) {
      compare(rows.get(i), run.trace().get(i), new Allowed(0.01, 5e-4, 0.05, 0.2, 0.01, 0.01));
      double spirit = rows.get(i).number("ue");
      if (times[i] > Jobs.DAY_S && spirit > 1e-4) {
        assertThat(run.trace().get(i).ethanol()).isCloseTo(spirit, within(1e-3 * spirit));
      }
    }
  }

  private static void compare(ReferenceTable.Row r, FilmSample s, Allowed a) {
    String at = "at %s s, ".formatted(r.text("t"));
    near(at + "film", s.filmTempC(), r.number("Tf"), a.filmK);
    near(at + "spirit", s.ethanol(), r.number("ue"), a.u);
    near(at + "water", s.water(), r.number("uw"), a.u);
    near(at + "glass transition", s.tgMeanC(), r.number("Tgm"), a.glassK);
    near(at + "skin", s.tgSkinC(), r.number("Tgs"), a.skinK);
    near(at + "bottom", s.tgBottomC(), r.number("Tgb"), a.skinK);
    near(at + "newest coat", s.tgNewestC(), r.number("Tgt"), a.skinK);
    near(at + "blush on top", s.sTop(), r.number("Stop"), a.blush);
    near(at + "blush at most", s.sLargest(), r.number("Smax"), a.blush);
    near(at + "blush mean", s.sNewest(), r.number("Smean"), a.blush);
    near(at + "haze", s.hazeMean(), r.number("Hmean"), a.haze);
    near(at + "most haze", s.hazeLargest(), r.number("Hmax"), a.haze);
  }

  private static void near(String what, double ours, double theirs, double allowed) {
    assertThat(ours).as(what).isCloseTo(theirs, within(allowed));
  }
}
