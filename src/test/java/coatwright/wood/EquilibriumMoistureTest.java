package coatwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.air.MoistAir;
import coatwright.quantity.Deviation;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EquilibriumMoistureTest {
  /** The table is given at whole degrees Fahrenheit and to a tenth of a per cent. */
  private static double ours(Row row) {
    return EquilibriumMoisture.pct((row.number("t_F") - 32) / 1.8, row.number("rh_pct"));
  }

  /**
   * Wood Handbook FPL-GTR-190, Table 4-2. One cell is left out as a misprint (110 °F, 20 %), and
   * those written down from memory (95 % and the end of the 90 % row) may not fail a build.
   */
  @Test
  void followsEveryPrintedCellOfTheWoodHandbookTableWithinSixHundredthsOfAPoint() {
    Deviation deviation = new Deviation("points");
    for (Row row : ReferenceTable.read("wood/emc_table.csv")) {
      if (row.text("basis").equals("looked up") && row.text("flag").isEmpty()) {
        deviation.add(ours(row), row.number("emc_table_pct"), row.cells());
      }
    }
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(0.06);
    assertThat(deviation.count()).isGreaterThan(180);
  }

  /** The same equation typed and run by others, 5 to 40 °C and 5 to 98 %. */
  @Test
  void agreesWithAnIndependentRunOfTheEquationWithinItsPrintedDigits() {
    Deviation deviation = new Deviation("points");
    for (Row row : ReferenceTable.read("wood/emc_equation_grid.csv")) {
      double oursPct = EquilibriumMoisture.pct(row.number("t_C"), row.number("rh_pct"));
      deviation.add(oursPct, row.number("emc_pct"), row.cells());
    }
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(1e-4);
    assertThat(deviation.count()).isEqualTo(162);
  }

  /** Worked value of the Wood Handbook: 8.4 % at 140 °F and 55 %. */
  @Test
  void reproducesTheWorkedValueOfTheHandbook() {
    assertThat(EquilibriumMoisture.pct(60, 55)).isCloseTo(8.4, within(0.05));
  }

  /**
   * Simpson 1998, FPL-RN-0268, with its coefficients as another reader copied them out. Those for
   * Fahrenheit are from memory, so how far they stand off is printed.
   */
  @Test
  void isTheEquationWithThePrintedCoefficients() {
    Deviation celsius = new Deviation("points");
    Deviation fahrenheit = new Deviation("points");
    for (int tempC = 0; tempC <= 60; tempC += 5) {
      for (int rhPct = 5; rhPct <= 95; rhPct += 5) {
        double oursPct = EquilibriumMoisture.pct(tempC, rhPct);
        celsius.add(oursPct, simpson("C", tempC, rhPct), tempC + " °C " + rhPct);
        fahrenheit.add(oursPct, simpson("F", tempC * 1.8 + 32, rhPct), tempC + " °C " + rhPct);
      }
    }
    System.out.println("Simpson 1998 with Fahrenheit coefficients from memory: " + fahrenheit);
    assertThat(celsius.count()).isEqualTo(247);
    assertThat(celsius.largest()).as("%s", celsius).isLessThan(1e-9);
  }

  private static double simpson(String unit, double temp, double rhPct) {
    double kh = coefficient(unit, "K", temp) * rhPct / 100;
    double k1 = coefficient(unit, "K1", temp);
    double k2 = coefficient(unit, "K2", temp);
    double first = k1 * kh;
    double second = k1 * k2 * kh * kh;
    return 1800
        / coefficient(unit, "W", temp)
        * (kh / (1 - kh) + (first + 2 * second) / (1 + first + second));
  }

  private static double coefficient(String unit, String symbol, double temp) {
    Row row =
        ReferenceTable.read("wood/emc_coefficients.csv").stream()
            .filter(r -> r.text("unit_of_T").equals(unit) && r.text("symbol").equals(symbol))
            .findFirst()
            .orElseThrow();
    return row.number("constant") + temp * (row.number("linear") + temp * row.number("quadratic"));
  }

  @Property(seed = "20261125")
  void humidityForAMoistureUndoesMoistureForAHumidity(
      @ForAll @DoubleRange(min = -1.2, max = 60) double tempC,
      @ForAll @DoubleRange(min = 0, max = 100) double rhPct) {
    double moisturePct = EquilibriumMoisture.pct(tempC, rhPct);
    assertThat(EquilibriumMoisture.rhPct(tempC, moisturePct)).isCloseTo(rhPct, within(1e-7));
  }

  @Property(seed = "20261125")
  void damperAirKeepsWoodWetter(
      @ForAll @DoubleRange(min = -1.2, max = 60) double tempC,
      @ForAll @DoubleRange(min = 0, max = 99) double rhPct,
      @ForAll @DoubleRange(min = 0.1, max = 1) double stepPct) {
    assertThat(EquilibriumMoisture.pct(tempC, rhPct + stepPct))
        .isGreaterThan(EquilibriumMoisture.pct(tempC, rhPct));
  }

  @ParameterizedTest
  @CsvSource({"-1.3, 50", "61, 50", "20, -1", "20, 101", "NaN, 50", "20, NaN"})
  void refusesWhatTheTableNeverMeasured(double tempC, double rhPct) {
    assertThatThrownBy(() -> EquilibriumMoisture.pct(tempC, rhPct)).isInstanceOf(OutOfRange.class);
  }

  @Test
  void saysNothingOfWoodInFrostyAir() {
    assertThat(EquilibriumMoisture.ofAir(MoistAir.of(-10, 60))).isEmpty();
    assertThat(EquilibriumMoisture.ofAir(MoistAir.of(20, 60)).orElseThrow())
        .isCloseTo(EquilibriumMoisture.pct(20, 60), within(0.0));
  }
}
