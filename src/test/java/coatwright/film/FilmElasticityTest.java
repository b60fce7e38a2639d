package coatwright.film;

import static coatwright.air.SaturationFunction.MAGNUS_WATER;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.film.FilmParameters.Diffusion;
import coatwright.film.FilmParameters.HazeGrowth;
import coatwright.film.FilmParameters.Solution;
import coatwright.film.FilmParameters.Surroundings;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * How far each milestone moves with each parameter, d ln/d ln, against our own independent
 * prototype. Its times lie on straight lines between coarse output rows, so hardening may differ by
 * a few hundredths.
 */
class FilmElasticityTest {
  private static final double STEP = 1.05;
  private static final SimulationOptions SIX_CELLS =
      new SimulationOptions(6, 2.2, 1e-5, false, false, 2);

  /** A job with one thing changed by a factor. */
  private record Changed(FilmParameters p, double wetUm, double cutLb, double draught) {
    Map<String, Double> results() {
      Map<String, Double> results = new LinkedHashMap<>();
      LaidCoat coat = Jobs.coat(wetUm, cutLb, 95, 0);
      var first =
          new FilmSimulation(p, SIX_CELLS).run(job(List.of(coat), 20, 0.5), 3600).lastCoat();
      results.put("open_s", first.openTimeS().orElseThrow());
      results.put("touch_min", first.touchS().orElseThrow());
      results.put("recoat_min", first.recoatS().orElseThrow());
      var run =
          new FilmSimulation(p, SimulationOptions.DEFAULT.withTolerance(1e-5))
              .run(job(Jobs.sixTimes(coat), 20, 0.5), 8700 + 40 * Jobs.DAY_S, 3600);
      results.put("x15_coat4", run.trace().get(0).xMeanK());
      run.coats().get(3).restedS().ifPresent(s -> results.put("rest_min", s));
      results.put("rub_d", run.rubOutS().orElseThrow());
      results.put("hard_d", run.fullHardnessS().orElseThrow());
      var damp = new FilmSimulation(p, SIX_CELLS).run(job(List.of(coat), 28, 0.8), 3600);
      results.put("S", damp.lastCoat().peakS());
      return results;
    }

    private FilmJob job(List<LaidCoat> coats, double airC, double rh) {
      return new FilmJob(
          coats, AirCourse.steady(airC, rh, draught), airC, FilmJob.USUAL_BOARD_MM, MAGNUS_WATER);
    }
  }

  static Stream<ReferenceTable.Row> parameters() {
    return ReferenceTable.read("shellac/elasticity.csv").stream()
        .filter(r -> !r.text("par").equals("RH"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("parameters")
  void movesAsFarAsOurPrototypeFound(ReferenceTable.Row r) {
    var low = changed(r.text("par"), 1 / STEP).results();
    var high = changed(r.text("par"), STEP).results();
    for (String result : low.keySet()) {
      double expected = Double.parseDouble(r.text(result).replace("inf", "Infinity"));
      if (Double.isInfinite(expected) || !high.containsKey(result)) {
        continue; // not reached within the session on one side
      }
      double ours = Math.log(high.get(result) / low.get(result)) / (2 * Math.log(STEP));
      boolean coarse = List.of("rub_d", "hard_d", "rest_min", "x15_coat4").contains(result);
      assertThat(ours)
          .as("d ln %s / d ln %s", result, r.text("par"))
          .isCloseTo(expected, within((coarse ? 0.12 : 0.02) + 0.06 * Math.abs(expected)));
    }
  }

  private static Changed changed(String parameter, double by) {
    FilmParameters p = Jobs.asTabulated("shellac");
    Diffusion d = p.diffusion();
    Solution s = p.solution();
    Surroundings a = p.surroundings();
    HazeGrowth h = p.hazeGrowth();
    return switch (parameter) {
      case "Dg" -> of(p.withGlassDiffusivity(by * d.glassM2PerS()));
      case "k" -> of(p.withSteepness(by * d.steepness()));
      case "Eg" -> of(p.withGlassEnergy(by * d.glassEnergyJPerMol()));
      case "Dl" -> of(p.withLiquidDiffusivity(by * d.liquidM2PerS()));
      case "fw" ->
          of(
              p.withDiffusion(
                  new Diffusion(
                      d.glassM2PerS(),
                      d.liquidM2PerS(),
                      d.steepness(),
                      d.glassEnergyJPerMol(),
                      d.liquidEnergyJPerMol(),
                      by * d.waterFactor(),
                      d.retarderFactor(),
                      d.waterLoosening())));
      case "chi_e" ->
          of(
              p.withSolution(
                  new Solution(
                      by * s.chiEthanol(),
                      s.chiWater(),
                      s.chiRetarder(),
                      s.spiritWater(),
                      s.crossTerm(),
                      s.resinGlassK())));
      case "chi_w" -> of(p.withChiWater(by * s.chiWater()));
      case "g" -> of(p.withSpiritWater(by * s.spiritWater()));
      case "chi23" ->
          of(
              p.withSolution(
                  new Solution(
                      s.chiEthanol(),
                      s.chiWater(),
                      s.chiRetarder(),
                      s.spiritWater(),
                      by * s.crossTerm(),
                      s.resinGlassK())));
      case "tgp" -> of(p.withResinGlass(by * s.resinGlassK()));
      case "kw" -> of(p.withWoodConductivity(by * a.woodConductivityWPerMK()));
      case "hnat" -> of(p.withStillAir(by * a.stillAirWPerM2K()));
      case "rdrop" ->
          of(p.withHazeGrowth(new HazeGrowth(h.baseS(), by * h.dropM(), h.tensionNPerM())));
      case "Lc" ->
          of(
              p.withSurroundings(
                  new Surroundings(
                      a.woodConductivityWPerMK(),
                      a.woodDensityKgPerM3(),
                      a.woodHeatJPerKgK(),
                      a.stillAirWPerM2K(),
                      by * a.plateLengthM(),
                      a.emissivity())));
      case "wet" -> new Changed(p, by * 75, 1.5, 0.1);
      case "cut" -> new Changed(p, 75, by * 1.5, 0.1);
      case "v" -> new Changed(p, 75, 1.5, by * 0.1);
      default -> throw new IllegalArgumentException(parameter);
    };
  }

  private static Changed of(FilmParameters p) {
    return new Changed(p, 75, 1.5, 0.1);
  }
}
