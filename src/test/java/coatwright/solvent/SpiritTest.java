package coatwright.solvent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.OutOfRange;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class SpiritTest {

  /**
   * Measured set quoted in Perry's Chemical Engineers' Handbook, credited to Carey and Lewis
   * (1932).
   */
  @Test
  void vanLaarFollowsBoilingSpirit() {
    SolventChecks.BOILING_VAPOUR.holds();
    SolventChecks.BOILING_POINT.holds();
  }

  /** Azeotrope 0.894 ethanol, 78.15 °C; van Laar puts it near 0.91, which is stated, not hidden. */
  @Test
  void boilsWithoutChangingNearTheMeasuredAzeotrope() {
    SolventChecks.AZEOTROPE.holds();
    assertThat(SolventChecks.boilingC(SolventChecks.azeotrope())).isCloseTo(78.15, within(0.3));
  }

  /** OIML R 22 (1975), evaluated by a separate program. */
  @Test
  void knowsMassAndDensityOfEveryStrength() {
    SolventChecks.STRENGTH.holds();
    SolventChecks.STRENGTH_DENSITY.holds();
  }

  /** Perry's Chemical Engineers' Handbook, 7th ed., 20 °C. */
  @Test
  void weighsWhatPerryPrints() {
    SolventChecks.PERRY_DENSITY.holds();
  }

  @Property(tries = 100, seed = "20261125")
  void anAlcoholometerAtItsOwnTemperatureTellsTheTruth(
      @ForAll @DoubleRange(min = 1, max = 99.9) double pct) {
    assertThat(SpiritStrength.ofReading(pct, 20).volumePct()).isCloseTo(pct, within(1e-9));
  }

  @Property(tries = 100, seed = "20261125")
  void warmSpiritReadsStrongerThanItIs(
      @ForAll @DoubleRange(min = 80, max = 96) double pct,
      @ForAll @DoubleRange(min = 20.5, max = 35) double atC) {
    double trueStrength = SpiritStrength.ofReading(pct, atC).volumePct();
    assertThat(trueStrength).isLessThan(pct).isGreaterThan(pct - 0.35 * (atC - 20));
  }

  @Property(tries = 100, seed = "20261125")
  void strengthByMassAndByVolumeAreEachOthersInverse(
      @ForAll @DoubleRange(min = 0.1, max = 99.9) double massPct) {
    assertThat(SpiritStrength.ofMassPct(massPct).massPct()).isCloseTo(massPct, within(1e-9));
  }

  @Test
  void aHundredAndNinetyProofIsNinetyFivePerCent() {
    assertThat(SpiritStrength.ofProof(190)).isEqualTo(new SpiritStrength(95));
    assertThat(new SpiritStrength(95).ethanolFraction()).isCloseTo(0.8264, within(1e-4));
  }

  @Test
  void refusesStrengthsAndReadingsThatCannotBe() {
    assertThatThrownBy(() -> new SpiritStrength(101))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("spirit strength is 101");
    assertThatThrownBy(() -> SpiritStrength.ofReading(100, 5))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("Read it again");
  }
}
