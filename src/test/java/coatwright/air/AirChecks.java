package coatwright.air;

import static coatwright.air.SaturationPressure.dewPointC;
import static coatwright.air.SaturationPressure.overIcePa;
import static coatwright.air.SaturationPressure.overWaterPa;
import static coatwright.quantity.OutsideCheck.Kind.EQUATION;
import static coatwright.quantity.OutsideCheck.Kind.PRINTED;
import static coatwright.quantity.OutsideCheck.Kind.PROGRAM;

import coatwright.quantity.Deviation;
import coatwright.quantity.OutsideCheck;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Moist air against tables printed or computed by others.
 *
 * <p>psychrolib, after ASHRAE, means relative humidity <em>over ice</em> in air at or below 0.01 °C
 * and calls the frost point a dew point there; this room means liquid water throughout. So states
 * at or below freezing are entered by their vapour pressure, on which both agree, and a "dew point"
 * of theirs below freezing is compared with our frost point. Nothing else differs.
 */
public final class AirChecks {
  private static final String PSYCHROLIB = "PsychroLib 2.5.0 (package psychrolib 1.1.1)";
  private static final String TABLE_2 = "ASHRAE Fundamentals 2017 ch. 1 Table 2 (real gas)";
  private static final String TABLE_3 = "ASHRAE Fundamentals 2017 ch. 1 Table 3";
  private static final String GRID_RANGE = "−10…45 °C, 5…100 %, two pressures";

  static final OutsideCheck WATER_PRINTED =
      new OutsideCheck(
          PRINTED,
          "saturation over water",
          TABLE_3,
          "5…100 °C",
          300,
          "ppm",
          d -> printed(d, "saturation pressure over water", SaturationPressure::overWaterPa));

  static final OutsideCheck ICE_PRINTED =
      new OutsideCheck(
          PRINTED,
          "saturation over ice, above −60 °C, where it is printed to two digits",
          TABLE_3,
          "−20…−5 °C",
          300,
          "ppm",
          d -> printed(d, "saturation pressure over ice", SaturationPressure::overIcePa));

  static final OutsideCheck SATURATION_BY_PSYCHROLIB =
      new OutsideCheck(
          PROGRAM,
          "saturation over water and ice",
          PSYCHROLIB,
          "−40…60 °C",
          1,
          "ppm",
          AirChecks::saturationByPsychrolib);

  static final OutsideCheck WATER_BY_IF97 =
      new OutsideCheck(
          PROGRAM,
          "saturation over water",
          "IAPWS-IF97 (library iapws 1.5.2)",
          "0…60 °C",
          180,
          "ppm",
          d -> byFormula(d, "if97_water_Pa", 60, SaturationFunction.HYLAND_WEXLER_WATER));

  static final OutsideCheck ICE_BY_R14 =
      new OutsideCheck(
          PROGRAM,
          "saturation over ice",
          "IAPWS R14-08(2011) (library iapws 1.5.2)",
          "−40…0 °C",
          330,
          "ppm",
          d -> byFormula(d, "iapws_r14_ice_Pa", 0, SaturationPressure::overIcePa));

  static final OutsideCheck SUPERCOOLED =
      new OutsideCheck(
          PROGRAM,
          "equation 6 carried below its printed range",
          "the same equation by a separate program",
          "−40…60 °C",
          5,
          "ppm",
          d -> byFormula(d, "hyland_wexler_water_Pa", 60, SaturationFunction.HYLAND_WEXLER_WATER));

  static final OutsideCheck MAGNUS =
      new OutsideCheck(
          PROGRAM,
          "the Magnus form, used in comparisons only",
          "WMO-No. 8 (2008) annex 4.B by a separate program",
          "−40…60 °C",
          5,
          "ppm",
          d -> byFormula(d, "wmo_magnus_water_Pa", 60, SaturationFunction.MAGNUS_WATER));

  static final OutsideCheck DEW_BY_MAGNUS =
      new OutsideCheck(
          EQUATION,
          "dew point over supercooled water",
          "Magnus form of WMO-No. 8 (2008) annex 4.B",
          "−40…0 °C",
          0.04,
          "K",
          AirChecks::dewByMagnus);

