package coatwright.solvent;

import static coatwright.quantity.OutsideCheck.Kind.EQUATION;
import static coatwright.quantity.OutsideCheck.Kind.MEASURED;
import static coatwright.quantity.OutsideCheck.Kind.OWN;
import static coatwright.quantity.OutsideCheck.Kind.PRINTED;
import static coatwright.quantity.OutsideCheck.Kind.PROGRAM;

import coatwright.air.MoistAir;
import coatwright.air.SaturationFunction;
import coatwright.quantity.Deviation;
import coatwright.quantity.OutsideCheck;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;

/** Spirit and solvents against tables printed, measured or computed by others. */
public final class SolventChecks {
  /** The names the tables use. */
  static final Map<String, Solvent> BY_NAME =
      Map.of(
          "ethanol", Solvent.ETHANOL,
          "water", Solvent.WATER,
          "2-butoxyethanol", Solvent.BUTOXYETHANOL,
          "methanol", Solvent.METHANOL,
          "n-butanol", Solvent.BUTANOL,
          "1-butanol", Solvent.BUTANOL,
          "n-butyl acetate", Solvent.BUTYL_ACETATE);

  private static final double SIXTY_F = EthanolWaterDensity.SIXTY_FAHRENHEIT_C;
  private static final String BOILING =
      "boiling spirit at 760 mmHg, credited to Carey and Lewis (1932) in Perry's handbook";
  private static final String R_22 = "OIML R 22 (1975) by a separate program";

  static final OutsideCheck POCKET_GUIDE =
      new OutsideCheck(
          PRINTED,
          "vapour pressure of ethanol",
          "NIOSH Pocket Guide, 44 mmHg",
          "20 °C",
          1.2,
          "%",
          SolventChecks::pocketGuide);

  static final OutsideCheck DIFFUSIVITY =
      new OutsideCheck(
          MEASURED,
          "diffusion in air; the method is known to be good to 10 %",
          "Perry's handbook, table 2-371",
          "0…30 °C",
          10,
          "%",
          SolventChecks::diffusivity);

  static final OutsideCheck BOILING_VAPOUR =
      new OutsideCheck(
          MEASURED,
          "ethanol in the vapour over boiling spirit",
          BOILING,
          "1.9…89.4 mol %",
          0.012,
          "mole fraction",
          SolventChecks::boilingVapour);

  static final OutsideCheck BOILING_POINT =
      new OutsideCheck(
          MEASURED,
          "boiling point of spirit",
          BOILING,
          "1.9…89.4 mol %",
          0.8,
          "K",
          SolventChecks::boilingPoint);

  static final OutsideCheck AZEOTROPE =
      new OutsideCheck(
          MEASURED,
          "azeotrope; van Laar's is known to lie too high",
          BOILING,
          "1 atm",
          0.03,
          "mole fraction",
          d -> d.add(azeotrope(), 0.8943, "azeotrope"));

  static final OutsideCheck VAN_LAAR =
      new OutsideCheck(
          PROGRAM,
          "vapour over boiling spirit by the same equation",
          "van Laar by a separate program",
          "1.9…89.4 mol %",
          0.003,
          "mole fraction",
          SolventChecks::vanLaar);

  static final OutsideCheck STRENGTH =
      new OutsideCheck(
          PROGRAM,
          "strength by mass from strength by volume at 20 °C",
          R_22,
          "0…100 %",
          1e-4,
          "% by mass",
          SolventChecks::strength);

  static final OutsideCheck STRENGTH_DENSITY =
      new OutsideCheck(
          PROGRAM,
          "density of spirit at 15, 20 and 25 °C",
          R_22,
          "0…100 %",
          1e-3,
          "kg/m³",
          SolventChecks::strengthDensity);

  static final OutsideCheck COEFFICIENTS =
      new OutsideCheck(
          EQUATION,
          "density of spirit",
          "OIML R 22 summed term by term from a public copy of its coefficients",
          "−20…40 °C, 0…100 %",
          1e-6,
          "kg/m³",
          SolventChecks::coefficients);

  static final OutsideCheck PERRY_DENSITY =
      new OutsideCheck(
          PRINTED,
          "density of weak spirit at 20 °C",
          "Perry's handbook, 7th ed.",
          "0…12 % by mass",
          0.06,
          "kg/m³",
          SolventChecks::perryDensity);

  static final OutsideCheck SIXTY_STRENGTH =
      new OutsideCheck(
          PROGRAM,
          "strength by mass from strength by volume at 60 °F",
          R_22,
          "0…100 %",
          1e-4,
          "% by mass",
          SolventChecks::sixtyStrength);

  static final OutsideCheck SIXTY_DENSITY =
      new OutsideCheck(
          PROGRAM,
          "density of spirit at 60 °F",
          R_22,
          "0…100 %",
          1e-3,
          "kg/m³",
          SolventChecks::sixtyDensity);

