package coatwright.solvent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.Deviation;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import org.junit.jupiter.api.Test;

/** Ethanol and water, and the pure liquids, against the tables that {@link SpiritTest} leaves. */
class SpiritTablesTest {
  private static final double SIXTY_F = EthanolWaterDensity.SIXTY_FAHRENHEIT_C;

  /** OIML R 22 by a separate program; strength at 60 °F. */
  @Test
  void strengthAtSixtyFahrenheitFollowsTheTables() {
    SolventChecks.SIXTY_STRENGTH.holds();
    SolventChecks.SIXTY_DENSITY.holds();
    for (Row row : ReferenceTable.read("solvent/strength_at_60F.csv")) {
      double mass = EthanolWaterDensity.massFraction(row.number("abv_pct"), SIXTY_F);
      assertThat(SolventChecks.specificGravity(mass))
          .isCloseTo(row.number("specific_gravity_15_56_15_56_vacuum"), within(1e-5));
    }
  }

  /** USP 29 alcoholometric table, from NBS Bulletin 9; its specific gravity is in air. */
  @Test
  void agreesWithThePharmacopoeiaAtItsOwnTemperature() {
    SolventChecks.PHARMACOPOEIA.holds();
    SolventChecks.PHARMACOPOEIA_GRAVITY.holds();
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
    SolventChecks.VAN_LAAR.holds();
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
    assertThat(ReferenceTable.read("solvent/oiml_r22_coefficients.csv")).hasSize(54);
    SolventChecks.COEFFICIENTS.holds();
  }

  /** IUPAC molar masses; CRC heats of vaporization, which vary by a few per cent among sources. */
  @Test
  void pureLiquidsHaveTheHandbooksMassAndHeat() {
    SolventChecks.LATENT_HEAT.holds();
    for (Row row : ReferenceTable.read("solvent/pure_properties.csv")) {
      Solvent ours = SolventChecks.BY_NAME.get(row.text("solvent"));
      if (ours != null) {
        double molarG = row.number("molar_mass_g_per_mol");
        assertThat(1000 * ours.molarMassKgPerMol())
            .isCloseTo(molarG, within(1e-4 * molarG + 0.006));
      }
    }
  }

  /** CRC Handbook and Perry's at 20 °C; the VDI form for water is 0.1 % off and is left out. */
  @Test
  void pureLiquidsHaveTheHandbooksDensity() {
    SolventChecks.LIQUID_DENSITY.holds();
  }

  /** NIOSH Pocket Guide: 44 mmHg at 20 °C; the others do not say at what temperature. */
  @Test
  void ethanolPressesAsThePocketGuidePrints() {
    SolventChecks.POCKET_GUIDE.holds();
    for (Row row : ReferenceTable.read("solvent/vapour_pressure_printed.csv")) {
      if (!row.text("doubtful").equals("no")) {
        System.out.println("left out: " + row.text("solvent") + ", " + row.text("doubtful"));
      }
    }
  }

  /** Published evaporation numbers; those from memory or in doubt are printed, not held to. */
  @Test
  void evaporationNumbersBesideThePublishedOnes() {
    SolventChecks.EVAPORATION.holds();
    for (Row row : ReferenceTable.read("solvent/evaporation_numbers.csv")) {
      if (!row.text("doubtful").equals("no")) {
        SolventChecks.evaporating(row)
            .ifPresent(
                liquid ->
                    System.out.printf(
                        "left out: evaporation number of %s, published %.2f, ours %.2f (%s)%n",
                        row.text("solvent"),
                        row.number("number"),
                        EvaporationNumber.selfCooled(liquid),
                        row.text("doubtful")));
      }
    }
  }
}
