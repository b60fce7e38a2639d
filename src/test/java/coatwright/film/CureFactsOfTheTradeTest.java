package coatwright.film;

import static coatwright.film.Cures.hoursTo;
import static coatwright.film.Cures.steady;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What is said of each family, at its usual coat. Unless a source stands beside it: common
 * practice, no source.
 */
class CureFactsOfTheTradeTest {
  private static final Curing OIL = Cures.varnish();
  private static final Curing WATER = Cures.water();
  private static final Curing TWO_PART = Cures.twoPart();

  /** Touch in 6 h, a coat a day, sanded after 30 h, rubbed out in two weeks, hard in four. */
  @ParameterizedTest
  @CsvSource({
    "DRY_TO_TOUCH, 6",
    "DRY_TO_RECOAT, 24",
    "DRY_HARD, 30",
    "RUB_OUT, 336",
    "FULL_HARDNESS, 672"
  })
  void oilVarnishKeepsItsUsualTimesAtTwentyDegreesAndHalfHumidity(Milestone m, double usualH) {
    assertThat(hoursTo(steady(OIL, 20, 0.5, 80), m)).isCloseTo(usualH, withinPercentage(0.5));
  }

  static Stream<Row> pacesOfSixtyKilojoule() {
    return ReferenceTable.read("kinetics/arrhenius_check.csv").stream()
        .filter(row -> row.number("ea_kJ_per_mol") == 60);
  }

  /** The Arrhenius law worked outside this project, 60 kJ/mol, 5 to 40 °C. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("pacesOfSixtyKilojoule")
  void oilKeepsThePaceOfTheArrheniusLaw(Row row) {
    OxidativeCure oil = Cures.varnish();
    double pace = oil.rate(row.number("t_C"), 0.5) / oil.rate(row.number("t_ref_C"), 0.5);
    assertThat(pace).isCloseTo(row.number("rate_ratio"), withinPercentage(0.001));
  }

  @Test
  void tenKelvinColderTakesOilMoreThanTwiceAsLongAndIsCalledSlow() {
    double usual = hoursTo(steady(OIL, 20, 0.5, 80), Milestone.RUB_OUT);
    double cold = hoursTo(steady(OIL, 10, 0.5, 80), Milestone.RUB_OUT);
    assertThat(cold / usual).isBetween(2.0, 2.6);
    assertThat(CureSigns.at(OIL, CureMoment.of(10, 50, 10, 80)).slowCure())
        .hasOnlyElementsOfType(SlowCure.SlowRate.class)
        .hasSize(1);
    assertThat(CureSigns.at(OIL, CureMoment.of(9.9, 50, 9.9, 80)).slowCure())
        .hasAtLeastOneElementOfType(SlowCure.Cold.class);
  }

  @Test
  void dampAirHoldsOilBackAndItsFloorIsKept() {
    double usual = hoursTo(steady(OIL, 20, 0.5, 80), Milestone.DRY_HARD);
    double damp = hoursTo(steady(OIL, 20, 0.9, 80), Milestone.DRY_HARD);
    assertThat(damp / usual).isBetween(1.3, 1.7);
    assertThat(new OxidativeCure.Damp(40, 5, 0.2, 0.2).factor(1.0)).isEqualTo(0.2);
  }

  /** A dry coat twice as thick, at the power 0.7. */
  @Test
  void twiceTheCoatTakesOilOneAndAHalfTimesAsLongAndMore() {
    double usual = hoursTo(steady(OIL, 20, 0.5, 80), Milestone.RUB_OUT);
    double thick = hoursTo(steady(OIL, 20, 0.5, 160), Milestone.RUB_OUT);
    assertThat(thick / usual).isCloseTo(Math.pow(2, 0.7), withinPercentage(0.01));
  }

