package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.mix.FilmBuild;
import coatwright.quantity.OutOfRange;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class FilmRecordsTest {

  @Test
  void aCoatOutsideTheModelIsRefusedInWords() {
    assertThatThrownBy(() -> LaidCoat.plain(0, 75, 180, 60))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("spirit strength is 60.0 % vol");
    assertThatThrownBy(() -> LaidCoat.plain(0, 900, 180, 95))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("wet film");
    assertThatThrownBy(() -> Jobs.coat(75, 1.5, 95, 20)).isInstanceOf(OutOfRange.class);
  }

  @Test
  void aJobNeedsCoatsInOrderAndABoard() {
    LaidCoat coat = Jobs.usualCoat();
    AirCourse air = AirCourse.steady(20, 0.5, 0.1);
    assertThatThrownBy(() -> FilmJob.of(List.of(), air, 20)).hasMessageContaining("1 to 40 coats");
    assertThatThrownBy(() -> FilmJob.of(List.of(coat, coat), air, 20))
        .hasMessageContaining("at least 1 s after coat 1");
    assertThatThrownBy(() -> FilmJob.of(List.of(coat), air, 80)).isInstanceOf(OutOfRange.class);
  }

  @Test
  void aRunMustEndAfterItsLastCoatAndSampleInOrder() {
    var simulation = new FilmSimulation(FilmParameters.SHELLAC, SimulationOptions.FAST);
    FilmJob job = Jobs.oneCoat(20, 0.5);
    assertThatThrownBy(() -> simulation.run(job, 0)).hasMessageContaining("after the last coat");
    assertThatThrownBy(() -> simulation.run(job, 100, 50, 20)).hasMessageContaining("must rise");
    assertThat(simulation.run(job, 100, 0, 0, 50, 100).trace()).hasSize(4);
  }

  @Test
  void everyMemberOfAnEnsembleDiffersInOneThingOnly() {
    FilmParameters p = FilmParameters.SHELLAC;
    assertThat(p.withGlassDiffusivity(1e-15).diffusion().glassM2PerS()).isEqualTo(1e-15);
    assertThat(p.withGlassDiffusivity(p.diffusion().glassM2PerS())).isEqualTo(p);
    assertThat(p.withSteepness(p.diffusion().steepness())).isEqualTo(p);
    assertThat(p.withGlassEnergy(p.diffusion().glassEnergyJPerMol())).isEqualTo(p);
    assertThat(p.withLiquidDiffusivity(p.diffusion().liquidM2PerS())).isEqualTo(p);
    assertThat(p.withStillAir(p.surroundings().stillAirWPerM2K())).isEqualTo(p);
    assertThat(p.withWoodConductivity(p.surroundings().woodConductivityWPerMK())).isEqualTo(p);
    assertThat(p.withChiWater(p.solution().chiWater())).isEqualTo(p);
    assertThat(p.withSpiritWater(p.solution().spiritWater())).isEqualTo(p);
    assertThat(p.withResinGlass(p.solution().resinGlassK())).isEqualTo(p);
    assertThat(p.withRubOutResidue(p.criteria().rubOutResidue())).isEqualTo(p);
    assertThatThrownBy(() -> p.withSteepness(0)).isInstanceOf(OutOfRange.class);
  }

  @Test
  void twoSetsOfOneModelAreToldApartByTheirStamp() {
    assertThat(FilmParameters.SHELLAC.stamp().name()).isEqualTo("film/shellac");
    assertThat(FilmParameters.SHELLAC.withName("member 7").stamp().name())
        .isEqualTo("film/member 7");
    assertThatThrownBy(() -> new ModelStamp(" ", "1")).isInstanceOf(IllegalArgumentException.class);
  }

  /** 1.5 lb per US gallon and 75 µm wet leave 10.2 µm: arithmetic of conserved resin. */
  @Test
  void aWetFilmLeavesItsSolids() {
    assertThat(FilmBuild.dryFilmUm(75, Jobs.USUAL_CUT)).isCloseTo(10.21, within(0.01));
    assertThat(FilmBuild.wetFilmUm(10.21, FilmBuild.solidsFraction(Jobs.USUAL_CUT)))
        .isCloseTo(75, within(0.05));
    assertThat(FilmBuild.wetFilmUmFromConsumption(0.075, 1)).isCloseTo(75, within(1e-9));
  }

  @Property(tries = 100, seed = "20261125")
  void wetAndDryThicknessAreEachOthersInverse(
      @ForAll @DoubleRange(min = 10, max = 300) double wet,
      @ForAll @DoubleRange(min = 40, max = 500) double cut) {
    assertThat(FilmBuild.wetFilmUm(FilmBuild.dryFilmUm(wet, cut), FilmBuild.solidsFraction(cut)))
        .isCloseTo(wet, within(1e-9 * wet));
  }

  /** The same numbers as a run reports at the first instant of its coat. */
  @Test
  void theJarIsJudgedAsTheFirstInstantOfACoat() {
    var simulation = new FilmSimulation(FilmParameters.SHELLAC, SimulationOptions.FAST);
    for (double strength : new double[] {85, 88, 95}) {
      var job =
          FilmJob.of(List.of(Jobs.coat(75, 1.5, strength, 2)), AirCourse.steady(20, 0.5, 0.1), 20);
      assertThat(JarCheck.blushNumber(FilmParameters.SHELLAC, Jobs.USUAL_CUT, strength, 2))
          .isCloseTo(simulation.run(job, 60).lastCoat().jarS(), within(1e-12));
    }
    assertThat(JarCheck.blushNumber(FilmParameters.SHELLAC, Jobs.USUAL_CUT, 88, 0))
        .isCloseTo(0.75, within(0.01));
    assertThat(JarCheck.blushNumber(FilmParameters.SHELLAC, Jobs.USUAL_CUT, 95, 0))
        .isCloseTo(0.32, within(0.01));
  }
}
