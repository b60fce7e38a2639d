package coatwright.mix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.OutOfRange;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class CutTest {
  /** Arithmetic from the exact units by a separate program; the last printed digit is held. */
  @Test
  void everyPoundCutIsWhatASeparateProgramFound() {
    MixChecks.SOLIDS_BY_MASS.holds();
    MixChecks.SOLIDS_BY_VOLUME.holds();
    MixChecks.MIXTURE_DENSITY.holds();
    MixChecks.SWELL.holds();
    for (Row row : ReferenceTable.read("mix/pound_cut.csv")) {
      Cut cut = Cut.ofLbPerUsGal(row.number("cut_lb_per_gal_alcohol"));
      Solution mixture = MixChecks.mixture(row);
      assertThat(cut.gPerL()).isCloseTo(row.number("flakes_g_per_L_alcohol"), within(0.0051));
      assertThat(mixture.flakesGPerLOfMixture())
          .isCloseTo(row.number("flakes_g_per_L_mixture"), within(0.0051));
      assertThat(new Cut(mixture.flakesGPerLOfMixture()).lbPerUsGal())
          .isCloseTo(row.number("flakes_lb_per_gal_mixture"), within(5.1e-4));
    }
  }

  @Test
  void theFlakesForAVolumeOfSpiritAreThoseOfTheTable() {
    MixChecks.FLAKES.holds();
  }

  /** A printed workshop mixing chart: an ounce of flakes to a cup of spirit is a one-pound cut. */
  @Test
  void aPrintedWorkshopChartSaysTheSame() {
    MixChecks.WORKSHOP_CHART.holds();
  }

  /**
   * The arithmetic by a separate program at two resin densities. The chart in circulation is only
   * compared where it is not doubtful; the rows left out are printed.
   */
  @Test
  void thinsAsTheArithmeticSaysAndAsTheChartWhereItIsNotDoubtful() {
    MixChecks.THINNING.holds();
    MixChecks.THINNING_CHART.holds();
    int doubtful = 0;
    for (Row row : ReferenceTable.read("mix/dilution.csv")) {
      if (!row.text("doubtful").equals("no")) {
        doubtful++;
        System.out.printf(
            "left out: dilution %s to %s lb, chart %s parts, arithmetic %s (%s)%n",
            row.text("existing_cut"),
            row.text("target_cut"),
            row.text("parts_alcohol_chart"),
            row.text("parts_alcohol_computed_sg1.14"),
            row.text("doubtful"));
      }
    }
    assertThat(doubtful).isEqualTo(3);
  }

  @Test
  void aCutFollowsFromSolidsByWeight() {
    MixChecks.CUT_OF_SOLIDS.holds();
    for (Row row : ReferenceTable.read("mix/nonvolatile_to_cut.csv")) {
      Cut cut = Cut.ofSolidsMassPct(row.number("nonvolatile_mass_pct"), MixChecks.strength(row));
      assertThat(cut.lbPerUsGal()).isCloseTo(row.number("cut_lb_per_gal"), within(2e-4));
    }
  }

  @Property(tries = 200, seed = "20261125")
  void solidsByWeightAndCutAreEachOthersInverse(
      @ForAll @DoubleRange(min = 1, max = 900) double gPerL,
      @ForAll @DoubleRange(min = 80, max = 100) double strengthPct) {
    Cut cut = new Cut(gPerL);
    assertThat(Cut.ofSolidsMassPct(cut.solidsMassPct(strengthPct), strengthPct).gPerL())
        .isCloseTo(gPerL, within(1e-9 * gPerL));
  }

  @Property(tries = 200, seed = "20261125")
  void aJarFilledToAVolumeHoldsThatVolumeAtThatCut(
      @ForAll @DoubleRange(min = 1, max = 900) double gPerL,
      @ForAll @DoubleRange(min = 1, max = 20_000) double volumeMl) {
    Solution mixture = Solution.ofVolume(new Cut(gPerL), volumeMl, 95);
    assertThat(mixture.volumeMl()).isCloseTo(volumeMl, within(1e-9 * volumeMl));
    assertThat(mixture.cut().gPerL()).isCloseTo(gPerL, within(1e-9 * gPerL));
    assertThat(mixture.spiritMl()).isLessThan(volumeMl);
  }

  @Property(tries = 200, seed = "20261125")
  void thinningAndAddingFlakesUndoEachOther(
      @ForAll @DoubleRange(min = 50, max = 500) double gPerL,
      @ForAll @DoubleRange(min = 0.2, max = 1) double share) {
    Solution had = Solution.ofVolume(new Cut(gPerL), 1000, 95);
    Solution thin = had.thinnedTo(new Cut(gPerL * share));
    assertThat(thin.flakesG()).isEqualTo(had.flakesG());
    assertThat(thin.strengthenedTo(had.cut()).cut().gPerL()).isCloseTo(gPerL, within(1e-9 * gPerL));
    assertThat(thin.volumeMl()).isGreaterThanOrEqualTo(had.volumeMl() - 1e-9);
  }

  @Test
  void aCutIsOnSpiritNotOnTheMixture() {
    Solution gallon = Solution.ofVolume(Cut.ofLbPerUsGal(2), 3785.411784, 95);
    assertThat(gallon.flakesG() / 453.59237).isCloseTo(1.653, within(0.001));
  }

  @Test
  void anImperialPoundIsTheSmallerOne() {
    assertThat(Cut.ofLbPerImpGal(1).gPerL()).isCloseTo(99.7764, within(1e-4));
    assertThat(Cut.ofLbPerUsGal(2).lbPerImpGal()).isCloseTo(2.4019, within(1e-4));
  }

  @Test
  void refusesAMixtureThatCannotBe() {
    assertThatThrownBy(() -> new Cut(-1)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> Cut.ofSolidsMassPct(60, 95))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("solids by weight is 60");
    Solution litre = Solution.ofVolume(Cut.ofLbPerUsGal(1), 1000, 95);
    assertThatThrownBy(() -> litre.thinnedTo(Cut.ofLbPerUsGal(2)))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("add flakes");
    assertThatThrownBy(() -> litre.strengthenedTo(new Cut(50)))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("add spirit");
  }
}
