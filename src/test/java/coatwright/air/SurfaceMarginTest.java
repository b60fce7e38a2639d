package coatwright.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import org.junit.jupiter.api.Test;

/**
 * How cold a surface may be: the 3 K rule of coating guides that name ISO 8502-4, tabulated with
 * PsychroLib 2.5.0.
 */
class SurfaceMarginTest {
  @Test
  void theDewPointAndTheMarginAreThoseOfTheTable() {
    for (Row row : ReferenceTable.read("moist_air/dewpoint_margin.csv")) {
      MoistAir air = MoistAir.of(row.number("t_air_C"), row.number("rh_pct"));
      if (air.dewPointC() < 0) {
        // The table is over ice below freezing; ours is over water, as a hygrometer means it.
        continue;
      }
      assertThat(air.dewPointC())
          .as(row.toString())
          .isCloseTo(row.number("t_dew_C"), within(0.003));
      double marginK = air.airTempC() - air.dewPointC();
      assertThat(marginK).isCloseTo(row.number("margin_if_surface_at_air_K"), within(0.003));
      assertThat(marginK >= 3).isEqualTo(row.text("rule_met_if_surface_at_air").equals("yes"));
    }
  }

  /** The 3 K rule fails before 85 % is reached, so that the usual 85 % never binds first. */
  @Test
  void aSurfaceAsWarmAsTheAirBreaksTheRuleBeforeEightyFivePerCent() {
    for (Row row : ReferenceTable.read("moist_air/rh_limit_for_3K.csv")) {
      MoistAir air = MoistAir.of(row.number("t_air_C"), row.number("rh_limit_pct"));
      assertThat(air.airTempC() - air.dewPointC()).isCloseTo(3, within(0.003));
      assertThat(row.number("rh_limit_pct")).isLessThan(85);
    }
  }

  /** A coatings glossary: air of 30 °C at 55 % condenses on surfaces of 20 °C or less. */
  @Test
  void aWorkedExampleOfAGlossary() {
    assertThat(MoistAir.of(30, 55).dewPointC()).isCloseTo(20, within(0.05));
  }
}
