package coatwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.Deviation;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import org.junit.jupiter.api.Test;

class WoodThermalTest {
  /** Wood Handbook FPL-GTR-190 equations 4-15 to 4-18 run by others, to the digits they printed. */
  @Test
  void agreesWithAnIndependentRunOfTheHandbookEquations() {
    Deviation conductivity = new Deviation("W/(m K)");
    Deviation heatCapacity = new Deviation("kJ/(kg K)");
    Deviation density = new Deviation("kg/m3");
    for (Row row : ReferenceTable.read("wood/thermal_computed.csv")) {
      double gravity = row.number("specific_gravity");
      double moisturePct = row.number("mc_pct");
      conductivity.add(
          WoodThermal.conductivityWPerMK(gravity, moisturePct),
          row.number("k_across_W_per_mK"),
          row.cells());
      heatCapacity.add(
          WoodThermal.heatCapacityJPerKgK(row.number("t_C"), moisturePct) / 1000,
          row.number("cp_kJ_per_kgK"),
          row.cells());
      density.add(
          WoodThermal.densityKgPerM3(gravity, moisturePct),
          row.number("density_kg_per_m3"),
          row.cells());
    }
    assertThat(conductivity.largest()).as("%s", conductivity).isLessThan(6e-6);
    assertThat(heatCapacity.largest()).as("%s", heatCapacity).isLessThan(6e-6);
    assertThat(density.largest()).as("%s", density).isLessThan(0.006);
    assertThat(density.count()).isEqualTo(60);
  }

  /** The handbook's coefficients as another reader copied them out, at two states by hand. */
  @Test
  void usesThePrintedCoefficients() {
    double k = 0.5 * (printed("B") + printed("C") * 12) + printed("A");
    assertThat(WoodThermal.conductivityWPerMK(0.5, 12)).isCloseTo(k, within(1e-12));
    double kelvin = 293.15;
    double dry = printed("a") + printed("b") * kelvin;
    double bond = 12 * (printed("b1") + printed("b2") * kelvin + printed("b3") * 12);
    double wet = 1000 * ((dry + printed("cpw") * 0.12) / 1.12 + bond);
    assertThat(WoodThermal.heatCapacityJPerKgK(20, 12)).isCloseTo(wet, within(1e-9));
  }

  private static double printed(String symbol) {
    return ReferenceTable.read("wood/thermal_and_density.csv").stream()
        .filter(row -> row.text("symbol").equals(symbol))
        .findFirst()
        .orElseThrow()
        .number("value");
  }

  /** Worked value printed with equation 4-17: 1.91 kJ/(kg K) at 12 % and 340 K. */
  @Test
  void heatCapacityReproducesThePrintedWorkedValue() {
    assertThat(WoodThermal.heatCapacityJPerKgK(340 - 273.15, 12)).isCloseTo(1910, within(5.0));
  }

  /** Wood Handbook chapter 4, worked example: white ash, G = 0.605 at 12 %, 678 kg/m³. */
  @Test
  void densityReproducesThePrintedExampleOfWhiteAsh() {
    assertThat(WoodThermal.densityKgPerM3(0.605, 12)).isCloseTo(678, within(0.6));
  }

  @Test
  void refusesWoodTheHandbookDoesNotKnow() {
    assertThatThrownBy(() -> WoodThermal.conductivityWPerMK(0.2, 8)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> WoodThermal.conductivityWPerMK(0.5, 30))
        .isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> WoodThermal.heatCapacityJPerKgK(20, -1))
        .isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> WoodThermal.densityKgPerM3(Double.NaN, 8))
        .isInstanceOf(OutOfRange.class);
  }
}
