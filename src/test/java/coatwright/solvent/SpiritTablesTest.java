package coatwright.solvent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.Deviation;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Ethanol and water, and the pure liquids, against the tables that {@link SpiritTest} leaves. */
class SpiritTablesTest {
  private static final double SIXTY_F = EthanolWaterDensity.SIXTY_FAHRENHEIT_C;

  private static final Map<String, Solvent> BY_NAME =
      Map.of(
          "ethanol", Solvent.ETHANOL,
          "water", Solvent.WATER,
          "2-butoxyethanol", Solvent.BUTOXYETHANOL,
          "methanol", Solvent.METHANOL,
          "1-butanol", Solvent.BUTANOL,
          "n-butyl acetate", Solvent.BUTYL_ACETATE);

  /** OIML R 22 by a separate program; strength at 60 °F. */
  @Test
  void strengthAtSixtyFahrenheitFollowsTheTables() {
    List<Row> rows = ReferenceTable.read("solvent/strength_at_60F.csv");
    for (Row row : rows) {
      double mass = EthanolWaterDensity.massFraction(row.number("abv_pct"), SIXTY_F);
      assertThat(100 * mass).isCloseTo(row.number("mass_pct"), within(1e-4));
      assertThat(EthanolWaterDensity.densityKgPerM3(mass, SIXTY_F))
          .isCloseTo(row.number("rho_15_56C_kg_per_m3"), within(1e-3));
      assertThat(specificGravity(mass))
          .isCloseTo(row.number("specific_gravity_15_56_15_56_vacuum"), within(1e-5));
    }
    assertThat(rows).hasSize(29);
  }

  private static double specificGravity(double mass) {
    return EthanolWaterDensity.densityKgPerM3(mass, SIXTY_F)
        / EthanolWaterDensity.densityKgPerM3(0, SIXTY_F);
  }

  /** USP 29 alcoholometric table, from NBS Bulletin 9; its specific gravity is in air. */
  @Test
  void agreesWithThePharmacopoeiaAtItsOwnTemperature() {
    for (Row row : ReferenceTable.read("solvent/usp_crosscheck.csv")) {
      double mass = EthanolWaterDensity.massFraction(row.number("abv_15_56C_pct"), SIXTY_F);
      assertThat(100 * mass)
          .as(row.toString())
          .isCloseTo(row.number("mass_pct_usp"), within(0.005));
      assertThat(specificGravity(mass)).isCloseTo(row.number("sg_usp_air_15_56"), within(1.1e-4));
    }
  }

  /** Proof by its definition; what is from memory is left out by name. */
  @Test
  void proofIsWhatTheRulesSay() {
    for (Row row : ReferenceTable.read("solvent/proof.csv")) {
      switch (row.text("statement")) {
        case "190 proof", "200 proof" -> {
          double proof = Double.parseDouble(row.text("statement").substring(0, 3));
          assertThat(SpiritStrength.ofProof(proof).volumePct()).isEqualTo(row.number("value"));
        }
        case "ethanol at 20 C" ->
            assertThat(EthanolWaterDensity.densityKgPerM3(1, 20))
                .isCloseTo(row.number("value"), within(0.005));
        case "US proof" -> {
          // Its definition, held row by row in SpiritBottleTest.
          assertThat(row.text("value")).startsWith("2 x");
        }
        default -> System.out.println("left out of the check: " + row.text("statement"));
      }
    }
  }

  /** Van Laar's constants, and boiling by them as a separate program found it. */
  @Test
  void vanLaarIsThePublishedOne() {
    Row published =
        ReferenceTable.read("solvent/activity_models.csv").stream()
            .filter(row -> row.text("model").equals("van Laar"))
            .findFirst()
            .orElseThrow();
    assertThat(VanLaar.A).isEqualTo(published.number("p12"));
    assertThat(VanLaar.B).isEqualTo(published.number("p21"));
    Deviation deviation = new Deviation("mole fraction");
    for (Row row : ReferenceTable.read("solvent/van_laar_boiling.csv")) {
      double x = row.number("x_ethanol");
      double atC = row.number("van_laar_t_C");
      double spirit =
          x * Math.exp(VanLaar.lnGammaSpirit(1 - x)) * Solvent.ETHANOL.vapourPressurePa(atC);
      double water =
          (1 - x) * Math.exp(VanLaar.lnGammaWater(1 - x)) * Solvent.WATER.vapourPressurePa(atC);
      deviation.add(spirit / (spirit + water), row.number("van_laar_y"), row);
    }
    assertThat(deviation.largest()).as(deviation.toString()).isLessThan(0.003);
  }

