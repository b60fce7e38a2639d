package coatwright.film;

import coatwright.quantity.Figure;
import coatwright.quantity.Panel;
import coatwright.quantity.Panel.Scale;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** How the finishes that cure go by temperature and damp, as the register draws it. */
public final class CuringFigure {
  /** Measured on oils on cotton, kJ/mol; see the register. */
  private static final Map<String, Double> ON_COTTON =
      Map.of("56 peanut", 56e3, "61 cotton-seed", 61e3, "88 rape-seed", 88e3);

  private CuringFigure() {}

  public static Figure figure() {
    return new Figure(
        "curing",
        "The pace of oil over temperature beside the Arrhenius law with three published energies,"
            + " hours to touch and rub-out of an oil, a waterborne and a two-part film over"
            + " temperature and humidity with points of our prototype, and the conversion at which"
            + " a two-part film sets",
        List.of(pace(), overTemperature(), overHumidity(), setting()));
  }

  private static Panel pace() {
    Panel panel =
        new Panel(
            "Oil's pace, 20 °C = 1 (dots: Arrhenius, 60 kJ/mol)",
            Scale.of("film, °C", 5, 40, 5),
            Scale.log("pace", 0.1, 10, 0.1, 0.2, 0.5, 1, 2, 5, 10));
    OxidativeCure oil = Cures.varnish();
    double dry = oil.rate(20, 0);
    panel.curve(0, tempC -> oil.rate(tempC, 0) / dry);
    ON_COTTON.values().stream()
        .sorted()
        .forEach(
            energy -> {
              List<double[]> line = new ArrayList<>();
              for (int tempC = 5; tempC <= 40; tempC += 5) {
                line.add(new double[] {tempC, Arrhenius.factor(energy, tempC)});
              }
              panel.line(5, true, line);
            });
    for (Row row : ReferenceTable.read("kinetics/arrhenius_check.csv")) {
      if (row.number("ea_kJ_per_mol") == 60) {
        panel.dot(0, row.number("t_C"), row.number("rate_ratio"));
      }
    }
    return panel
        .word(0, 6, 6, "ours: 60 kJ/mol, assumed")
        .word(5, 6, 4.4, "dashed: 56, 61, 88, oils on cotton");
  }

  private static Panel overTemperature() {
    Panel panel =
        new Panel(
            "Hours to recoat at 50 % (dots: our prototype)",
            Scale.of("air, °C", 5, 35, 5), Scale.log("hours", 1, 100, 1, 2, 5, 10, 20, 50, 100));
    List<Curing> all = Cures.all();
    String[] families = {"oxidative", "waterborne", "two-part"};
    double[] wetUm = {80, 100, 100};
    for (int i = 0; i < 3; i++) {
      List<double[]> line = new ArrayList<>();
      for (int airC = 5; airC <= 35; airC++) {
        double hours =
            Cures.hoursTo(Cures.steady(all.get(i), airC, 0.5, wetUm[i]), Milestone.DRY_TO_RECOAT);
        if (hours <= 100) {
          line.add(new double[] {airC, hours});
        }
      }
      panel.line(i, false, line);
      dots(panel, i, families[i], 0.5, "air_c", 1);
    }
    return panel
        .word(0, 21, 30, "oil varnish")
        .word(1, 6, 1.3, "waterborne: none below 10 °C")
        .word(2, 21, 13.5, "two-part");
  }

  private static void dots(
      Panel panel, int colour, String family, double rh, String column, double times) {
    for (Row row : ReferenceTable.read("film/families.csv")) {
      boolean of = row.text("family").equals(family);
      boolean in = column.equals("air_c") ? row.number("rh") == rh : row.number("air_c") == 20;
      if (of && in) {
        panel.dot(colour, times * row.number(column), row.number("recoat_h"));
      }
    }
  }

  private static Panel overHumidity() {
    Panel panel =
        new Panel(
            "Hours to recoat at 20 °C (dots: our prototype)",
            Scale.of("relative humidity, %", 30, 95, 10),
            Scale.log("hours", 1, 50, 1, 2, 5, 10, 20, 50));
    List<Curing> all = Cures.all();
    String[] families = {"oxidative", "waterborne", "two-part"};
    double[] wetUm = {80, 100, 100};
    for (int i = 0; i < 3; i++) {
      List<double[]> line = new ArrayList<>();
      for (int rhPct = 30; rhPct <= 95; rhPct += 5) {
        CureJob job = Cures.steady(all.get(i), 20, rhPct / 100.0, wetUm[i]);
        line.add(new double[] {rhPct, Cures.hoursTo(job, Milestone.DRY_TO_RECOAT)});
      }
      panel.line(i, false, line);
      dots(panel, i, families[i], 0.5, "rh", 100);
    }
    return panel
        .word(0, 33, 28, "oil varnish")
        .word(2, 33, 13.5, "two-part: humidity does not count")
        .word(1, 33, 2.6, "waterborne");
  }

  private static Panel setting() {
    Panel panel =
        new Panel(
            "Where a two-part film sets (dots: our prototype)",
            Scale.of("air, °C", 5, 35, 5),
            Scale.of("reacted after 2000 h", 0.75, 1, 0.05));
    TwoPartCure cure = Cures.twoPart();
    panel.curve(2, airC -> Conversion.steady(cure, airC).after(2000));
    for (Row row : ReferenceTable.read("film/families.csv")) {
      if (row.text("family").equals("two-part")) {
        panel.dot(2, row.number("air_c"), row.number("stall"));
      }
    }
    return panel.dashed(5, 5, 0.85, 35, 0.85).word(5, 24, 0.858, "rub-out needs this");
  }
}
