package coatwright.air;

import coatwright.quantity.Figure;
import coatwright.quantity.Panel;
import coatwright.quantity.Panel.Scale;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import java.util.ArrayList;
import java.util.List;

/** Moist air as the register draws it. */
public final class AirFigure {
  private AirFigure() {}

  public static Figure figure() {
    return new Figure(
        "moist-air",
        "Dew point over air temperature at four humidities with points of IAPWS-IF97, and"
            + " saturation pressure less that of two IAPWS formulations in parts per million",
        List.of(dewPoints(), saturation()));
  }

  private static Panel dewPoints() {
    Panel panel =
        new Panel(
            "Dew point (dots: IAPWS-IF97)",
            Scale.of("air temperature, °C", 0, 45, 5),
            Scale.of("dew point, °C", 0, 45, 5));
    int[] humidities = {30, 50, 70, 90};
    for (int i = 0; i < humidities.length; i++) {
      int rhPct = humidities[i];
      double coldestC = rhPct == 30 ? 18 : rhPct == 50 ? 10 : rhPct == 70 ? 5.2 : 1.6;
      panel.curve(i, coldestC, 45, tempC -> MoistAir.of(tempC, rhPct).dewPointC());
      double endC = MoistAir.of(39, rhPct).dewPointC();
      panel.word(i, 40.5, endC - 1.8, rhPct + " %");
    }
    for (Row row : ReferenceTable.read("moist_air/dewpoint_if97_vs_psychrolib.csv")) {
      for (int i = 0; i < humidities.length; i++) {
        if (row.number("rh_pct") == humidities[i] && row.number("t_dry_C") % 5 == 0) {
          panel.dot(i, row.number("t_dry_C"), row.number("t_dew_if97_C"));
        }
      }
    }
    return panel;
  }

  private static Panel saturation() {
    Panel panel =
        new Panel(
            "Saturation pressure beside newer formulations",
            Scale.of("temperature, °C", -40, 60, 20),
            Scale.of("ours less theirs, ppm", -400, 400, 200));
    List<double[]> water = new ArrayList<>();
    List<double[]> ice = new ArrayList<>();
    for (Row row : ReferenceTable.read("moist_air/saturation_pressure_formulas.csv")) {
      double tempC = row.number("t_C");
      if (tempC >= 0 && tempC <= 60) {
        double oursPa = SaturationPressure.overWaterPa(tempC);
        water.add(new double[] {tempC, 1e6 * (oursPa / row.number("if97_water_Pa") - 1)});
      }
      if (tempC <= 0) {
        double oursPa = SaturationPressure.overIcePa(tempC);
        ice.add(new double[] {tempC, 1e6 * (oursPa / row.number("iapws_r14_ice_Pa") - 1)});
      }
    }
    panel.line(0, false, water).line(2, false, ice);
    water.forEach(point -> panel.dot(0, point[0], point[1]));
    ice.forEach(point -> panel.dot(2, point[0], point[1]));
    panel.line(5, true, List.of(new double[] {-40, 300}, new double[] {60, 300}));
    panel.line(5, true, List.of(new double[] {-40, -300}, new double[] {60, -300}));
    panel.word(5, -2, 315, "the handbook's own 300 ppm");
    panel.word(0, 15, -60, "over water: IAPWS-IF97");
    panel.word(2, -14, 190, "over ice: IAPWS R14");
    return panel;
  }
}