  /** An hour to touch, two to recoat, a week to full hardness. */
  @Test
  void waterborneKeepsItsUsualTimesAtTwentyDegreesAndHalfHumidity() {
    CureJob job = steady(WATER, 20, 0.5, 100);
    assertThat(hoursTo(job, Milestone.DRY_TO_TOUCH)).isBetween(0.9, 2.0);
    assertThat(hoursTo(job, Milestone.DRY_TO_RECOAT)).isBetween(2.0, 4.0);
    assertThat(hoursTo(job, Milestone.FULL_HARDNESS)).isCloseTo(168, within(0.5));
  }

  @Test
  void dampAirKeepsWaterborneWetAndDryAirDoesNotHardenItSooner() {
    double touch50 = hoursTo(steady(WATER, 20, 0.5, 100), Milestone.DRY_TO_TOUCH);
    double touch80 = hoursTo(steady(WATER, 20, 0.8, 100), Milestone.DRY_TO_TOUCH);
    double touch95 = hoursTo(steady(WATER, 20, 0.95, 100), Milestone.DRY_TO_TOUCH);
    assertThat(touch80 / touch50).isBetween(2.2, 2.8);
    assertThat(touch95 / touch50).isBetween(9.0, 11.0);
    assertThat(hoursTo(steady(WATER, 20, 0.3, 100), Milestone.FULL_HARDNESS))
        .isCloseTo(168, within(0.5));
  }

  @Test
  void aWarmBoardDriesWaterborneWarmer() {
    CureSigns cold = CureSigns.at(WATER, CureMoment.of(18, 50, 12, 100));
    CureSigns warm = CureSigns.at(WATER, CureMoment.of(18, 50, 24, 100));
    assertThat(warm.filmLowC()).isGreaterThan(cold.filmLowC() + 2);
    assertThat(warm.mfftMarginK().orElseThrow()).isGreaterThan(cold.mfftMarginK().orElseThrow());
  }

  /** The pot: 4.4, 3.0, 2.0, 1.4 and 0.95 h; assumed, 55 kJ/mol about two hours at 20 °C. */
  @ParameterizedTest
  @CsvSource({"10, 4.4", "15, 3.0", "20, 2.0", "25, 1.4", "30, 0.95"})
  void aMixedPotLastsHalfAsLongForEveryNineOrTenKelvin(double airC, double hours) {
    assertThat(TWO_PART.potLifeH(airC).orElseThrow()).isCloseTo(hours, within(0.05));
  }

  @Test
  void oilAndWaterborneHaveNoPotLife() {
    assertThat(OIL.potLifeH(20)).isEmpty();
    assertThat(WATER.potLifeH(20)).isEmpty();
  }

  /** Limits of DiBenedetto's equation: the mix alone, and the finished network. */
  @Test
  void theGlassTransitionRisesFromTheMixToTheNetwork() {
    TwoPartCure.Network network = Cures.twoPart().network();
    assertThat(network.glassC(0)).isCloseTo(-40, within(1e-9));
    assertThat(network.glassC(1)).isCloseTo(68, within(1e-9));
    for (double x = 0; x < 0.999; x += 0.01) {
      double slope = (network.glassC(x + 1e-6) - network.glassC(x)) / 1e-6;
      assertThat(slope).isPositive().isCloseTo(network.glassSlope(x), withinPercentage(0.01));
    }
  }

  /** It stops higher in a warmer room; at 10 °C below what rubbing out asks. */
  @Test
  void aTwoPartFilmStopsWhereTheRoomHasFrozenItsNetwork() {
    double before = 0;
    for (double airC : new double[] {10, 15, 20, 25, 30}) {
      double stops = Conversion.steady(Cures.twoPart(), airC).after(2000);
      assertThat(stops).isGreaterThan(before);
      before = stops;
    }
    assertThat(Conversion.steady(Cures.twoPart(), 10).after(2000)).isLessThan(0.85);
    assertThat(hoursTo(steady(TWO_PART, 10, 0.5, 100), Milestone.RUB_OUT)).isInfinite();
    assertThat(hoursTo(steady(TWO_PART, 30, 0.5, 100), Milestone.RUB_OUT)).isLessThan(48);
  }
}
