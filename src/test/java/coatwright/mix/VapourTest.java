package coatwright.mix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import coatwright.mix.VapourLoad.Airing;
import coatwright.mix.VapourLoad.Part;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class VapourTest {
  private static final double ATM = 101_325;

  private static VapourLoad ofEthanol(double ml, double roomM3) {
    return new VapourLoad(List.of(new Part(VapourLimits.ETHANOL, ml)), roomM3, 25, ATM);
  }

  @Test
  void aPartPerMillionWeighsWhatASeparateProgramFound() {
    MixChecks.PPM.holds();
    for (Row row : ReferenceTable.read("mix/ppm_to_mg.csv")) {
      assertThat(VapourLimits.named(row.text("solvent")).orElseThrow().molarMassG())
          .isEqualTo(row.number("molar_mass"));
    }
  }

  /**
   * IEC 60079-20-1:2010, NFPA 497:2008, NIOSH and OSHA: the lowest explosive limit and the lower
   * average are the ones used. n-Decane and white spirit lack a limit and are left out by name.
   */
  @Test
  void theLowestPublishedLimitsAreUsed() {
    int compared = 0;
    for (Row row : ReferenceTable.read("mix/safety_limits.csv")) {
      Optional<VapourLimits> limits = VapourLimits.named(row.text("solvent"));
      if (row.text("osha_pel_ppm").isEmpty() || row.text("lel_iec_pct").isEmpty()) {
        assertThat(limits).isEmpty();
        System.out.println("left out, a limit is missing: " + row.text("solvent"));
        continue;
      }
      compared++;
      double lowest =
          Math.min(
              row.number("lel_iec_pct"),
              Math.min(row.number("lel_nfpa_pct"), row.number("lel_niosh_pct")));
      assertThat(limits.orElseThrow().lelPct()).as(row.toString()).isEqualTo(lowest);
      boolean ceiling = row.text("niosh_rel_type").startsWith("ceiling");
      double average =
          ceiling
              ? row.number("osha_pel_ppm")
              : Math.min(row.number("osha_pel_ppm"), row.number("niosh_rel_ppm"));
      assertThat(limits.get().eightHourPpm()).as(row.toString()).isEqualTo(average);
      assertThat(limits.get().passesSkin())
          .as(row.toString())
          .isEqualTo(row.text("niosh_rel_type").contains("skin"));
      String shortTime = row.text("niosh_rel_type").replaceFirst(".*STEL (\\d+).*", "$1");
      assertThat(limits.get().shortTimePpm().orElse(-1))
          .as(row.toString())
          .isEqualTo(
              ceiling
                  ? row.number("niosh_rel_ppm")
                  : shortTime.matches("\\d+") ? Double.parseDouble(shortTime) : -1);
    }
    assertThat(compared).isEqualTo(VapourLimits.values().length);
  }

  /** CRC Handbook, and Perry's where CRC has no value at 20 °C. */
  @Test
  void liquidsWeighWhatTheHandbooksPrint() {
    for (Row row : ReferenceTable.read("solvent/liquid_density.csv")) {
      if (row.number("t_C") == 20 && VapourLimits.named(row.text("solvent")).isPresent()) {
        String crc = row.text("rho_crc_kg_per_m3");
        double printed =
            crc.isEmpty() ? row.number("rho_perry_dippr105_kg_per_m3") : Double.parseDouble(crc);
        assertThat(VapourLimits.named(row.text("solvent")).get().densityKgPerM3())
            .as(row.toString())
            .isCloseTo(printed, within(0.06));
      }
    }
  }

  /** 100 mL of ethanol is 78.93 g; over 28 m3 2819 mg/m3, at 1.8831 mg/m3 a ppm 1497 ppm. */
  @Test
  void aTenthOfALitreInASmallRoomPassesTheExposureLimitLongBeforeTheExplosiveOne() {
    VapourLoad load = ofEthanol(100, 28);
    assertThat(load.closedPpm(load.parts().get(0))).isCloseTo(1497, withinPercentage(0.05));
    assertThat(load.closedExposureSharePct()).isCloseTo(149.7, withinPercentage(0.05));
    assertThat(load.closedLelSharePct()).isCloseTo(4.83, withinPercentage(0.1));
  }

  @Property(tries = 200, seed = "20261125")
  void moreAirNeverMakesItWorseAndNothingPassesTheClosedRoom(
      @ForAll @DoubleRange(min = 1, max = 2000) double ml,
      @ForAll @DoubleRange(min = 0, max = 20) double changes,
      @ForAll @DoubleRange(min = 0.1, max = 8) double overH) {
    VapourLoad load = ofEthanol(ml, 40);
    Part part = load.parts().get(0);
    Airing some = new Airing(changes, overH);
    Airing more = new Airing(changes + 0.5, overH);
    assertThat(load.peakPpm(part, more)).isLessThan(load.peakPpm(part, some));
    assertThat(load.eightHourPpm(part, more)).isLessThan(load.eightHourPpm(part, some));
    assertThat(load.peakPpm(part, some)).isLessThanOrEqualTo(load.closedPpm(part) * (1 + 1e-12));
    assertThat(load.eightHourPpm(part, some)).isLessThanOrEqualTo(load.closedPpm(part));
  }

  /** The closed forms against the same balance stepped in time. */
  @Property(tries = 40, seed = "20261125")
  void theClosedFormsAreTheBalanceStepByStep(
      @ForAll @DoubleRange(min = 0.01, max = 10) double changes,
      @ForAll @DoubleRange(min = 0.2, max = 7.5) double overH) {
    VapourLoad load = ofEthanol(300, 40);
    Part part = load.parts().get(0);
    int steps = 200_000;
    double stepH = 8.0 / steps;
    double ppm = 0;
    double sum = 0;
    double peak = 0;
    for (int i = 0; i < steps; i++) {
      double before = ppm;
      double release = (i + 0.5) * stepH < overH ? load.closedPpm(part) / overH : 0;
      ppm += stepH * (release - changes * ppm) / (1 + changes * stepH / 2);
      sum += (before + ppm) / 2 * stepH;
      peak = Math.max(peak, ppm);
    }
    Airing airing = new Airing(changes, overH);
    assertThat(load.peakPpm(part, airing)).isCloseTo(peak, withinPercentage(0.1));
    assertThat(load.eightHourPpm(part, airing)).isCloseTo(sum / 8, withinPercentage(0.1));
  }

  @Test
  void sharesOfSeveralVapoursAreAdded() {
    VapourLoad both =
        new VapourLoad(
            List.of(new Part(VapourLimits.ETHANOL, 95), new Part(VapourLimits.METHANOL, 5)),
            28,
            25,
            ATM);
    Airing airing = new Airing(1, 1);
    double methanol = both.eightHourPpm(both.parts().get(1), airing) / 200;
    double ethanol = both.eightHourPpm(both.parts().get(0), airing) / 1000;
    assertThat(both.exposureSharePct(airing)).isCloseTo(100 * (methanol + ethanol), within(1e-9));
    assertThat(both.shortTimeSharePct(airing))
        .isCloseTo(100 * both.peakPpm(both.parts().get(1), airing) / 250, within(1e-9));
  }

  @Test
  void refusesARoomThatIsNone() {
    assertThatThrownBy(() -> ofEthanol(100, 0.5))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("room volume");
    assertThatThrownBy(() -> new Airing(1, 9)).isInstanceOf(OutOfRange.class);
    assertThat(VapourLimits.named("white spirit")).isEmpty();
  }
}
