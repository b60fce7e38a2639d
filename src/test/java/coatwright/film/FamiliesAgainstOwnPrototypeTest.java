package coatwright.film;

import static coatwright.film.Cures.hoursTo;
import static coatwright.film.Cures.steady;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import coatwright.air.SaturationFunction;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import coatwright.solvent.AirFlow;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The curing families against our own independent prototype: agreement, not truth. Its times are
 * printed to two decimals, those of the two-part film read straight on a coarse grid.
 */
class FamiliesAgainstOwnPrototypeTest {
  static Stream<Row> oil() {
    return rows("oxidative");
  }

  static Stream<Row> water() {
    return rows("waterborne");
  }

  static Stream<Row> twoPart() {
    return rows("two-part");
  }

  private static Stream<Row> rows(String family) {
    return ReferenceTable.read("film/families.csv").stream()
        .filter(row -> row.text("family").equals(family));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("oil")
  void oilAgreesWithinTheLastPrintedDigit(Row row) {
    CureJob job = steady(Cures.varnish(), row.number("air_c"), row.number("rh"), 80);
    assertThat(hoursTo(job, Milestone.DRY_TO_TOUCH))
        .isCloseTo(row.number("touch_h"), within(0.006));
    assertThat(hoursTo(job, Milestone.DRY_TO_RECOAT))
        .isCloseTo(row.number("recoat_h"), within(0.006));
    assertThat(hoursTo(job, Milestone.DRY_HARD)).isCloseTo(row.number("sand_h"), within(0.006));
    assertThat(hoursTo(job, Milestone.RUB_OUT)).isCloseTo(row.number("rub_h"), within(0.13));
    assertThat(hoursTo(job, Milestone.FULL_HARDNESS)).isCloseTo(row.number("full_h"), within(0.13));
  }

  /** The flux is compared with Stefan's factor taken out, which the prototype left out there. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("water")
  void waterAgreesOnceStefansFactorIsTakenOut(Row row) {
    double airC = row.number("air_c");
    double rh = row.number("rh");
    WetFilm wet = WetFilm.in(Cures.water(), airC, rh, airC, 0.1);
    SaturationFunction saturation = SaturationFunction.HYLAND_WEXLER_WATER;
    double stefan =
        AirFlow.stefanFactor(saturation.pressurePa(wet.tempC()), rh * saturation.pressurePa(airC));
    assertThat(wet.tempC()).isCloseTo(row.number("film_c"), within(0.01));
    assertThat(wet.waterKgPerM2S() * 3.6e6 / stefan)
        .isCloseTo(row.number("flux_g_m2_h"), withinPercentage(0.3));
    CureJob job = steady(Cures.water(), airC, rh, 100);
    assertThat(hoursTo(job, Milestone.DRY_TO_TOUCH))
        .isCloseTo(row.number("touch_h"), withinPercentage(4.0));
    assertThat(hoursTo(job, Milestone.DRY_TO_RECOAT))
        .isCloseTo(row.number("recoat_h"), withinPercentage(3.0));
    assertThat(hoursTo(job, Milestone.DRY_HARD))
        .isCloseTo(row.number("sand_h"), withinPercentage(3.0));
    assertThat(hoursTo(job, Milestone.FULL_HARDNESS)).isCloseTo(row.number("full_h"), within(0.13));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("twoPart")
  void twoPartAgreesWithinTheGridItWasReadFrom(Row row) {
    double airC = row.number("air_c");
    CureJob job = steady(Cures.twoPart(), airC, 0.5, 100);
    assertThat(hoursTo(job, Milestone.DRY_TO_TOUCH))
        .isCloseTo(row.number("touch_h"), withinPercentage(0.2));
    assertThat(hoursTo(job, Milestone.DRY_TO_RECOAT))
        .isCloseTo(row.number("recoat_h"), withinPercentage(0.2));
    assertThat(hoursTo(job, Milestone.DRY_HARD))
        .isCloseTo(row.number("sand_h"), withinPercentage(0.2));
    double rubH = hoursTo(job, Milestone.RUB_OUT);
    if (row.text("rub_h").equals("inf")) {
      assertThat(rubH).isInfinite();
    } else {
      assertThat(rubH).isCloseTo(row.number("rub_h"), withinPercentage(0.3));
    }
    assertThat(Cures.twoPart().potLifeH(airC).orElseThrow())
        .isCloseTo(row.number("pot_h"), within(0.006));
    assertThat(Conversion.steady(Cures.twoPart(), airC).after(2000))
        .isCloseTo(row.number("stall"), within(0.006));
  }
}
