package coatwright.mix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.OutOfRange;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class DriedSampleTest {
  @Test
  void threeWeighingsGiveTheShareThatStays() {
    MixChecks.WEIGHINGS.holds();
  }

  @Property(tries = 200, seed = "20261125")
  void aSampleOfAKnownMixtureTellsItsCut(
      @ForAll @DoubleRange(min = 20, max = 800) double gPerL,
      @ForAll @DoubleRange(min = 0.5, max = 100) double wetG,
      @ForAll @DoubleRange(min = 85, max = 100) double strengthPct) {
    double dryG = wetG * new Cut(gPerL).solidsMassPct(strengthPct) / 100;
    assertThat(new DriedSample(wetG, dryG).cut(strengthPct).gPerL())
        .isCloseTo(gPerL, within(1e-9 * gPerL));
  }

  @Property(tries = 100, seed = "20261125")
  void aLargerSampleNarrowsWhatTheScaleLeavesOpen(
      @ForAll @DoubleRange(min = 2, max = 20) double wetG) {
    double small = new DriedSample(wetG, 0.2 * wetG).cutErrorGPerL(0.1, 95);
    double large = new DriedSample(5 * wetG, wetG).cutErrorGPerL(0.1, 95);
    assertThat(large).isPositive().isLessThan(small);
  }

  @Test
  void refusesAResidueHeavierThanAnySolutionLeaves() {
    assertThatThrownBy(() -> new DriedSample(1, 0.6))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("residue is 0.6 g");
  }
}