  static final OutsideCheck DEW_BY_IF97 =
      new OutsideCheck(
          PROGRAM,
          "dew point",
          "IAPWS-IF97, forward and backward",
          "air 2.5…45 °C",
          0.003,
          "K",
          AirChecks::dewByIf97);

  static final OutsideCheck DEW =
      grid("dew and frost point", 0.0015, "K", "t_dew_C", AirChecks::dewOrFrostPointC);

  static final OutsideCheck WET_BULB =
      new OutsideCheck(
          PROGRAM,
          "wet bulb, but three states where theirs is the ice wick's",
          PSYCHROLIB,
          GRID_RANGE,
          0.0015,
          "K",
          AirChecks::wetBulb);

  static final OutsideCheck VAPOUR =
      grid("vapour pressure", 0.01, "Pa", "p_vap_Pa", MoistAir::vapourPressurePa);

  static final OutsideCheck RATIO =
      grid("humidity ratio", 1e-4, "g/kg", "hum_ratio_g_per_kg", air -> 1000 * air.humidityRatio());

  static final OutsideCheck ENTHALPY =
      grid("enthalpy", 0.001, "kJ/kg", "enthalpy_kJ_per_kg_dry_air", MoistAir::enthalpyKjKg);

  static final OutsideCheck ABSOLUTE =
      grid(
          "absolute humidity",
          0.001,
          "g/m³",
          "abs_humidity_g_per_m3",
          MoistAir::absoluteHumidityGm3);

  static final OutsideCheck VOLUME =
      grid(
          "specific volume",
          1e-5,
          "m³/kg",
          "volume_m3_per_kg_dry_air",
          MoistAir::specificVolumeM3Kg);

  static final OutsideCheck DENSITY =
      grid("density", 1e-5, "kg/m³", "density_kg_per_m3", MoistAir::densityKgm3);

  static final OutsideCheck DEFICIT =
      new OutsideCheck(
          PROGRAM,
          "vapour pressure deficit above freezing",
          PSYCHROLIB,
          GRID_RANGE,
          0.01,
          "Pa",
          AirChecks::deficit);

  static final OutsideCheck RATIO_PRINTED =
      new OutsideCheck(
          PRINTED,
          "humidity ratio of saturated air; we take it for an ideal gas",
          TABLE_2,
          "−20…50 °C",
          1,
          "%",
          d -> printedPct(d, "saturation humidity ratio", air -> 1000 * air.humidityRatio()));

  static final OutsideCheck ENTHALPY_PRINTED =
      new OutsideCheck(
          PRINTED,
          "enthalpy of saturated air; we take it for an ideal gas",
          TABLE_2,
          "5…50 °C",
          1.02,
          "%",
          d -> printedPct(d, "enthalpy of saturated air", MoistAir::enthalpyKjKg));

  static final OutsideCheck DENSITY_REAL =
      new OutsideCheck(
          PROGRAM,
          "density; we take it for an ideal gas",
          "IAPWS real-gas mixture (library iapws 1.5.2)",
          "5…40 °C",
          1000,
          "ppm",
          AirChecks::densityReal);

  static final OutsideCheck HUMIDITY_OF_DEW =
      new OutsideCheck(
          PROGRAM,
          "humidity from the dew or frost point",
          PSYCHROLIB,
          "air 5…40 °C",
          0.001,
          "% RH",
          AirChecks::humidityOfDew);

  static final OutsideCheck HUMIDITY_OF_WET_BULB =
      new OutsideCheck(
          PROGRAM,
          "humidity from a wet and a dry thermometer",
          PSYCHROLIB,
          "air 10…40 °C",
          0.001,
          "% RH",
          AirChecks::humidityOfWetBulb);

  static final OutsideCheck ALTITUDE_PRINTED =
      new OutsideCheck(
          PRINTED,
          "pressure at a height",
          "ASHRAE Fundamentals 2017 ch. 1 Table 1",
          "500, 1000 m",
          1,
          "Pa",
          AirChecks::altitudePrinted);

  static final OutsideCheck ALTITUDE =
      new OutsideCheck(
          PROGRAM,
          "pressure at a height",
          PSYCHROLIB,
          "−500…3000 m",
          0.01,
          "Pa",
          AirChecks::altitude);