  /** Perry's table below 12 % is in SpiritTest; this one has no origin and cannot fail a build. */
  @Test
  void strongSpiritBesideATableOfUnknownOriginIsPrintedOnly() {
    Deviation deviation = new Deviation("kg/m³");
    for (Row row : ReferenceTable.read("solvent/density_20C_strong.csv")) {
      double mass = row.number("mass_pct");
      deviation.add(
          EthanolWaterDensity.densityKgPerM3(mass / 100, 20), row.number("rho_kg_per_m3"), mass);
    }
    System.out.println("left out of the check, density above 80 %: " + deviation);
    assertThat(deviation.count()).isEqualTo(5);
  }

  /** OIML R 22: at 20 °C the formula is its twelve A, so they can be summed beside it. */
  @Test
  void theCoefficientsAreThoseOfTheRecommendation() {
    List<Row> rows = ReferenceTable.read("solvent/oiml_r22_coefficients.csv");
    assertThat(rows).hasSize(54);
    for (double mass : new double[] {0, 0.1, 0.35, 0.5, 0.8, 0.9281, 1}) {
      for (double atC : new double[] {-20, 0, 15, 20, 27, 40}) {
        assertThat(EthanolWaterDensity.densityKgPerM3(mass, atC))
            .isCloseTo(sum(rows, mass, atC - 20), within(1e-6));
      }
    }
  }

  private static double sum(List<Row> rows, double p, double t) {
    double density = 0;
    for (Row row : rows) {
      int k = (int) row.number("k");
      String group = row.text("group");
      density +=
          row.number("value")
              * switch (group.charAt(0)) {
                case 'A' -> Math.pow(p, k - 1);
                case 'B' -> Math.pow(t, k);
                default -> Math.pow(p, k) * Math.pow(t, Integer.parseInt(group.substring(1)));
              };
    }
    return density;
  }

  /** IUPAC molar masses; CRC heats of vaporization, which vary by a few per cent among sources. */
  @Test
  void pureLiquidsHaveTheHandbooksMassAndHeat() {
    for (Row row : ReferenceTable.read("solvent/pure_properties.csv")) {
      Solvent ours = BY_NAME.get(row.text("solvent"));
      if (ours != null) {
        double molarG = row.number("molar_mass_g_per_mol");
        assertThat(1000 * ours.molarMassKgPerMol())
            .isCloseTo(molarG, within(1e-4 * molarG + 0.006));
        double heat = row.number("latent_heat_25C_kJ_per_mol");
        assertThat(ours.latentHeatJPerMol() / 1000)
            .as(row.toString())
            .isCloseTo(heat, within(0.011 * heat));
      }
    }
  }

  /** CRC Handbook and Perry's at 20 °C; the VDI form for water is 0.1 % off and is left out. */
  @Test
  void pureLiquidsHaveTheHandbooksDensity() {
    for (Row row : ReferenceTable.read("solvent/liquid_density.csv")) {
      Solvent ours = BY_NAME.get(row.text("solvent"));
      String crc = row.text("rho_crc_kg_per_m3");
      if (ours != null && row.number("t_C") == 20 && !crc.isEmpty()) {
        double printed = Double.parseDouble(crc);
        assertThat(ours.densityKgPerM3()).as(row.toString()).isCloseTo(printed, within(2.0));
      }
    }
  }

  /** NIOSH Pocket Guide: 44 mmHg at 20 °C; the others do not say at what temperature. */
  @Test
  void ethanolPressesAsThePocketGuidePrints() {
    for (Row row : ReferenceTable.read("solvent/vapour_pressure_printed.csv")) {
      if (row.text("doubtful").equals("no")) {
        assertThat(BY_NAME.get(row.text("solvent")).vapourPressurePa(row.number("t_C")))
            .isCloseTo(row.number("p_Pa"), within(0.012 * row.number("p_Pa")));
      } else {
        System.out.println("left out: " + row.text("solvent") + ", " + row.text("doubtful"));
      }
    }
  }

  /** Published evaporation numbers; those from memory or in doubt are printed, not held to. */
  @Test
  void evaporationNumbersBesideThePublishedOnes() {
    Map<String, Solvent> names =
        Map.of(
            "ethanol (95 %)", Solvent.ETHANOL,
            "water", Solvent.WATER,
            "n-butyl acetate", Solvent.BUTYL_ACETATE,
            "methanol", Solvent.METHANOL,
            "1-butanol", Solvent.BUTANOL,
            "2-butoxyethanol", Solvent.BUTOXYETHANOL);
    for (Row row : ReferenceTable.read("solvent/evaporation_numbers.csv")) {
      Solvent liquid = names.get(row.text("solvent"));
      if (liquid == null) {
        continue;
      }
      double ours = EvaporationNumber.selfCooled(liquid);
      double published = row.number("number");
      if (row.text("doubtful").equals("no")) {
        assertThat(ours).as(row.toString()).isCloseTo(published, within(0.25 * published));
      } else {
        System.out.printf(
            "left out: evaporation number of %s, published %.2f, ours %.2f (%s)%n",
            row.text("solvent"), published, ours, row.text("doubtful"));
      }
    }
  }
}
