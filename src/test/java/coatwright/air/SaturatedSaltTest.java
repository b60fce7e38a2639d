package coatwright.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.OutOfRange;
import coatwright.quantity.ReferenceTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SaturatedSaltTest {
  @Test
  void agreesWithTheHandbooksOtherFormula() {
    // CRC Handbook, "Constant humidity solutions": RH = A exp(B/T), stated accuracy 2 %RH.
    for (ReferenceTable.Row row : ReferenceTable.read("hygrometer/crc_constant_humidity.csv")) {
      SaturatedSalt salt = SaturatedSalt.named(row.text("salt")).orElseThrow();
      double coldest = Math.max(row.number("t_min_C"), 10);
      double warmest = Math.min(row.number("t_max_C"), 35);
      for (double tempC = coldest; tempC <= warmest; tempC += 5) {
        double handbook = row.number("A") * Math.exp(row.number("B_K") / (tempC + 273.15));
        assertThat(salt.rhPct(tempC))
            .as("%s at %s °C", salt, tempC)
            .isCloseTo(handbook, within(2.0));
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"NaCl, 75.3", "MgCl2, 32.8", "LiCl, 11.3", "KCl, 84.3", "K2SO4, 97.3", "K2CO3, 43.2"})
  void standsWhereTheTableOfFixedPointsPrintsIt(String formula, double at25C) {
    // Greenspan, J. Res. NBS 81A (1977) 89, table of fixed points at 25 °C.
    assertThat(SaturatedSalt.named(formula).orElseThrow().rhPct(25)).isCloseTo(at25C, within(0.06));
  }

  @Test
  void aSensorAKelvinWarmerThanTheSaltReadsSomeFourPointsLow() {
    double apart =
        SaturatedSalt.SODIUM_CHLORIDE.rhAtSensorPct(20, 20)
            - SaturatedSalt.SODIUM_CHLORIDE.rhAtSensorPct(20, 21);
    // 75.5 % times the growth of the saturation pressure, 6.2 % a kelvin at 20 °C.
    assertThat(apart).isCloseTo(4.5, within(0.2));
    assertThatThrownBy(() -> SaturatedSalt.SODIUM_CHLORIDE.rhAtSensorPct(20, 21.5))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("beside the salt");
  }

  @Test
  void isNamedByFormulaOrName() {
    assertThat(SaturatedSalt.named("nacl")).contains(SaturatedSalt.SODIUM_CHLORIDE);
    assertThat(SaturatedSalt.named("magnesium-chloride"))
        .contains(SaturatedSalt.MAGNESIUM_CHLORIDE);
    assertThat(SaturatedSalt.named("sugar")).isEmpty();
  }
}
