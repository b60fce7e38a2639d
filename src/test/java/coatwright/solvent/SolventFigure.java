package coatwright.solvent;

import coatwright.quantity.Figure;
import coatwright.quantity.Panel;
import coatwright.quantity.Panel.Scale;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import java.util.ArrayList;
import java.util.List;

/** Spirit and solvents as the register draws them. */
public final class SolventFigure {
  private SolventFigure() {}

  public static Figure figure() {
    return new Figure(
        "solvents",
        "Vapour pressures with the medians of published equations, vapour and boiling point of"
            + " ethanol and water with measured points, and the density of spirit with printed"
            + " points",
        List.of(vapourPressures(), vapour(), boilingPoints(), density()));
  }

  private static Panel vapourPressures() {
    Panel panel =
        new Panel(
            "Vapour pressure (dots: median of handbooks)",
            Scale.of("temperature, °C", 0, 40, 5),
            Scale.log("pressure, Pa", 10, 1e5, 10, 100, 1000, 1e4, 1e5));
    List<String> names = List.of("methanol", "ethanol", "water", "n-butanol", "2-butoxyethanol");
    for (int i = 0; i < names.size(); i++) {
      Solvent liquid = SolventChecks.BY_NAME.get(names.get(i));
      panel.curve(i, liquid::vapourPressurePa);
      double wordC = i == 0 ? 22 : i == 4 ? 27 : 31;
      double beside = liquid.vapourPressurePa(wordC) * (i == 0 ? 1.75 : 0.6);
      panel.word(i, wordC, beside, names.get(i));
      for (Row row : ReferenceTable.read("solvent/vapour_pressures.csv")) {
        if (row.text("solvent").equals(names.get(i))) {
          panel.dot(i, row.number("t_C"), row.number("median_Pa"));
        }
      }
    }
    return panel;
  }

  private static List<Row> measured() {
    return ReferenceTable.read("solvent/ethanol_water_vle_760mmHg.csv");
  }

  private static Panel vapour() {
    Panel panel =
        new Panel(
            "Boiling spirit at 1 atm (dots: Carey and Lewis)",
            Scale.of("ethanol in the liquid, mole fraction", 0, 1, 0.2),
            Scale.of("ethanol in the vapour, mole fraction", 0, 1, 0.2));
    panel.dashed(5, 0, 0, 1, 1);
    panel.curve(0, 0.001, 0.999, SolventChecks::vapourFraction);
    for (Row row : measured()) {
      panel.dot(0, row.number("x_ethanol"), row.number("y_ethanol"));
    }
    double azeotrope = SolventChecks.azeotrope();
    panel.dashed(1, azeotrope, 0.7, azeotrope, azeotrope).dashed(2, 0.8943, 0.62, 0.8943, 0.8943);
    panel.word(1, azeotrope - 0.215, 0.68, "azeotrope, ours");
    return panel.word(2, 0.8943 - 0.22, 0.59, "and measured");
  }

  private static Panel boilingPoints() {
    Panel panel =
        new Panel(
            "Boiling point at 1 atm (dots: Carey and Lewis)",
            Scale.of("ethanol in the liquid, mole fraction", 0, 1, 0.2),
            Scale.of("boiling point, °C", 76, 100, 4));
    panel.curve(1, 0.001, 0.999, SolventChecks::boilingC);
    for (Row row : measured()) {
      panel.dot(1, row.number("x_ethanol"), row.number("t_C"));
    }
    return panel;
  }

  private static Panel density() {
    Panel panel =
        new Panel(
            "Density of spirit after OIML R 22",
            Scale.of("ethanol, % by mass", 0, 100, 20),
            Scale.of("density, kg/m³", 760, 1000, 40));
    double sixtyF = EthanolWaterDensity.SIXTY_FAHRENHEIT_C;
    panel.curve(0, pct -> EthanolWaterDensity.densityKgPerM3(pct / 100, 20));
    panel.curve(1, pct -> EthanolWaterDensity.densityKgPerM3(pct / 100, sixtyF));
    List<double[]> points = new ArrayList<>();
    for (Row row : ReferenceTable.read("solvent/density_20C.csv")) {
      points.add(new double[] {row.number("mass_pct"), row.number("rho_kg_per_m3")});
    }
    points.forEach(point -> panel.dot(0, point[0], point[1]));
    double water = EthanolWaterDensity.densityKgPerM3(0, sixtyF);
    for (Row row : ReferenceTable.read("solvent/usp_crosscheck.csv")) {
      panel.dot(1, row.number("mass_pct_usp"), row.number("sg_usp_air_15_56") * water);
    }
    for (Row row : ReferenceTable.read("solvent/strength_density.csv")) {
      double pct = row.number("mass_pct");
      if (pct > 35) {
        panel.dot(0, pct, row.number("rho_20C"));
      }
    }
    panel.word(0, 12, 850, "20 °C; dots to 12 %: Perry,");
    panel.word(0, 12, 840, "above: a separate program");
    return panel.word(1, 38, 966, "15.56 °C; dots: USP 29");
  }
}
