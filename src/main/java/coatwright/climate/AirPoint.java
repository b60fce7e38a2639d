package coatwright.climate;

import java.time.Instant;

/**
 * The air of a room at an instant: temperature and vapour pressure are carried, humidity follows.
 *
 * @param vapourPressurePa water vapour pressure, Pa
 * @param temperatureErrorK standard uncertainty, K
 * @param rhErrorPct standard uncertainty, points of RH
 */
public record AirPoint(
    Instant at,
    double airTempC,
    double rhPct,
    double dewPointC,
    double vapourPressurePa,
    double temperatureErrorK,
    double rhErrorPct) {
  /** Standard uncertainty of the dew point, K, from both errors taken independent. */
  public double dewPointErrorK() {
    double errorPa =
        SensorAir.vapourErrorPa(airTempC, vapourPressurePa, temperatureErrorK, rhErrorPct);
    return errorPa / (vapourPressurePa * SensorAir.saturationGrowthPerK(dewPointC));
  }
}
