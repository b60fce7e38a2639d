package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NormalLawTest {
  /** Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 26.1. */
  @ParameterizedTest(name = "P({0}) = {1}")
  @CsvSource({
    "0, 0.5",
    "1, 0.8413447461",
    "2, 0.9772498681",
    "-1, 0.1586552539",
    "3, 0.9986501020"
  })
  void followsThePrintedTable(double z, double printed) {
    assertThat(NormalLaw.below(z)).isCloseTo(printed, within(1e-7));
    assertThat(NormalLaw.quantile(printed)).isCloseTo(z, within(2e-5));
  }
}
