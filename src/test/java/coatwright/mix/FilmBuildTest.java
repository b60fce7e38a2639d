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

class FilmBuildTest {
  @Test
  void wetFilmAndCoverageAreThoseOfTheTable() {
    MixChecks.WET_FILM.holds();
    MixChecks.COVERAGE.holds();
    for (Row row : ReferenceTable.read("mix/film_thickness.csv")) {
      double solids = row.number("volume_solids_pct") / 100;
      double coverage = FilmBuild.coverageM2PerL(row.number("dry_um"), solids);
      assertThat(coverage * MixChecks.FT2_PER_GAL)
          .isCloseTo(row.number("coverage_ft2_per_gal"), within(0.00051));
    }
  }

  /** Worked figures of published coating guides; two contradict themselves and are left out. */
  @Test
  void publishedCoverageTablesSayTheSame() {
    MixChecks.COVERAGE_PRINTED.holds();
    int leftOut = 0;
    for (Row row : ReferenceTable.read("mix/film_thickness_printed.csv")) {
      if (!row.text("doubtful").equals("no")) {
        leftOut++;
        System.out.printf(
            "left out: %s, ours %.2f %s (%s)%n",
            row.text("case"),
            MixChecks.ofPrinted(row),
            row.text("result_unit"),
            row.text("doubtful"));
      }
    }
    assertThat(leftOut).isEqualTo(2);
  }

  @Property(tries = 200, seed = "20261125")
  void whatIsMixedForAFilmIsThatFilmOnceTheWasteIsGone(
      @ForAll @DoubleRange(min = 0.1, max = 50) double areaM2,
      @ForAll @DoubleRange(min = 1, max = 200) double dryUm,
      @ForAll @DoubleRange(min = 50, max = 500) double cutGPerL,
      @ForAll @DoubleRange(min = 0, max = 80) double wastePct) {
    double solids = FilmBuild.solidsFraction(cutGPerL);
    double ml = FilmBuild.mixtureMl(areaM2, dryUm, solids, wastePct);
    double onWoodMl = ml * (1 - wastePct / 100);
    assertThat(onWoodMl / areaM2 * solids).isCloseTo(dryUm, within(1e-9 * dryUm));
  }

  @Test
  void refusesAFilmThatIsNone() {
    assertThatThrownBy(() -> FilmBuild.coverageM2PerL(0, 0.2)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> FilmBuild.mixtureMl(1, 10, 0.2, 95))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("waste is 95");
  }
}
