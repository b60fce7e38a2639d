package coatwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.air.MoistAir;
import coatwright.quantity.OutOfRange;
import coatwright.wood.CrazingWarning.Level;
import java.util.Arrays;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CrazingWarningTest {
  private static final FilmTolerance BRITTLE = FilmTolerance.BRITTLE;

  private static CrazingWarning built(double strainPct, double buildUm) {
    return new CrazingWarning(
        strainPct, BRITTLE, OptionalDouble.of(buildUm), OptionalDouble.of(100));
  }

  /** Yield 0.004 and failure 0.009: Richard, Mecklenburg and Tumosa (1998). */
  @ParameterizedTest(name = "{0} %: {1}")
  @CsvSource({
    "0.1, below yield", "0.39, below yield", "0.4, past yield", "0.89, past yield",
    "0.9, past break", "3, past break", "-0.5, past yield", "-1, past break",
  })
  void theLevelIsReadOffTheStrain(double strainPct, String level) {
    CrazingWarning warning = CrazingWarning.of(strainPct, BRITTLE);
    assertThat(warning.level()).hasToString(level);
    assertThat(warning.ofBreak()).isCloseTo(Math.abs(strainPct) / 0.9, within(1e-12));
  }

  /** Flat-sawn cherry from a 35 % winter to a 65 % summer at 20 °C: 5.1 points, 1.26 %. */
  @Test
  void aYearInAHeatedRoomStretchesAFilmOnFlatSawnCherryPastWhatABrittleOneBears() {
    WoodSpecies cherry = SpeciesTable.shipped().named("cherry");
    MoistAir winter = MoistAir.of(20, 35);
    MoistAir summer = MoistAir.of(20, 65);
    double flatPct = WoodMovement.strainPct(cherry.movementPerPct(Sawn.FLAT), winter, summer);
    double quarterPct = WoodMovement.strainPct(cherry.movementPerPct(Sawn.QUARTER), winter, summer);
    assertThat(flatPct).isBetween(1.2, 1.3);
    assertThat(CrazingWarning.of(flatPct, BRITTLE).level()).isEqualTo(Level.PAST_BREAK);
    assertThat(CrazingWarning.of(quarterPct, BRITTLE).level()).isEqualTo(Level.PAST_YIELD);
  }

  @Test
  void aFilmOverItsBuildIsOneLevelWorse() {
    assertThat(built(0.1, 90).level()).isEqualTo(Level.BELOW_YIELD);
    assertThat(built(0.1, 101).level()).isEqualTo(Level.PAST_YIELD);
    assertThat(built(0.5, 101).level()).isEqualTo(Level.PAST_BREAK);
    assertThat(built(2, 101).level()).isEqualTo(Level.PAST_BREAK);
  }

  @Property(tries = 300, seed = "20261125")
  void moreStrainOrMoreFilmIsNeverMilder(
      @ForAll @DoubleRange(min = 0, max = 5) double strainPct,
      @ForAll @DoubleRange(min = 0, max = 5) double morePct,
      @ForAll @DoubleRange(min = 0, max = 300) double buildUm) {
    assertThat(built(strainPct + morePct, buildUm).level())
        .isGreaterThanOrEqualTo(built(strainPct, buildUm).level());
    assertThat(built(strainPct, buildUm + 50).level())
        .isGreaterThanOrEqualTo(built(strainPct, buildUm).level());
  }

  @Test
  void noLevelPromisesAnything() {
    assertThat(Arrays.stream(Level.values()).map(Level::toString))
        .noneMatch(words -> words.contains("safe") || words.contains("ok"));
  }

  @Test
  void refusesAToleranceOrStrainThatIsNone() {
    assertThatThrownBy(() -> new FilmTolerance(0.9, 0.4, false))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("break of the film is 0.4 %");
    assertThatThrownBy(() -> CrazingWarning.of(Double.NaN, BRITTLE)).isInstanceOf(OutOfRange.class);
  }
}
