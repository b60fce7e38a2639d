package coatwright.mix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.OutOfRange;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class SpiritBottleTest {
  /** Weights add, and so do the two ethanols: densities after OIML R 22 on both sides. */
  @Property(tries = 200, seed = "20261125")
  void pouringTogetherKeepsWeightAndEthanol(
      @ForAll @DoubleRange(min = 10, max = 2000) double aMl,
      @ForAll @DoubleRange(min = 0, max = 100) double aPct,
      @ForAll @DoubleRange(min = 10, max = 2000) double bMl,
      @ForAll @DoubleRange(min = 0, max = 100) double bPct) {
    Spirit a = new Spirit(aMl, aPct);
    Spirit b = new Spirit(bMl, bPct);
    Spirit both = a.with(b);
    assertThat(both.massG()).isCloseTo(a.massG() + b.massG(), within(1e-6 * both.massG()));
    double ethanolMl = (aMl * aPct + bMl * bPct) / 100;
    assertThat(both.volumeMl() * both.strengthVolPct() / 100)
        .isCloseTo(ethanolMl, within(1e-6 * (1 + ethanolMl)));
    // Two weak spirits swell a little when poured together (up to 0.15 %); strong ones shrink.
    assertThat(a.shrinkageMl(b)).isGreaterThan(-0.002 * (aMl + bMl));
  }

  @Property(tries = 200, seed = "20261125")
  void whatIsPouredInReachesTheStrengthAskedFor(
      @ForAll @DoubleRange(min = 85, max = 96) double havePct,
      @ForAll @DoubleRange(min = 1, max = 84) double wantedPct) {
    Spirit have = new Spirit(1000, havePct);
    Spirit blend = have.with(have.toReach(wantedPct, 0));
    assertThat(blend.strengthVolPct()).isCloseTo(wantedPct, within(1e-6));
  }

  @Test
  void strongerSpiritBringsWeakSpiritUp() {
    Spirit weak = new Spirit(1000, 90);
    Spirit add = weak.toReach(95, 99.5);
    assertThat(weak.with(add).strengthVolPct()).isCloseTo(95, within(1e-6));
    assertThatThrownBy(() -> weak.toReach(95, 94))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("95.0 % cannot be reached from 90.0 % with 94.0 %");
  }

  /**
   * OIML R 22, evaluated by a separate program: the masses that make 50 % out of pure ethanol and
   * water are 42.4257 to 57.5743 (mass_pct of the row 50 % at 20 °C).
   */
  @Test
  void halfAndHalfShrinksByWhatTheTablesSay() {
    double ethanolG = 42.4257;
    double waterG = 57.5743;
    Spirit ethanol = new Spirit(ethanolG * 1000 / 789.2391, 100);
    Spirit water = new Spirit(waterG * 1000 / 998.20123, 0);
    Spirit blend = ethanol.with(water);
    assertThat(blend.strengthVolPct()).isCloseTo(50, within(0.001));
    assertThat(blend.volumeMl()).isCloseTo(100_000 / 930.142, within(0.001));
    assertThat(ethanol.shrinkageMl(water)).isCloseTo(3.921, within(0.01));
  }

  /** OIML R 22 by a separate program, strengths at 60 °F: US proof is twice their number. */
  @Test
  void proofIsTwiceTheStrengthAtSixtyFahrenheit() {
    MixChecks.PROOF.holds();
  }

  @Property(tries = 100, seed = "20261125")
  void aProofScaleReadAtSixtyFahrenheitTellsTheTruth(
      @ForAll @DoubleRange(min = 1, max = 99.5) double atSixtyPct) {
    double at20 = Spirit.strengthFromReading(atSixtyPct, Spirit.PROOF_C, Spirit.PROOF_C);
    assertThat(Spirit.strengthAtProofTemperature(at20)).isCloseTo(atSixtyPct, within(1e-8));
  }
}
