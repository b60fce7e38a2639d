package coatwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.air.MoistAir;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.ReferenceTable;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WoodMovementTest {
  private static final double CHERRY = 0.00248;

  /**
   * Wood Handbook equation 13-2 worked by others; the last row is worked in a published flooring
   * table, 5 in of mesquite from 6 to 9 %, printed 0.019 in.
   */
  @Test
  void agreesWithWorkedExamplesToTheirDigits() {
    WoodChecks.MOVEMENT_WORKED.holds();
    double mesquiteMm = WoodMovement.changeMm(5 * 25.4, 0.00129, 6, 9);
    assertThat(mesquiteMm / 25.4).isCloseTo(0.019, within(5e-4));
  }

  /**
   * Wood Handbook Table 4-2: 8.4 % at 70 °F and 45 %, 11.9 % at 65 %; so a flat-sawn cherry panel
   * of 300 mm moves by 300 × 0.00248 × 3.5 = 2.6 mm. The table is printed to a tenth.
   */
  @Test
  void movesBetweenTheMoisturesOfTwoAirs() {
    double tempC = (70 - 32) / 1.8;
    double mm = WoodMovement.changeMm(300, CHERRY, MoistAir.of(tempC, 45), MoistAir.of(tempC, 65));
    double printedMm = 300 * CHERRY * (printedPct("70", "65") - printedPct("70", "45"));
    assertThat(mm).isCloseTo(printedMm, within(300 * CHERRY * 0.1));
    assertThat(mm).isBetween(2.4, 2.8);
  }

  private static double printedPct(String tempF, String rhPct) {
    return ReferenceTable.read("wood/emc_table.csv").stream()
        .filter(row -> row.text("t_F").equals(tempF) && row.text("rh_pct").equals(rhPct))
        .findFirst()
        .orElseThrow()
        .number("emc_table_pct");
  }

  @Property(seed = "20261125")
  void thereAndBackIsNoMovement(
      @ForAll @DoubleRange(min = 6, max = 14) double fromPct,
      @ForAll @DoubleRange(min = 6, max = 14) double toPct) {
    double there = WoodMovement.strainPct(CHERRY, fromPct, toPct);
    double back = WoodMovement.strainPct(CHERRY, toPct, fromPct);
    assertThat(there + back).isCloseTo(0, within(1e-12));
    assertThat(Math.signum(there)).isEqualTo(Math.signum(toPct - fromPct));
  }

  @Property(seed = "20261125")
  void damperAirSwellsTheBoard(
      @ForAll @DoubleRange(min = 35, max = 65) double rhPct,
      @ForAll @DoubleRange(min = 0.5, max = 5) double stepPct,
      @ForAll @DoubleRange(min = 10, max = 30) double tempC) {
    MoistAir dry = MoistAir.of(tempC, rhPct);
    MoistAir damp = MoistAir.of(tempC, rhPct + stepPct);
    assertThat(WoodMovement.strainPct(CHERRY, dry, damp)).isPositive();
    assertThat(WoodMovement.strainPct(2 * CHERRY, dry, damp))
        .isCloseTo(2 * WoodMovement.strainPct(CHERRY, dry, damp), within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({
    "0.05, 0.002, 8, 9, width",
    "300, 0.05, 8, 9, movement",
    "300, 0.002, 5.9, 9, before",
    "300, 0.002, 8, 14.1, after",
    "300, 0.002, NaN, 9, before",
  })
  void refusesWhatTheEquationDoesNotHoldFor(
      double widthMm, double perPct, double fromPct, double toPct, String because) {
    assertThatThrownBy(() -> WoodMovement.changeMm(widthMm, perPct, fromPct, toPct))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining(because);
  }

  @Test
  void anAirInWhichWoodSettlesTooDryIsRefusedWithTheAirsThatWillDo() {
    assertThatThrownBy(() -> WoodMovement.moisturePct(MoistAir.of(20, 15)))
        .isInstanceOf(OutOfRange.class)
        .hasMessage(
            "wood in air of 20.0 °C and 15 % settles at 3.6 % moisture, and its movement is known"
                + " from 6 to 14 %; take an air from about 29 to 73 % humidity");
    assertThatThrownBy(() -> WoodMovement.moisturePct(MoistAir.of(20, 90)))
        .isInstanceOf(OutOfRange.class);
  }
}
