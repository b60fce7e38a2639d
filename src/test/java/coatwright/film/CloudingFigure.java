package coatwright.film;

import coatwright.quantity.Figure;
import coatwright.quantity.Panel;
import coatwright.quantity.Panel.Scale;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** When a brushed shellac film clouds, as the register draws it. */
public final class CloudingFigure {
  private static final FilmSimulation MODEL =
      new FilmSimulation(FilmParameters.SHELLAC, SimulationOptions.DEFAULT.withHaze(false, 2));

  private static final double[][] THREE_AIRS = {{20, 0.5}, {24, 0.65}, {28, 0.8}};

  private CloudingFigure() {}

  public static Figure figure() {
    return new Figure(
        "clouding",
        "The clouding number S of a usual coat as a map over air temperature and humidity, over"
            + " humidity with points of our prototype, over the wood's temperature and over the"
            + " spirit's strength",
        List.of(map(), overHumidity(), overWood(), overStrength()));
  }

  private static double peakS(double airC, double rh, double woodC, double strengthPct) {
    LaidCoat coat = Jobs.coat(75, 1.5, strengthPct, 0);
    FilmJob job = FilmJob.of(List.of(coat), AirCourse.steady(airC, rh, 0.1), woodC);
    return MODEL.run(job, 900).lastCoat().peakS();
  }

  private static double peakS(double airC, double rh) {
    return peakS(airC, rh, airC, 95);
  }

  private static Panel map() {
    Panel panel =
        new Panel(
            "S of a usual coat: 1.5 lb, 75 µm, 95 % spirit",
            Scale.of("air and wood, °C", 12, 36, 4), Scale.of("relative humidity, %", 30, 95, 10));
    for (int airC = 12; airC < 36; airC++) {
      for (double rhPct = 30; rhPct < 95; rhPct += 2.5) {
        double s = peakS(airC + 0.5, (rhPct + 1.25) / 100);
        panel.cell(shade(s), airC, rhPct, airC + 1, rhPct + 2.5);
      }
    }
    double[] levels = {0.7, 1, 1.4};
    String[] words = {"S 0.7", "S 1: clouds", "S 1.4"};
    for (int i = 0; i < levels.length; i++) {
      List<double[]> line = new ArrayList<>();
      for (int airC = 12; airC <= 36; airC += 2) {
        line.add(new double[] {airC, 100 * humidityAt(levels[i], airC)});
      }
      panel.line(5, levels[i] != 1, line);
      panel.word(5, 13, line.get(0)[1] - 3.2, words[i]);
    }
    return panel;
  }

  /** White to blue below 1, yellow to red above. */
  private static String shade(double s) {
    String[] shades = {
      "#f4f8fb", "#e3eff7", "#cfe3f1", "#b5d3e8", "#fdf0c4", "#fbd795", "#f6b66b", "#ec8f52"
    };
    int at = (int) Math.floor((s - 0.2) / 0.2);
    return shades[Math.max(0, Math.min(shades.length - 1, at))];
  }

  private static double humidityAt(double level, double airC) {
    double low = 0.3;
    double high = 0.97;
    for (int i = 0; i < 11; i++) {
      double rh = 0.5 * (low + high);
      if (peakS(airC, rh) < level) {
        low = rh;
      } else {
        high = rh;
      }
    }
    return low;
  }

  private static Panel overHumidity() {
    Panel panel =
        new Panel(
            "S over humidity (dots: our prototype)",
            Scale.of("relative humidity, %", 30, 95, 10),
            Scale.of("S", 0.4, 2, 0.2));
    int[] temps = {12, 20, 28, 36};
    for (int i = 0; i < temps.length; i++) {
      int airC = temps[i];
      curve(panel, i, 30, 95, rhPct -> peakS(airC, rhPct / 100));
      panel.word(i, 34, 1.5 + 0.1 * i, airC + " °C");
      for (Row row : ReferenceTable.read("film/shellac/blush_map.csv")) {
        if (row.number("T_C") == airC && Math.round(100 * row.number("RH")) % 10 == 0) {
          panel.dot(i, 100 * row.number("RH"), row.number("S_max"));
        }
      }
    }
    return panel.dashed(5, 30, 1, 95, 1);
  }

  /** A curve in few points, because each is a run of the film. */
  private static void curve(
      Panel panel, int colour, double from, double to, DoubleUnaryOperator ours) {
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i <= 20; i++) {
      double at = from + (to - from) * i / 20;
      points.add(new double[] {at, ours.applyAsDouble(at)});
    }
    panel.line(colour, false, points);
  }

  private static Panel overWood() {
    Panel panel =
        new Panel(
            "A cold board clouds the film",
            Scale.of("wood less air, K", -6, 6, 2),
            Scale.of("S", 0.4, 2.2, 0.2));
    for (int i = 0; i < 3; i++) {
      double airC = THREE_AIRS[i][0];
      double rh = THREE_AIRS[i][1];
      curve(panel, i, -6, 6, byK -> peakS(airC, rh, airC + byK, 95));
      panel.word(i, -2, peakS(airC, rh, airC - 2, 95) + 0.07, name(i));
    }
    return panel.dashed(5, -6, 1, 6, 1);
  }

  private static Panel overStrength() {
    Panel panel =
        new Panel(
            "Weak spirit clouds the film",
            Scale.of("spirit, % by volume", 88, 100, 2),
            Scale.of("S", 0.4, 2.2, 0.2));
    for (int i = 0; i < 3; i++) {
      double airC = THREE_AIRS[i][0];
      double rh = THREE_AIRS[i][1];
      curve(panel, i, 88, 99.9, pct -> peakS(airC, rh, airC, pct));
      panel.word(i, 93.5, peakS(airC, rh, airC, 93.5) + 0.07, name(i));
    }
    return panel.dashed(5, 88, 1, 100, 1);
  }

  private static String name(int air) {
    return "%.0f °C, %.0f %%".formatted(THREE_AIRS[air][0], 100 * THREE_AIRS[air][1]);
  }
}
