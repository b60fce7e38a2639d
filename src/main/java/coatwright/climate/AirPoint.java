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
    double rhErrorPct) {}