  static final OutsideCheck PHARMACOPOEIA =
      new OutsideCheck(
          PRINTED,
          "strength by mass at 15.56 °C",
          "USP 29 alcoholometric table, from NBS Bulletin 9",
          "5…33 % by volume",
          0.005,
          "% by mass",
          SolventChecks::pharmacopoeia);

  static final OutsideCheck PHARMACOPOEIA_GRAVITY =
      new OutsideCheck(
          PRINTED,
          "specific gravity at 15.56 °C; theirs is in air",
          "USP 29 alcoholometric table, from NBS Bulletin 9",
          "5…33 % by volume",
          1.1e-4,
          "(a ratio)",
          SolventChecks::pharmacopoeiaGravity);

  static final OutsideCheck ETHANOL_DENSITY =
      new OutsideCheck(
          PRINTED,
          "density of ethanol",
          "789.24 kg/m³, quoted with the tax rules",
          "20 °C",
          0.005,
          "kg/m³",
          d -> d.add(EthanolWaterDensity.densityKgPerM3(1, 20), 789.24, "20 °C"));

  static final OutsideCheck LATENT_HEAT =
      new OutsideCheck(
          PRINTED,
          "heat of vaporisation",
          "CRC Handbook",
          "25 °C, 6 liquids",
          1.1,
          "%",
          d -> pure(d, "latent_heat_25C_kJ_per_mol", liquid -> liquid.latentHeatJPerMol() / 1000));

  static final OutsideCheck LIQUID_DENSITY =
      new OutsideCheck(
          PRINTED,
          "density of the pure liquids",
          "CRC Handbook",
          "20 °C",
          2,
          "kg/m³",
          SolventChecks::liquidDensity);

  static final OutsideCheck EVAPORATION =
      new OutsideCheck(
          PRINTED,
          "evaporation number of 95 % ethanol and of water, cooling themselves",
          "a safety-data glossary",
          "n-butyl acetate = 1",
          25,
          "%",
          SolventChecks::evaporation);

  static final OutsideCheck WET_SURFACE =
      new OutsideCheck(
          EQUATION,
          "temperature of a bare wet surface",
          "adiabatic saturation, ASHRAE Fundamentals 2017 ch. 1",
          "15…35 °C, 20…80 %",
          0.6,
          "K",
          SolventChecks::wetSurface);

  static final OutsideCheck PROTOTYPE_WET_BULBS =
      new OutsideCheck(
          OWN,
          "temperature of wet and spirit surfaces",
          "our own prototype",
          "22 surfaces",
          0.001,
          "K",
          SolventChecks::prototypeWetBulbs);

  private SolventChecks() {}

  public static List<OutsideCheck> all() {
    List<OutsideCheck> all = new ArrayList<>(vapourPressures());
    all.addAll(
        List.of(
            POCKET_GUIDE,
            DIFFUSIVITY,
            BOILING_VAPOUR,
            BOILING_POINT,
            AZEOTROPE,
            VAN_LAAR,
            STRENGTH,
            STRENGTH_DENSITY,
            COEFFICIENTS,
            PERRY_DENSITY,
            SIXTY_STRENGTH,
            SIXTY_DENSITY,
            PHARMACOPOEIA,
            PHARMACOPOEIA_GRAVITY,
            ETHANOL_DENSITY,
            LATENT_HEAT,
            LIQUID_DENSITY,
            EVAPORATION,
            WET_SURFACE,
            PROTOTYPE_WET_BULBS));
    return all;
  }

  /** One for every liquid whose published equations agree; doubtful rows are not in the table. */
  static List<OutsideCheck> vapourPressures() {
    return List.of(
        vapourPressure("ethanol", 0.5),
        vapourPressure("water", 0.5),
        vapourPressure("methanol", 1),
        vapourPressure("n-butanol", 7.5));
  }

  private static OutsideCheck vapourPressure(String name, double allowedPct) {
    return new OutsideCheck(
        PRINTED,
        "vapour pressure of " + name,
        "median of the equations of Poling et al. (5th ed.), Perry's handbook, VDI Heat Atlas and"
            + " Landolt-Börnstein",
        "5…40 °C",
        allowedPct,
        "%",
        d -> {
          for (Row row : ReferenceTable.read("solvent/vapour_pressures.csv")) {
            if (row.text("solvent").equals(name)) {
              double ours = BY_NAME.get(name).vapourPressurePa(row.number("t_C"));
              d.addPct(ours, row.number("median_Pa"), row.cells());
            }
          }
        });
  }

