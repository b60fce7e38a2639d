package coatwright.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.film.AirCourse;
import coatwright.film.FilmParameters;
import coatwright.film.FilmSimulation;
import coatwright.film.Finish;
import coatwright.film.LaidCoat;
import coatwright.film.SimulationOptions;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The surface against the runs it stands for; an agreement with ourselves. */
class CloudingSurfaceTest {
  private static final Finish PALE = TestShop.SHIPPED.get("shellac-pale");
  private static final double BOARD_MM = 18;
  private static LaidCoat coat;
  private static CloudingSurface surface;

  @BeforeAll
  static void makeIt() {
    InTheJar jar = InTheJar.of(PALE, java.util.Optional.empty());
    coat = jar.coat(0, 75);
    surface = CloudingSurface.of(FilmParameters.SHELLAC, PALE, coat, 0.1, BOARD_MM);
  }

  @ParameterizedTest(name = "{0} °C, {1} %, wood {2} °C")
  @CsvSource({
    "20, 50, 20",
    "21.7, 47, 20.3",
    "17.3, 58, 16.1",
    "26.4, 66, 24.8",
    "19, 53, 14",
    "22, 64, 22.9",
    "14.5, 71, 14.5",
    "23.8, 36, 19"
  })
  void standsForTheRunWithinThreeHundredths(double airC, double rhPct, double woodC) {
    AirCourse air = AirCourse.steady(airC, rhPct / 100, 0.1);
    double byRun =
        new FilmSimulation(FilmParameters.SHELLAC, SimulationOptions.CLOUDING)
            .run(Described.job(List.of(coat), air, woodC, BOARD_MM), 3600)
            .lastCoat()
            .peakS();

    assertThat(surface.peakS(airC, rhPct, woodC)).isCloseTo(byRun, within(0.03));
  }

  @Test
  void aWetFilmOnWoodBelowTheDewPointCloudsForCertain() {
    assertThat(surface.peakS(22, 80, 10)).isGreaterThan(1.5);
    assertThat(surface.peakS(22, 60, -5)).isEqualTo(CloudingSurface.CLOUDS);
  }

  @Test
  void aFilmIsFineWhereTheOutlookOfTheSameAirExpectsNoClouding() {
    WindowFinder.Fitness fitness = FilmFitness.of(PALE, surface, 1.12);

    assertThat(fitness.mayBrush(20, 45, 20)).isTrue();
    assertThat(fitness.mayBrush(20, 70, 20)).isFalse();
    assertThat(fitness.mayBrush(28, 80, 28)).isFalse();
    assertThat(fitness.mayBrush(PALE.lowestTempC() - 1, 40, 20)).isFalse();
    assertThat(OptionalDouble.of(surface.peakS(20, 50, 20)).getAsDouble())
        .isCloseTo(0.75, within(0.03));
  }
}