  static final OutsideCheck MARGIN =
      new OutsideCheck(
          PROGRAM,
          "how far a surface as warm as the air stands above the dew point",
          "table for the 3 K rule after ISO 8502-4, PsychroLib 2.5.0",
          "dew points from 0 °C",
          0.003,
          "K",
          AirChecks::margin);

  private AirChecks() {}

  public static List<OutsideCheck> all() {
    return List.of(
        WATER_PRINTED,
        ICE_PRINTED,
        SATURATION_BY_PSYCHROLIB,
        WATER_BY_IF97,
        ICE_BY_R14,
        SUPERCOOLED,
        MAGNUS,
        DEW_BY_MAGNUS,
        DEW_BY_IF97,
        DEW,
        WET_BULB,
        VAPOUR,
        RATIO,
        ENTHALPY,
        ABSOLUTE,
        VOLUME,
        DENSITY,
        DEFICIT,
        RATIO_PRINTED,
        ENTHALPY_PRINTED,
        DENSITY_REAL,
        HUMIDITY_OF_DEW,
        HUMIDITY_OF_WET_BULB,
        ALTITUDE_PRINTED,
        ALTITUDE,
        MARGIN);
  }

  private static OutsideCheck grid(
      String question,
      double allowed,
      String unit,
      String column,
      ToDoubleFunction<MoistAir> ours) {
    return new OutsideCheck(
        PROGRAM,
        question,
        PSYCHROLIB,
        GRID_RANGE,
        allowed,
        unit,
        d -> {
          for (Row row : gridRows()) {
            d.add(ours.applyAsDouble(ofGrid(row)), row.number(column), row.cells());
          }
        });
  }

  private static List<Row> gridRows() {
    return ReferenceTable.read("moist_air/psychrolib_grid.csv");
  }

  static MoistAir ofGrid(Row row) {
    double tempC = row.number("t_dry_C");
    double pressurePa = row.number("p_atm_Pa");
    return tempC > 0.01
        ? new MoistAir(tempC, row.number("rh_pct"), pressurePa)
        : MoistAir.ofVapourPressure(tempC, row.number("p_vap_Pa"), pressurePa);
  }

  static double dewOrFrostPointC(MoistAir air) {
    return air.frostPointC().orElseGet(air::dewPointC);
  }

  private static List<Row> handbook(String quantity) {
    return ReferenceTable.read("moist_air/ashrae_check_values.csv").stream()
        .filter(row -> row.text("quantity").equals(quantity))
        .toList();
  }

  /** The temperature in an input such as "t=-20 C p=101325 Pa". */
  private static double tempC(Row row) {
    return Double.parseDouble(row.text("input").replaceFirst("^t=(\\S+) C.*$", "$1"));
  }

  private static void printed(Deviation d, String quantity, SaturationFunction ours) {
    for (Row row : handbook(quantity)) {
      if (tempC(row) > -60) {
        d.addPpm(ours.pressurePa(tempC(row)), row.number("value"), row.cells());
      }
    }
  }

  private static void printedPct(Deviation d, String quantity, ToDoubleFunction<MoistAir> ours) {
    for (Row row : handbook(quantity)) {
      double tempC = tempC(row);
      MoistAir air =
          MoistAir.ofVapourPressure(
              tempC, tempC < 0 ? overIcePa(tempC) : overWaterPa(tempC), MoistAir.SEA_LEVEL_PA);
      d.addPct(ours.applyAsDouble(air), row.number("value"), row.cells());
    }
  }

  private static void saturationByPsychrolib(Deviation d) {
    for (Row row : ReferenceTable.read("moist_air/psychrolib_saturation.csv")) {
      double tempC = row.number("t_C");
      double oursPa = row.text("over").equals("ice") ? overIcePa(tempC) : overWaterPa(tempC);
      d.addPpm(oursPa, row.number("p_sat_Pa"), tempC + " °C");
    }
  }

  private static void byFormula(
      Deviation d, String column, double warmestC, SaturationFunction ours) {
    for (Row row : ReferenceTable.read("moist_air/saturation_pressure_formulas.csv")) {
      double tempC = row.number("t_C");
      if (!row.text(column).isEmpty() && tempC <= warmestC) {
        d.addPpm(ours.pressurePa(tempC), row.number(column), tempC + " °C");
      }
    }
  }