  private static void pocketGuide(Deviation d) {
    for (Row row : ReferenceTable.read("solvent/vapour_pressure_printed.csv")) {
      if (row.text("doubtful").equals("no")) {
        double ours = BY_NAME.get(row.text("solvent")).vapourPressurePa(row.number("t_C"));
        d.addPct(ours, row.number("p_Pa"), row.cells());
      }
    }
  }

  private static void diffusivity(Deviation d) {
    for (Row row : ReferenceTable.read("solvent/diffusivity_in_air.csv")) {
      AirFlow air = new AirFlow(row.number("t_C") + 273.15);
      double ours = 1e4 * air.diffusivityM2PerS(BY_NAME.get(row.text("solvent")));
      d.addPct(ours, row.number("measured_cm2_per_s"), row.cells());
    }
  }

  private static List<Row> boiling() {
    return ReferenceTable.read("solvent/ethanol_water_vle_760mmHg.csv");
  }

  private static void boilingVapour(Deviation d) {
    for (Row row : boiling()) {
      d.add(vapourFraction(row.number("x_ethanol")), row.number("y_ethanol"), row.cells());
    }
  }

  private static void boilingPoint(Deviation d) {
    for (Row row : boiling()) {
      d.add(boilingC(row.number("x_ethanol")), row.number("t_C"), row.cells());
    }
  }

  /** Ethanol in the vapour over boiling spirit, mole fraction, at 1 atm. */
  static double vapourFraction(double x) {
    return spiritPa(x, boilingC(x)) / AirFlow.PRESSURE_PA;
  }

  static double boilingC(double x) {
    double low = 60;
    double high = 99.999;
    for (int i = 0; i < 60; i++) {
      double t = 0.5 * (low + high);
      if (spiritPa(x, t) + waterPa(x, t) < AirFlow.PRESSURE_PA) {
        low = t;
      } else {
        high = t;
      }
    }
    return low;
  }

  static double azeotrope() {
    double low = 0.8;
    double high = 0.99;
    for (int i = 0; i < 50; i++) {
      double x = 0.5 * (low + high);
      if (vapourFraction(x) > x) {
        low = x;
      } else {
        high = x;
      }
    }
    return low;
  }

  private static double spiritPa(double x, double atC) {
    return x * Math.exp(VanLaar.lnGammaSpirit(1 - x)) * Solvent.ETHANOL.vapourPressurePa(atC);
  }

  private static double waterPa(double x, double atC) {
    return (1 - x) * Math.exp(VanLaar.lnGammaWater(1 - x)) * Solvent.WATER.vapourPressurePa(atC);
  }

  private static void vanLaar(Deviation d) {
    for (Row row : ReferenceTable.read("solvent/van_laar_boiling.csv")) {
      double x = row.number("x_ethanol");
      double spirit = spiritPa(x, row.number("van_laar_t_C"));
      double water = waterPa(x, row.number("van_laar_t_C"));
      d.add(spirit / (spirit + water), row.number("van_laar_y"), row.cells());
    }
  }

  private static void strength(Deviation d) {
    for (Row row : ReferenceTable.read("solvent/strength_density.csv")) {
      SpiritStrength ours = new SpiritStrength(row.number("volume_pct"));
      d.add(ours.massPct(), row.number("mass_pct"), row.cells());
    }
  }

  private static void strengthDensity(Deviation d) {
    for (Row row : ReferenceTable.read("solvent/strength_density.csv")) {
      SpiritStrength ours = new SpiritStrength(row.number("volume_pct"));
      for (int atC = 15; atC <= 25; atC += 5) {
        d.add(ours.densityKgPerM3(atC), row.number("rho_" + atC + "C"), row.cells());
      }
    }
  }

