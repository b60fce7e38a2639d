package coatwright.film;

import coatwright.air.MoistAir;
import coatwright.quantity.Figure;
import coatwright.quantity.Panel;
import coatwright.quantity.Panel.Scale;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import coatwright.solvent.Solvent;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** How three blends of lacquer cloud and cool, as the register draws it. */
public final class LacquerFigure {
  private static final FilmSimulation MODEL =
      new FilmSimulation(
          FilmParameters.LACQUER, SimulationOptions.DEFAULT.withHaze(false, Double.MAX_VALUE));

  private static final double FIRST_HOUR_S = 3600;

  private LacquerFigure() {}

  public static Figure figure() {
    return new Figure(
        "lacquer",
        "Water's activity in the film of three lacquer blends over humidity, how far the film stays"
            + " above the dew point over humidity, both at 28 °C; the vapour pressures of their"
            + " quick solvents beside published ones; and the film's temperature in its first"
            + " minutes",
        List.of(
            overHumidity(
                "Water's activity at 28 °C (dots: our prototype)",
                Scale.of("S", 0.4, 2, 0.2),
                CoatOutcome::peakS,
                "water_activity"),
            overHumidity(
                "Film over dew point at 28 °C (dots: our prototype)",
                Scale.of("K", -6, 14, 2),
                CoatOutcome::filmMinusDewK,
                "film_minus_dew_k"),
            firstMinutes(),
            pressures()));
  }

  /** Curves of the film in cells, dashed as one lump, which is what the prototype computed. */
  private static Panel overHumidity(
      String title, Scale y, ToDoubleFunction<CoatOutcome> value, String column) {
    Panel panel = new Panel(title, Scale.of("relative humidity, %", 40, 90, 10), y);
    for (int i = 0; i < LacquerBlend.ALL.size(); i++) {
      LacquerBlend blend = LacquerBlend.ALL.get(i);
      List<double[]> cells = new ArrayList<>();
      List<double[]> lump = new ArrayList<>();
      for (int rhPct = 40; rhPct <= 90; rhPct += 5) {
        FilmJob job = Jobs.oneOfLacquer(blend, 28, rhPct / 100.0);
        cells.add(
            new double[] {rhPct, value.applyAsDouble(MODEL.run(job, FIRST_HOUR_S).lastCoat())});
        lump.add(
            new double[] {
              rhPct, value.applyAsDouble(LacquerTest.LUMP.run(job, FIRST_HOUR_S).lastCoat())
            });
      }
      panel.line(i, false, cells).line(i, true, lump);
      for (Row row : ReferenceTable.read("film/lacquer.csv")) {
        if (row.text("blend").equals(blend.name()) && row.number("air_c") == 28) {
          panel.dot(i, 100 * row.number("rh"), row.number(column));
        }
      }
    }
    if (column.equals("water_activity")) {
      panel.dashed(5, 40, 1, 90, 1);
      name(panel, 42, 1.5, 0.1);
    } else {
      panel.dashed(5, 40, 0, 90, 0);
      name(panel, 42, -2.6, 1.1);
    }
    return panel;
  }

  private static void name(Panel panel, double atX, double atY, double stepY) {
    for (int i = 0; i < LacquerBlend.ALL.size(); i++) {
      panel.word(i, atX, atY - i * stepY, LacquerBlend.ALL.get(i).name());
    }
  }

  private static Panel firstMinutes() {
    Panel panel =
        new Panel(
            "The film cools itself: 28 °C, 80 %",
            Scale.log("seconds after spraying", 1, 1800, 1, 10, 100, 1000),
            Scale.of("film, °C", 20, 30, 2));
    double[] times = new double[121];
    for (int i = 0; i < times.length; i++) {
      times[i] = Math.pow(1800, i / 120.0);
    }
    for (int i = 0; i < LacquerBlend.ALL.size(); i++) {
      FilmJob job = Jobs.oneOfLacquer(LacquerBlend.ALL.get(i), 28, 0.8);
      List<double[]> line = new ArrayList<>();
      for (FilmSample sample : MODEL.run(job, 1800, times).trace()) {
        line.add(new double[] {sample.atS(), sample.filmTempC()});
      }
      panel.line(i, false, line);
    }
    double dewC = MoistAir.of(28, 80).dewPointC();
    name(panel, 1.3, 22.8, 0.6);
    return panel.dashed(5, 1, dewC, 1800, dewC).word(5, 1.3, dewC + 0.15, "dew point");
  }

  private static Panel pressures() {
    Panel panel =
        new Panel(
            "Vapour pressure (dots: median of handbooks)",
            Scale.of("°C", 5, 40, 5),
            Scale.log("kPa", 0.01, 100, 0.01, 0.1, 1, 10, 100));
    Solvent[] solvents = {
      Solvent.ACETONE, Solvent.TOLUENE, Solvent.BUTYL_ACETATE, Solvent.BUTOXYETHANOL
    };
    for (int i = 0; i < solvents.length; i++) {
      Solvent solvent = solvents[i];
      panel.curve(i, atC -> solvent.vapourPressurePa(atC) / 1000);
      panel.word(i, 7, solvent.vapourPressurePa(7) / 1000 * 1.35, solvent.name());
    }
    for (Row row : ReferenceTable.read("solvent/vapour_pressures_lacquer.csv")) {
      int of = row.text("solvent").equals("acetone") ? 0 : 1;
      if (row.number("t_C") <= 40) {
        panel.dot(of, row.number("t_C"), row.number("median_Pa") / 1000);
      }
    }
    return panel;
  }
}