  private static void dewByMagnus(Deviation d) {
    for (int tempC = -40; tempC <= 0; tempC++) {
      double magnusPa = SaturationFunction.MAGNUS_WATER.pressurePa(tempC);
      d.add(dewPointC(magnusPa), tempC, tempC + " °C");
    }
  }

  private static void dewByIf97(Deviation d) {
    for (Row row : ReferenceTable.read("moist_air/dewpoint_if97_vs_psychrolib.csv")) {
      MoistAir air = MoistAir.of(row.number("t_dry_C"), row.number("rh_pct"));
      d.add(air.dewPointC(), row.number("t_dew_if97_C"), row.cells());
    }
  }

  /**
   * In a narrow band the ice wick and the liquid wick both have a solution and psychrolib's search
   * ends on either; there ours is the liquid one, and the state is left out.
   */
  static boolean onTheOtherWick(Row row) {
    return ofGrid(row).wetBulbC() >= 0 && row.number("t_wet_C") < 0;
  }

  private static void wetBulb(Deviation d) {
    for (Row row : gridRows()) {
      if (!onTheOtherWick(row)) {
        d.add(ofGrid(row).wetBulbC(), row.number("t_wet_C"), row.cells());
      }
    }
  }

  private static void deficit(Deviation d) {
    for (Row row : gridRows()) {
      if (row.number("t_dry_C") > 0.01) {
        d.add(ofGrid(row).vapourPressureDeficitPa(), row.number("vpd_Pa"), row.cells());
      }
    }
  }

  private static void densityReal(Deviation d) {
    for (Row row : ReferenceTable.read("moist_air/density_iapws_vs_psychrolib.csv")) {
      MoistAir air =
          new MoistAir(row.number("t_dry_C"), row.number("rh_pct"), row.number("p_atm_Pa"));
      d.addPpm(air.densityKgm3(), row.number("density_iapws_kg_per_m3"), row.cells());
    }
  }

  private static void humidityOfDew(Deviation d) {
    for (Row row : ReferenceTable.read("moist_air/psychrolib_from_dewpoint.csv")) {
      d.add(ofDewOrFrostPoint(row).rhPct(), row.number("rh_pct"), row.cells());
    }
  }

  static MoistAir ofDewOrFrostPoint(Row row) {
    double tempC = row.number("t_dry_C");
    double dewC = row.number("t_dew_C");
    double pressurePa = row.number("p_atm_Pa");
    return dewC > 0
        ? MoistAir.ofDewPoint(tempC, dewC, pressurePa)
        : MoistAir.ofVapourPressure(tempC, overIcePa(dewC), pressurePa);
  }

  private static void humidityOfWetBulb(Deviation d) {
    for (Row row : ReferenceTable.read("moist_air/psychrolib_from_wetbulb.csv")) {
      MoistAir air =
          MoistAir.ofWetBulb(row.number("t_dry_C"), row.number("t_wet_C"), row.number("p_atm_Pa"));
      d.add(air.rhPct(), row.number("rh_pct"), row.cells());
    }
  }

  private static void altitudePrinted(Deviation d) {
    d.add(StandardAtmosphere.pressurePa(500), 95_461, "500 m");
    d.add(StandardAtmosphere.pressurePa(1000), 89_875, "1000 m");
  }

  private static void altitude(Deviation d) {
    for (Row row : ReferenceTable.read("moist_air/psychrolib_standard_atmosphere.csv")) {
      double altitudeM = row.number("altitude_m");
      d.add(StandardAtmosphere.pressurePa(altitudeM), row.number("p_Pa"), altitudeM + " m");
    }
  }

  private static void margin(Deviation d) {
    for (Row row : ReferenceTable.read("moist_air/dewpoint_margin.csv")) {
      MoistAir air = MoistAir.of(row.number("t_air_C"), row.number("rh_pct"));
      if (air.dewPointC() >= 0) {
        double marginK = air.airTempC() - air.dewPointC();
        d.add(marginK, row.number("margin_if_surface_at_air_K"), row.cells());
      }
    }
  }
}
