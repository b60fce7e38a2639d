package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.quantity.Deviation;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The pace of the film's own clock against the Arrhenius law worked outside this project. */
class ArrheniusTest {
  private static final double STRETCH_S = 1000;

  private static double pace(double energyKjPerMol, double tempC) {
    EquivalentTime clock =
        new EquivalentTime(AirCourse.steady(tempC, 0.5, 0.1), 1000 * energyKjPerMol);
    return clock.at(STRETCH_S) / STRETCH_S;
  }

  /** Rate against that at 20 °C, 5 to 40 °C and 40 to 100 kJ/mol, printed to six decimals. */
  @Test
  void paceAgainstTwentyDegreesIsThatOfTheLaw() {
    Deviation deviation = new Deviation("ppm");
    for (Row row : table("arrhenius_check.csv")) {
      assertThat(row.number("t_ref_C")).isEqualTo(20);
      double ours = pace(row.number("ea_kJ_per_mol"), row.number("t_C"));
      deviation.addPpm(ours, row.number("rate_ratio"), row.cells());
    }
    assertThat(deviation.count()).isEqualTo(48);
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(5);
  }

  /** How much faster for ten degrees, five below to five above. */
  @Test
  void tenDegreesQuickenItAsTheLawSays() {
    Deviation deviation = new Deviation("ppm");
    for (Row row : table("arrhenius_check.csv")) {
      double energy = row.number("ea_kJ_per_mol");
      double tempC = row.number("t_C");
      double ours = pace(energy, tempC + 5) / pace(energy, tempC - 5);
      deviation.addPpm(ours, row.number("q10_at_midpoint"), row.cells());
    }
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(1);
  }

  @Test
  void paceDoublesAtTheEnergyThatMakesItDouble() {
    Deviation deviation = new Deviation("ppm");
    for (Row row : table("doubling_energy.csv")) {
      double energy = row.number("ea_for_doubling_kJ_per_mol");
      double ours = pace(energy, row.number("t2_C")) / pace(energy, row.number("t1_C"));
      deviation.addPpm(ours, 2, row.cells());
    }
    assertThat(deviation.count()).isEqualTo(6);
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(2);
  }

  private static List<Row> table(String file) {
    return ReferenceTable.read("kinetics/" + file);
  }
}
