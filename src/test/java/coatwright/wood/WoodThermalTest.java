package coatwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.OutOfRange;
import coatwright.quantity.ReferenceTable;
import org.junit.jupiter.api.Test;

class WoodThermalTest {
  /** Wood Handbook FPL-GTR-190 equations 4-15 to 4-18 run by others, to the digits they printed. */
  @Test
  void agreesWithAnIndependentRunOfTheHandbookEquations() {
    WoodChecks.CONDUCTIVITY.holds();
    WoodChecks.HEAT_CAPACITY.holds();
    WoodChecks.DENSITY.holds();
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
    WoodChecks.HEAT_CAPACITY_WORKED.holds();
  }

  /** Wood Handbook chapter 4, worked example: white ash, G = 0.605 at 12 %, 678 kg/m³. */
  @Test
  void densityReproducesThePrintedExampleOfWhiteAsh() {
    WoodChecks.DENSITY_WORKED.holds();
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
