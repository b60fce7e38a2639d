package coatwright.air;

import static coatwright.quantity.Conversions.ZERO_CELSIUS_K;

import coatwright.quantity.OutOfRange;
import java.util.OptionalDouble;

/**
 * Air with water in it, as a thermometer, a hygrometer and a barometer find it.
 *
 * <p>Ideal-gas relations of ASHRAE Handbook Fundamentals (2017), chapter 1; against real-gas tables
 * they differ by up to 1 % in humidity ratio and 0.1 % in density. Relative humidity is over liquid
 * water at every temperature, also below freezing, which is how sensors and weather stations report
 * it.
 *
 * @param airTempC dry-bulb temperature, °C, -40 to 60
 * @param rhPct relative humidity over liquid water, %, above 0 to 100
 * @param pressurePa pressure of the whole air, Pa, 50 000 to 110 000
 */
public record MoistAir(double airTempC, double rhPct, double pressurePa) {
  /** Coldest air described, °C. */
  public static final double COLDEST_C = -40;

  /** Warmest air described, °C. */
  public static final double WARMEST_C = 60;

  /** Standard pressure at sea level, Pa. */
  public static final double SEA_LEVEL_PA = 101_325;

  /** Gas constant of dry air, J/(kg K); ASHRAE 2017 chapter 1, equation 1. */
  static final double GAS_CONSTANT_DRY_AIR = 287.042;

  /** Ratio of the molar masses of water and dry air; ASHRAE 2017 chapter 1. */
  static final double MASS_RATIO = 0.621945;

  /** Gas constant of water vapour, J/(kg K), from the two above. */
  static final double GAS_CONSTANT_VAPOUR = GAS_CONSTANT_DRY_AIR / MASS_RATIO;

  private static final double ROUNDING_PCT = 1e-8;

  public MoistAir {
    OutOfRange.check("air temperature", airTempC, "°C", COLDEST_C, WARMEST_C);
    OutOfRange.check("relative humidity", rhPct, "%", Double.MIN_VALUE, 100);
    OutOfRange.check("air pressure", pressurePa, "Pa", 50_000, 110_000);
  }

  /** Air at standard sea-level pressure. */
  public static MoistAir of(double airTempC, double rhPct) {
    return new MoistAir(airTempC, rhPct, SEA_LEVEL_PA);
  }

  /**
   * Air known by the pressure of its vapour, Pa.
   *
   * @throws OutOfRange also if the air cannot hold so much vapour at this temperature
   */
  public static MoistAir ofVapourPressure(
      double airTempC, double vapourPressurePa, double pressurePa) {
    OutOfRange.check("air temperature", airTempC, "°C", COLDEST_C, WARMEST_C);
    double mostPa = SaturationPressure.overWaterPa(airTempC);
    OutOfRange.check(
        "vapour pressure in the air", vapourPressurePa, "Pa", Double.MIN_VALUE, mostPa);
    return new MoistAir(airTempC, Math.min(100, 100 * vapourPressurePa / mostPa), pressurePa);
  }

  /**
   * Air known by its dew point over liquid water, °C.
   *
   * @throws OutOfRange also if the dew point is above the air temperature
   */
  public static MoistAir ofDewPoint(double airTempC, double dewPointC, double pressurePa) {
    OutOfRange.check("dew point", dewPointC, "°C", SaturationPressure.COLDEST_C, airTempC);
    return ofVapourPressure(airTempC, SaturationPressure.overWaterPa(dewPointC), pressurePa);
  }

  /**
   * Air known by a wet-bulb thermometer; the wick carries ice below 0 °C.
   *
   * @throws OutOfRange also if so cold a wick would need air drier than dry, or one above the air
   *     would need more vapour than the air can hold
   */
  public static MoistAir ofWetBulb(double airTempC, double wetBulbC, double pressurePa) {
    OutOfRange.check("air temperature", airTempC, "°C", COLDEST_C, WARMEST_C);
    OutOfRange.check("wet bulb", wetBulbC, "°C", SaturationPressure.COLDEST_C, airTempC + 5);
    double ratio = WetBulb.humidityRatio(airTempC, wetBulbC, pressurePa);
    if (!(ratio > 0)) {
      throw new OutOfRange(
          "wet bulb is %s °C in air at %s °C; even dry air could not cool it so far"
              .formatted(wetBulbC, airTempC));
    }
    double vapourPa = ratio * pressurePa / (MASS_RATIO + ratio);
    double rhPct = 100 * vapourPa / SaturationPressure.overWaterPa(airTempC);
    // The way through the humidity ratio may land a rounding error above saturation.
    boolean saturated = rhPct > 100 && rhPct < 100 + ROUNDING_PCT;
    return new MoistAir(airTempC, saturated ? 100 : rhPct, pressurePa);
  }

  /** Pressure of the vapour alone, Pa. */
  public double vapourPressurePa() {
    return rhPct / 100 * SaturationPressure.overWaterPa(airTempC);
  }

  /** Where this air, cooled as it stands, begins to wet a surface, °C; over liquid water. */
  public double dewPointC() {
    return rhPct == 100 ? airTempC : SaturationPressure.dewPointC(vapourPressurePa());
  }

  /**
   * Where this air begins to lay frost, °C; present only when the dew point is below 0 °C (to
   * within a millikelvin, since ice and water meet at 0.01 °C).
   */
  public OptionalDouble frostPointC() {
    double vapourPa = vapourPressurePa();
    return vapourPa <= SaturationPressure.overIcePa(0)
        ? OptionalDouble.of(SaturationPressure.frostPointC(vapourPa))
        : OptionalDouble.empty();
  }

  /** Temperature of a wetted wick in moving air, °C; the wick carries ice below 0 °C. */
  public double wetBulbC() {
    return WetBulb.wetBulbC(this);
  }

  /** Water in the air, kg per kg of dry air; ASHRAE equation 20. */
  public double humidityRatio() {
    return humidityRatio(vapourPressurePa(), pressurePa);
  }

  static double humidityRatio(double vapourPressurePa, double pressurePa) {
    return MASS_RATIO * vapourPressurePa / (pressurePa - vapourPressurePa);
  }

  /** Water in the air, grams per cubic metre. */
  public double absoluteHumidityGm3() {
    return 1000 * vapourPressurePa() / (GAS_CONSTANT_VAPOUR * (airTempC + ZERO_CELSIUS_K));
  }

  /** Enthalpy, kJ per kg of dry air, from dry air at 0 °C; ASHRAE equation 30. */
  public double enthalpyKjKg() {
    return 1.006 * airTempC + humidityRatio() * (2501 + 1.86 * airTempC);
  }

  /** Volume of this air that holds one kilogram of dry air, m³; ASHRAE equation 26. */
  public double specificVolumeM3Kg() {
    double kelvin = airTempC + ZERO_CELSIUS_K;
    return GAS_CONSTANT_DRY_AIR * kelvin / (pressurePa - vapourPressurePa());
  }

  /** Density of the moist air, kg/m³. */
  public double densityKgm3() {
    return (1 + humidityRatio()) / specificVolumeM3Kg();
  }

  /** How much more vapour pressure the air could take, Pa. */
  public double vapourPressureDeficitPa() {
    return SaturationPressure.overWaterPa(airTempC) - vapourPressurePa();
  }

  /**
   * This air warmed or cooled with no water added or taken away.
   *
   * @throws OutOfRange if it would be cooled below its dew point, where water leaves it
   */
  public MoistAir warmedTo(double toTempC) {
    return toTempC == airTempC ? this : ofVapourPressure(toTempC, vapourPressurePa(), pressurePa);
  }
}
