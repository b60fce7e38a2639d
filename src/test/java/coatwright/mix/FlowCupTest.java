package coatwright.mix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.OutOfRange;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class FlowCupTest {
  /** Ranges and temperatures as quoted from the standards; the equation at both ends. */
  @Test
  void everyCupHasItsStandardsEquationRangeAndTemperature() {
    int cups = 0;
    for (Row row : ReferenceTable.read("mix/flow_cups.csv")) {
      FlowCup cup = MixChecks.cup(row);
      cups++;
      assertThat(cup.shortestS()).isEqualTo(row.number("t_min_s"));
      assertThat(cup.longestS()).isEqualTo(row.number("t_max_s"));
      assertThat(cup.tempC()).isEqualTo(row.number("measured_at_C"));
      for (double t : new double[] {cup.shortestS(), cup.longestS()}) {
        double expected =
            row.text("equation_mm2_per_s").startsWith("A*t")
                ? row.number("coef1") * t - row.number("coef2") / t
                : row.number("coef1") * (t - row.number("coef2"));
        assertThat(cup.viscosityMm2PerS(t)).isCloseTo(expected, within(1e-9));
      }
    }
    assertThat(cups).isEqualTo(FlowCup.values().length);
  }

  @Test
  void agreesWithASeparateProgramInRangeAndRefusesOutsideIt() {
    MixChecks.CUPS.holds();
    for (Row row : ReferenceTable.read("mix/flow_cups_grid.csv")) {
      if (!row.text("in_range").equals("yes")) {
        double seconds = row.number("t_s");
        assertThatThrownBy(() -> MixChecks.cup(row).viscosityMm2PerS(seconds))
            .as(row.toString())
            .isInstanceOf(OutOfRange.class)
            .hasMessageContaining("is valid from");
      }
    }
  }

  /**
   * Printed examples; the reference-oil table prints whole seconds, so half a second is allowed.
   */
  @Test
  void printedTimesGiveThePrintedViscosity() {
    for (Row row : ReferenceTable.read("mix/flow_cups_printed.csv")) {
      FlowCup cup = MixChecks.cup(row);
      double seconds = row.number("t_s");
      double halfASecond = cup.viscosityMm2PerS(seconds + 0.5) - cup.viscosityMm2PerS(seconds);
      double allowed = row.text("kind").equals("worked example") ? 0.0001 : halfASecond + 0.5;
      assertThat(cup.viscosityMm2PerS(seconds))
          .as(row.toString())
          .isCloseTo(row.number("nu_mm2_per_s"), within(allowed));
    }
  }

  @Property(tries = 200, seed = "20261125")
  void timeAndViscosityAreEachOthersInverse(
      @ForAll FlowCup cup, @ForAll @DoubleRange(min = 0.01, max = 0.99) double along) {
    double seconds = cup.shortestS() + along * (cup.longestS() - cup.shortestS());
    OptionalDouble back = cup.seconds(cup.viscosityMm2PerS(seconds));
    assertThat(back.orElse(-1)).isCloseTo(seconds, within(1e-9 * seconds));
  }

  @Property(tries = 200, seed = "20261125")
  void aThickerLiquidRunsLonger(
      @ForAll FlowCup cup, @ForAll @DoubleRange(min = 0, max = 0.9) double along) {
    double seconds = cup.shortestS() + along * (cup.longestS() - cup.shortestS());
    assertThat(cup.viscosityMm2PerS(seconds + 1)).isGreaterThan(cup.viscosityMm2PerS(seconds));
  }

  @Test
  void saysWhichWayToChangeTheCup() {
    assertThatThrownBy(() -> FlowCup.ISO_4.viscosityMm2PerS(12))
        .hasMessageContaining("smaller hole");
    assertThatThrownBy(() -> FlowCup.ISO_4.viscosityMm2PerS(120))
        .hasMessageContaining("wider hole");
    assertThat(FlowCup.ISO_3.seconds(500)).isEmpty();
    assertThat(FlowCup.named("Ford #4")).contains(FlowCup.FORD_4);
    assertThat(FlowCup.named("ford1")).isEmpty();
  }
}
