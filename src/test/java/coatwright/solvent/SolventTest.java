package coatwright.solvent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.withinPercentage;

import coatwright.air.SaturationFunction;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.OutsideCheck;
import coatwright.quantity.ReferenceTable;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class SolventTest {
  /**
   * Median of the published equations named in the table's first line; doubtful rows were left out.
   */
  @Test
  void followsThePublishedVapourPressures() {
    assertThat(ReferenceTable.read("solvent/vapour_pressures.csv"))
        .allMatch(row -> row.text("doubtful").equals("no"));
    SolventChecks.vapourPressures().forEach(OutsideCheck::holds);
  }

  /** Our own prototype's figures: agreement of two implementations, printed to eight digits. */
  @ParameterizedTest(name = "{0} C")
  @CsvFileSource(resources = "/reference/film/psat.csv", numLinesToSkip = 1)
  void agreesWithOurPrototypeOnVapourPressureAndDiffusivity(
      double atC,
      double ethanol,
      double water,
      double butoxyethanol,
      double butanol,
      double butylAcetate,
      double methanol,
      double spreadEthanol,
      double spreadWater,
      double spreadButoxyethanol) {
    var close = withinPercentage(1e-5);
    assertThat(Solvent.ETHANOL.vapourPressurePa(atC)).isCloseTo(ethanol, close);
    assertThat(SaturationFunction.MAGNUS_WATER.pressurePa(atC)).isCloseTo(water, close);
    assertThat(Solvent.BUTOXYETHANOL.vapourPressurePa(atC)).isCloseTo(butoxyethanol, close);
    assertThat(Solvent.BUTANOL.vapourPressurePa(atC)).isCloseTo(butanol, close);
    assertThat(Solvent.BUTYL_ACETATE.vapourPressurePa(atC)).isCloseTo(butylAcetate, close);
    assertThat(Solvent.METHANOL.vapourPressurePa(atC)).isCloseTo(methanol, close);
    AirFlow air = new AirFlow(atC + 273.15);
    assertThat(air.diffusivityM2PerS(Solvent.ETHANOL)).isCloseTo(spreadEthanol, close);
    assertThat(air.diffusivityM2PerS(Solvent.WATER)).isCloseTo(spreadWater, close);
    assertThat(air.diffusivityM2PerS(Solvent.BUTOXYETHANOL)).isCloseTo(spreadButoxyethanol, close);
  }

  /**
   * Perry's Chemical Engineers' Handbook, table 2-371. Fuller's method is known to be good to 10 %.
   */
  @Test
  void diffusesThroughAirWithinATenthOfTheMeasuredRate() {
    SolventChecks.DIFFUSIVITY.holds();
  }

  @Test
  void refusesALiquidColderOrHotterThanItsCurve() {
    assertThatThrownBy(() -> Solvent.ETHANOL.vapourPressurePa(-31))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("-31")
        .hasMessageContaining("°C");
    assertThatThrownBy(() -> Solvent.BUTOXYETHANOL.vapourPressurePa(101))
        .isInstanceOf(OutOfRange.class);
  }

  @Property(tries = 200, seed = "20261125")
  void warmerLiquidAlwaysPressesHarder(@ForAll @DoubleRange(min = -30, max = 99) double atC) {
    for (Solvent solvent : SolventChecks.BY_NAME.values()) {
      assertThat(solvent.vapourPressurePa(atC + 1)).isGreaterThan(solvent.vapourPressurePa(atC));
    }
  }
}
