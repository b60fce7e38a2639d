package coatwright.solvent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class LacquerSolventsTest {
  /** Median of the published equations named in the table's first line. */
  @ParameterizedTest(name = "{0} at {1} C: {2} Pa")
  @CsvFileSource(resources = "/reference/solvent/vapour_pressures_lacquer.csv", numLinesToSkip = 2)
  void pressAsThePublishedEquationsSay(String name, double atC, double medianPa) {
    boolean acetone = name.equals("acetone");
    Solvent solvent = acetone ? Solvent.ACETONE : Solvent.TOLUENE;
    assertThat(solvent.name()).isEqualTo(name);
    assertThat(solvent.vapourPressurePa(atC))
        .isCloseTo(medianPa, withinPercentage(acetone ? 0.6 : 1.5));
  }
}
