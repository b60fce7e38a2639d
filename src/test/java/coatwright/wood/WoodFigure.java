package coatwright.wood;

import coatwright.air.MoistAir;
import coatwright.quantity.Figure;
import coatwright.quantity.Panel;
import coatwright.quantity.Panel.Scale;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import coatwright.wood.Board.Faces;
import java.time.Duration;
import java.util.List;

/** Wood as the register draws it. */
public final class WoodFigure {
  private WoodFigure() {}

  public static Figure figure() {
    return new Figure(
        "wood",
        "Equilibrium moisture with cells of the Wood Handbook, movement of a cherry board, the"
            + " share of a change of air a board's face has followed with points of a printed"
            + " table, and a cold board carried in",
        List.of(moisture(), movement(), warming(), carriedIn()));
  }

  private static Panel moisture() {
    Panel panel =
        new Panel(
            "Moisture wood settles at (dots: Wood Handbook)",
            Scale.of("relative humidity, %", 0, 90, 10),
            Scale.of("moisture, %", 0, 22, 2));
    int[] fahrenheit = {40, 70, 100};
    for (int i = 0; i < 3; i++) {
      int tempF = fahrenheit[i];
      panel.curve(i, rhPct -> EquilibriumMoisture.pct((tempF - 32) / 1.8, rhPct));
      panel.word(i, 8, 19.5 - 1.6 * i, List.of("4 °C", "21 °C", "38 °C").get(i));
      for (Row row : ReferenceTable.read("wood/emc_table.csv")) {
        if (row.number("t_F") == tempF && WoodChecks.sound(row)) {
          panel.dot(i, row.number("rh_pct"), row.number("emc_table_pct"));
        }
      }
    }
    return panel;
  }

  private static Panel movement() {
    Panel panel =
        new Panel(
            "300 mm of black cherry (dots: handbook tables)",
            Scale.of("relative humidity, % (21 °C)", 30, 75, 5),
            Scale.of("wider than at 45 %, mm", -2, 4, 1));
    WoodSpecies cherry = SpeciesTable.shipped().named("cherry");
    double tempC = (70 - 32) / 1.8;
    MoistAir from = MoistAir.of(tempC, 45);
    for (Sawn sawn : Sawn.values()) {
      double perPct = cherry.movementPerPct(sawn);
      int colour = sawn == Sawn.FLAT ? 1 : 0;
      panel.curve(
          colour,
          30,
          72.5,
          rhPct -> WoodMovement.changeMm(300, perPct, from, MoistAir.of(tempC, rhPct)));
      for (Row row : ReferenceTable.read("wood/emc_table.csv")) {
        double rhPct = row.number("rh_pct");
        if (row.number("t_F") == 70 && WoodChecks.sound(row) && rhPct >= 30 && rhPct <= 70) {
          panel.dot(colour, rhPct, 300 * perPct * (row.number("emc_table_pct") - 8.4));
        }
      }
    }
    return panel.word(1, 53, 2.7, "flat sawn").word(0, 62, 0.55, "quarter sawn");
  }

  private static Panel warming() {
    Panel panel =
        new Panel(
            "A face follows the air (dots: Incropera Table 5.1)",
            Scale.log("Fourier number, αt/L²", 0.01, 10, 0.01, 0.1, 1, 10),
            Scale.of("share of the change", 0, 1, 0.2));
    for (int i = 0; i < 3; i++) {
      double[] printed = WoodChecks.PLANE_WALL[i];
      Board wall = WoodChecks.wall(printed[0]);
      panel.curve(i, fo -> BoardWarming.faceShare(wall, WoodChecks.secondsAt(wall, fo)));
      for (double fo : new double[] {0.7, 1, 1.5, 2, 3}) {
        panel.dot(i, fo, WoodChecks.oneTermShare(printed, fo));
      }
    }
    return panel
        .word(0, 2.2, 0.13, "Bi 0.1")
        .word(1, 0.35, 0.52, "Bi 1")
        .word(2, 0.03, 0.8, "Bi 10");
  }

  private static Panel carriedIn() {
    Panel panel =
        new Panel(
            "A cold board in a warm room (dots: finite volumes)",
            Scale.of("minutes", 0, 120, 20),
            Scale.of("face of the board, °C", 8, 20, 2));
    MoistAir shop = MoistAir.of(20, 60);
    for (Faces faces : Faces.values()) {
      int colour = faces == Faces.BOTH ? 0 : 1;
      Board board = Board.ofWood(18, faces, 0.5, 9);
      CarriedIn carried = new CarriedIn(board, 8, shop);
      panel.curve(colour, minutes -> carried.faceTempC(Duration.ofMillis((long) (minutes * 6e4))));
      double[] timesS = new double[7];
      double[] airC = new double[7];
      for (int i = 0; i < 7; i++) {
        timesS[i] = i * 1200;
        airC[i] = 20;
      }
      double[] lagC = BoardLag.surfaceTempsC(board, timesS, airC, 8);
      for (int i = 0; i < 7; i++) {
        panel.dot(colour, 20 * i, lagC[i]);
      }
    }
    double dewC = shop.dewPointC();
    panel.dashed(5, 0, dewC, 120, dewC).dashed(5, 0, dewC + 3, 120, dewC + 3);
    panel.word(5, 86, dewC - 0.7, "dew point").word(5, 86, dewC + 2.3, "3 K above it");
    return panel.word(0, 4, 18.4, "both faces").word(1, 62, 16.2, "one face");
  }
}
