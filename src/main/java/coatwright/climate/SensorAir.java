package coatwright.climate;

import coatwright.air.MoistAir;
import coatwright.air.SaturationPressure;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What one sensor says of the air at an instant, temperature and humidity paired.
 *
 * @param name the sensor as people know it
 * @param vapourPressurePa Pa, from the sensor's own temperature and humidity: never one sensor's
 *     humidity with another's temperature
 * @param temperatureErrorK standard uncertainty, K
 * @param rhErrorPct standard uncertainty, points of RH
 * @param doubtful what it rests on is in doubt: beside a sensor that is not, it does not count
 */
record SensorAir(
    String name,
    Instant at,
    double airTempC,
    double vapourPressurePa,
    double temperatureErrorK,
    double rhErrorPct,
    boolean doubtful) {

  /** Pairs a temperature and a humidity; empty outside the air this house describes. */
  static Optional<SensorAir> of(
      String name, Instant at, double airTempC, double rhPct, double errorK, double errorPct) {
    boolean describable =
        airTempC >= MoistAir.COLDEST_C
            && airTempC <= MoistAir.WARMEST_C
            && rhPct > 0
            && rhPct <= 100
            && errorK >= 0
            && errorPct >= 0;
    if (!describable) {
      return Optional.empty();
    }
    double vapourPa = rhPct / 100 * SaturationPressure.overWaterPa(airTempC);
    return Optional.of(new SensorAir(name, at, airTempC, vapourPa, errorK, errorPct, false));
  }

  /** The same air, in doubt. */
  SensorAir inDoubt() {
    return new SensorAir(name, at, airTempC, vapourPressurePa, temperatureErrorK, rhErrorPct, true);
  }

  /** Those that are not in doubt; all of them where every one is. */
  static List<SensorAir> trusted(List<SensorAir> sensors) {
    List<SensorAir> trusted = sensors.stream().filter(air -> !air.doubtful).toList();
    return trusted.isEmpty() ? sensors : trusted;
  }

  /** Standard uncertainty of the vapour pressure, Pa, from both errors taken independent. */
  double vapourErrorPa() {
    return vapourErrorPa(airTempC, vapourPressurePa, temperatureErrorK, rhErrorPct);
  }

  static double vapourErrorPa(double airTempC, double vapourPa, double errorK, double errorPct) {
    double fromHumidity = SaturationPressure.overWaterPa(airTempC) * errorPct / 100;
    double fromTemperature = vapourPa * saturationGrowthPerK(airTempC) * errorK;
    return Math.hypot(fromHumidity, fromTemperature);
  }

  /**
   * Relative growth of the saturation pressure with temperature, 1/K; about 0.06 at 20 °C. The
   * derivative of the Magnus form (WMO), near enough for an uncertainty.
   */
  static double saturationGrowthPerK(double airTempC) {
    double warmth = 243.12 + airTempC;
    return 17.62 * 243.12 / (warmth * warmth);
  }

  /** As a point of a series. */
  AirPoint point() {
    return point(at, airTempC, vapourPressurePa, temperatureErrorK, rhErrorPct);
  }

  /**
   * A point from temperature and vapour pressure. Two sensors taken together, or a forecast, may
   * ask for more vapour than the air holds; saturated air is then what is left.
   */
  static AirPoint point(
      Instant at, double airTempC, double vapourPa, double errorK, double errorPct) {
    double saturatedPa = SaturationPressure.overWaterPa(airTempC);
    double heldPa = Math.min(vapourPa, saturatedPa);
    MoistAir air = MoistAir.of(airTempC, Math.min(100, 100 * heldPa / saturatedPa));
    return new AirPoint(at, airTempC, air.rhPct(), air.dewPointC(), heldPa, errorK, errorPct);
  }
}
