package coatwright.film;

import org.junit.jupiter.api.Test;

/** The pace of the film's own clock against the Arrhenius law worked outside this project. */
class ArrheniusTest {
  /** Rate against that at 20 °C, 5 to 40 °C and 40 to 100 kJ/mol, printed to six decimals. */
  @Test
  void paceAgainstTwentyDegreesIsThatOfTheLaw() {
    FilmChecks.PACE.holds();
  }

  /** How much faster for ten degrees, five below to five above. */
  @Test
  void tenDegreesQuickenItAsTheLawSays() {
    FilmChecks.TEN_DEGREES.holds();
  }

  @Test
  void paceDoublesAtTheEnergyThatMakesItDouble() {
    FilmChecks.DOUBLING.holds();
  }
}
