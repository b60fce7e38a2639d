package coatwright.film;

import coatwright.air.MoistAir;
import coatwright.quantity.Figure;
import coatwright.quantity.Panel;
import coatwright.quantity.Panel.Scale;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;

/** How a shellac film dries and hardens, as the register draws it. */
public final class DryingFigure {
  private static final FilmSimulation MODEL =
      new FilmSimulation(FilmParameters.SHELLAC, SimulationOptions.DEFAULT);

  private static final double LAST_COAT_S = 8700;

  private DryingFigure() {}

  public static Figure figure() {
    return new Figure(
        "drying",
        "A film's temperature in its first half hour and its spirit over twelve days with points of"
            + " our prototype, days to rub-out, wrapping and full hardness over temperature with"
            + " two facts of the trade, and rub-out over humidity",
        List.of(firstHalfHour(), spirit(), milestones(), overHumidity()));
  }

  private static Panel firstHalfHour() {
    Panel panel =
        new Panel(
            "One coat's film cools itself (dots: our prototype)",
            Scale.log("seconds after brushing", 1, 1800, 1, 10, 100, 1000),
            Scale.of("film, °C", 8, 30, 2));
    int[][] airs = {{15, 70}, {20, 50}, {28, 80}};
    double[] times = new double[121];
    for (int i = 0; i < times.length; i++) {
      times[i] = Math.pow(1800, i / 120.0);
    }
    for (int i = 0; i < airs.length; i++) {
      int airC = airs[i][0];
      int rhPct = airs[i][1];
      FilmRun run = MODEL.run(Jobs.oneCoat(airC, rhPct / 100.0), 1800, times);
      panel.line(i, false, trace(run, FilmSample::filmTempC, 0, 1));
      double dewC = MoistAir.of(airC, rhPct).dewPointC();
      panel.dashed(i, 1, dewC, 1800, dewC);
      panel.word(i, 1.2, airC + 0.4, airC + " °C, " + rhPct + " %");
      List<Row> rows = prototype("coat1_" + airC + "_" + rhPct);
      for (int k = 2; k < rows.size(); k += 14) {
        panel.dot(i, rows.get(k).number("t"), rows.get(k).number("Tf"));
      }
    }
    return panel.word(5, 1.2, 23.3, "dashed: dew point");
  }

  private static List<Row> prototype(String name) {
    return ReferenceTable.read("film/shellac/" + name + ".csv");
  }

  private static List<double[]> trace(
      FilmRun run, Function<FilmSample, Double> value, double fromS, double perUnitS) {
    List<double[]> points = new ArrayList<>();
    for (FilmSample sample : run.trace()) {
      points.add(new double[] {(sample.atS() - fromS) / perUnitS, value.apply(sample)});
    }
    return points;
  }

  private static Panel spirit() {
    Panel panel =
        new Panel(
            "Six coats: spirit left (dots: our prototype)",
            Scale.of("days after the last coat", 0, 12, 2),
            Scale.log("spirit per volume of resin", 1e-4, 1, 1e-4, 1e-3, 0.01, 0.1, 1));
    int[] temps = {15, 20, 24};
    double[] times = new double[121];
    for (int i = 0; i < times.length; i++) {
      times[i] = LAST_COAT_S + 3600 + i * 12 * Jobs.DAY_S / 120;
    }
    for (int i = 0; i < temps.length; i++) {
      FilmRun run = MODEL.run(Jobs.sixCoats(temps[i], 0.5), times[120], times);
      panel.line(i, false, trace(run, FilmSample::residue, LAST_COAT_S, Jobs.DAY_S));
      double at = 10.9 - 0.4 * i;
      double size = run.trace().get((int) (10 * at)).residue();
      panel.word(i, at, size * (i == 2 ? 0.6 : 1.15), temps[i] + " °C");
      for (Row row : prototype("stack_" + temps[i] + "_50")) {
        double days = (row.number("t") - LAST_COAT_S) / Jobs.DAY_S;
        if (days > 0.04) {
          panel.dot(i, days, row.number("ue"));
        }
      }
    }
    double limit = FilmParameters.SHELLAC.criteria().rubOutResidue();
    return panel.dashed(5, 0, limit, 12, limit).word(5, 8, limit * 1.2, "rub-out");
  }

  private static Panel milestones() {
    Panel panel =
        new Panel(
            "Six coats at 50 % (dots: common practice)",
            Scale.of("air temperature, °C", 10, 30, 5),
            Scale.log("days after the last coat", 1, 40, 1, 2, 5, 10, 20, 40));
    days(panel, 0, FilmRun::rubOutS);
    days(panel, 1, FilmRun::wrapS);
    days(panel, 2, FilmRun::fullHardnessS);
    panel.dot(0, 15, 5).dot(0, 24, 3);
    panel.word(0, 12, 6.6, "rub out").word(1, 12, 11, "wrap: an estimate");
    return panel.word(2, 12, 17.5, "full hardness: an estimate");
  }

  private static void days(Panel panel, int colour, Function<FilmRun, OptionalDouble> milestone) {
    List<double[]> points = new ArrayList<>();
    for (int airC = 10; airC <= 30; airC++) {
      FilmRun run = MODEL.run(Jobs.sixCoats(airC, 0.5), LAST_COAT_S + 40 * Jobs.DAY_S);
      OptionalDouble seconds = milestone.apply(run);
      if (seconds.isPresent()) {
        points.add(new double[] {airC, seconds.getAsDouble() / Jobs.DAY_S});
      }
    }
    panel.line(colour, false, points);
  }

  private static Panel overHumidity() {
    Panel panel =
        new Panel(
            "Known weakness: humidity hardly delays rub-out",
            Scale.of("relative humidity, %", 30, 75, 5),
            Scale.of("days after the last coat", 0, 7, 1));
    int[] temps = {15, 20, 24};
    for (int i = 0; i < temps.length; i++) {
      List<double[]> points = new ArrayList<>();
      for (int rhPct = 30; rhPct <= 75; rhPct += 5) {
        FilmRun run =
            MODEL.run(Jobs.sixCoats(temps[i], rhPct / 100.0), LAST_COAT_S + 20 * Jobs.DAY_S);
        double seconds = run.rubOutS().orElseThrow();
        points.add(new double[] {rhPct, seconds / Jobs.DAY_S});
      }
      panel.line(i, false, points);
      panel.word(i, 32, points.get(0)[1] + 0.2, temps[i] + " °C");
    }
    return panel;
  }
}