  /** Every term of the general formula; at 20 °C it is its twelve A. */
  private static void coefficients(Deviation d) {
    List<Row> rows = ReferenceTable.read("solvent/oiml_r22_coefficients.csv");
    for (double mass : new double[] {0, 0.1, 0.35, 0.5, 0.8, 0.9281, 1}) {
      for (double atC : new double[] {-20, 0, 15, 20, 27, 40}) {
        double ours = EthanolWaterDensity.densityKgPerM3(mass, atC);
        d.add(ours, sum(rows, mass, atC - 20), mass + " at " + atC + " °C");
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

  private static void perryDensity(Deviation d) {
    for (Row row : ReferenceTable.read("solvent/density_20C.csv")) {
      double ours = EthanolWaterDensity.densityKgPerM3(row.number("mass_pct") / 100, 20);
      d.add(ours, row.number("rho_kg_per_m3"), row.cells());
    }
  }

  private static void sixtyStrength(Deviation d) {
    for (Row row : ReferenceTable.read("solvent/strength_at_60F.csv")) {
      double mass = EthanolWaterDensity.massFraction(row.number("abv_pct"), SIXTY_F);
      d.add(100 * mass, row.number("mass_pct"), row.cells());
    }
  }

  private static void sixtyDensity(Deviation d) {
    for (Row row : ReferenceTable.read("solvent/strength_at_60F.csv")) {
      double mass = EthanolWaterDensity.massFraction(row.number("abv_pct"), SIXTY_F);
      double ours = EthanolWaterDensity.densityKgPerM3(mass, SIXTY_F);
      d.add(ours, row.number("rho_15_56C_kg_per_m3"), row.cells());
    }
  }

  static double specificGravity(double mass) {
    return EthanolWaterDensity.densityKgPerM3(mass, SIXTY_F)
        / EthanolWaterDensity.densityKgPerM3(0, SIXTY_F);
  }

  private static void pharmacopoeia(Deviation d) {
    for (Row row : ReferenceTable.read("solvent/usp_crosscheck.csv")) {
      double mass = EthanolWaterDensity.massFraction(row.number("abv_15_56C_pct"), SIXTY_F);
      d.add(100 * mass, row.number("mass_pct_usp"), row.cells());
    }
  }

  private static void pharmacopoeiaGravity(Deviation d) {
    for (Row row : ReferenceTable.read("solvent/usp_crosscheck.csv")) {
      double mass = EthanolWaterDensity.massFraction(row.number("abv_15_56C_pct"), SIXTY_F);
      d.add(specificGravity(mass), row.number("sg_usp_air_15_56"), row.cells());
    }
  }

  private static void pure(Deviation d, String column, ToDoubleFunction<Solvent> ours) {
    for (Row row : ReferenceTable.read("solvent/pure_properties.csv")) {
      Solvent liquid = BY_NAME.get(row.text("solvent"));
      if (liquid != null) {
        d.addPct(ours.applyAsDouble(liquid), row.number(column), row.cells());
      }
    }
  }

  private static void liquidDensity(Deviation d) {
    for (Row row : ReferenceTable.read("solvent/liquid_density.csv")) {
      Solvent ours = BY_NAME.get(row.text("solvent"));
      String crc = row.text("rho_crc_kg_per_m3");
      if (ours != null && row.number("t_C") == 20 && !crc.isEmpty()) {
        d.add(ours.densityKgPerM3(), Double.parseDouble(crc), row.cells());
      }
    }
  }

  private static final Map<String, Solvent> BY_EVAPORATION_NAME =
      Map.of(
          "ethanol (95 %)", Solvent.ETHANOL,
          "water", Solvent.WATER,
          "methanol", Solvent.METHANOL,
          "1-butanol", Solvent.BUTANOL,
          "2-butoxyethanol", Solvent.BUTOXYETHANOL);

  /** The liquid of an evaporation number, where it is one of ours and not the unit itself. */
  static Optional<Solvent> evaporating(Row row) {
    return Optional.ofNullable(BY_EVAPORATION_NAME.get(row.text("solvent")));
  }

  private static void evaporation(Deviation d) {
    for (Row row : ReferenceTable.read("solvent/evaporation_numbers.csv")) {
      if (row.text("doubtful").equals("no")) {
        evaporating(row).ifPresent(compareEvaporation(d, row));
      }
    }
  }

  private static Consumer<Solvent> compareEvaporation(Deviation d, Row row) {
    return liquid ->
        d.addPct(EvaporationNumber.selfCooled(liquid), row.number("number"), row.cells());
  }

  private static void wetSurface(Deviation d) {
    double[][] airs = {{20, 50}, {30, 50}, {25, 40}, {30, 80}, {15, 60}, {35, 20}, {24, 65}};
    Solvent water = Solvent.WATER.withLatentHeat(44.6e3);
    for (double[] air : airs) {
      MoistAir moist = MoistAir.of(air[0], air[1]);
      double room = moist.vapourPressurePa();
      double wetC = new EvaporatingSurface(water, air[0], room, 20, 0).steadyTemperatureC();
      d.add(wetC, moist.wetBulbC(), air[0] + " °C " + air[1] + " %");
    }
  }

  private static void prototypeWetBulbs(Deviation d) {
    Solvent water =
        Solvent.WATER
            .with(new VapourPressure.OfWater(SaturationFunction.MAGNUS_WATER))
            .withLatentHeat(44.6e3);
    for (Row row : ReferenceTable.read("film/wet_bulbs.csv")) {
      double airC = row.number("airTempC");
      var surface =
          new EvaporatingSurface(
              row.text("liquid").equals("water") ? water : Solvent.ETHANOL.withLatentHeat(43.2e3),
              airC,
              row.number("rhFraction") * SaturationFunction.MAGNUS_WATER.pressurePa(airC),
              row.number("heatTransfer"),
              row.number("radiation"));
      d.add(surface.steadyTemperatureC(), row.number("wetBulbC"), row.cells());
    }
  }
}
