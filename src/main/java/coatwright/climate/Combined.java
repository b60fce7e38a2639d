package coatwright.climate;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Several sensors of one room made into one air: in temperature and vapour pressure, never in
 * relative humidity, because two sensors a few kelvin apart show different humidities in the same
 * air.
 *
 * <p>Two are weighted by the inverse square of their uncertainty; of three or more the median is
 * taken. Where two differ by more than twice their combined uncertainty the worse case for clouding
 * is used: the higher vapour pressure, the colder temperature.
 *
 * @param trouble what a person should know of the disagreement
 */
record Combined(
    double airTempC,
    double vapourPressurePa,
    double temperatureErrorK,
    double rhErrorPct,
    boolean disagree,
    Optional<String> trouble) {
  private static final double LIMIT = 2;

  /** Standard error of a median over that of a mean, for many normal values: sqrt(pi/2). */
  private static final double MEDIAN_FACTOR = Math.sqrt(Math.PI / 2);

  /**
   * @param sensors at least one
   */
  static Combined of(List<SensorAir> sensors) {
    return switch (sensors.size()) {
      case 1 -> one(sensors.get(0));
      case 2 -> two(sensors.get(0), sensors.get(1));
      default -> many(sensors);
    };
  }

  private static Combined one(SensorAir only) {
    return new Combined(
        only.airTempC(),
        only.vapourPressurePa(),
        only.temperatureErrorK(),
        only.rhErrorPct(),
        false,
        Optional.empty());
  }

  private static Combined two(SensorAir a, SensorAir b) {
    boolean vapourApart =
        apart(a.vapourPressurePa(), a.vapourErrorPa(), b.vapourPressurePa(), b.vapourErrorPa());
    boolean tempApart =
        apart(a.airTempC(), a.temperatureErrorK(), b.airTempC(), b.temperatureErrorK());
    double vapourPa =
        vapourApart
            ? Math.max(a.vapourPressurePa(), b.vapourPressurePa())
            : weighted(
                a.vapourPressurePa(), a.vapourErrorPa(), b.vapourPressurePa(), b.vapourErrorPa());
    double tempC =
        tempApart
            ? Math.min(a.airTempC(), b.airTempC())
            : weighted(a.airTempC(), a.temperatureErrorK(), b.airTempC(), b.temperatureErrorK());
    double errorK =
        tempApart
            ? Math.max(a.temperatureErrorK(), b.temperatureErrorK())
            : weightedError(a.temperatureErrorK(), b.temperatureErrorK());
    double errorPct =
        vapourApart
            ? Math.max(a.rhErrorPct(), b.rhErrorPct())
            : weightedError(a.rhErrorPct(), b.rhErrorPct());
    return new Combined(
        tempC,
        vapourPa,
        errorK,
        errorPct,
        vapourApart || tempApart,
        trouble(a, b, vapourApart, tempApart));
  }

  private static Optional<String> trouble(
      SensorAir a, SensorAir b, boolean vapourApart, boolean tempApart) {
    if (vapourApart) {
      return Optional.of(
          String.format(
              Locale.ROOT,
              "%s and %s disagree about the vapour, %.0f and %.0f Pa; the higher is used; check"
                  + " both against a salt",
              a.name(),
              b.name(),
              a.vapourPressurePa(),
              b.vapourPressurePa()));
    }
    if (tempApart) {
      SensorAir warm = a.airTempC() > b.airTempC() ? a : b;
      return Optional.of(
          String.format(
              Locale.ROOT,
              "%s and %s agree about the vapour but read %.1f °C and %.1f °C; the colder is used;"
                  + " %s stands in a warm spot or warms itself",
              a.name(),
              b.name(),
              a.airTempC(),
              b.airTempC(),
              warm.name()));
    }
    return Optional.empty();
  }

  private static Combined many(List<SensorAir> sensors) {
    double tempC = median(sensors.stream().mapToDouble(SensorAir::airTempC).toArray());
    double vapourPa = median(sensors.stream().mapToDouble(SensorAir::vapourPressurePa).toArray());
    double shrink = MEDIAN_FACTOR / Math.sqrt(sensors.size());
    double errorK =
        shrink * median(sensors.stream().mapToDouble(SensorAir::temperatureErrorK).toArray());
    double errorPct =
        shrink * median(sensors.stream().mapToDouble(SensorAir::rhErrorPct).toArray());
    double vapourErrorPa = SensorAir.vapourErrorPa(tempC, vapourPa, errorK, errorPct);
    Optional<String> outvoted =
        sensors.stream()
            .filter(
                sensor ->
                    apart(
                            sensor.vapourPressurePa(),
                            sensor.vapourErrorPa(),
                            vapourPa,
                            vapourErrorPa)
                        || apart(sensor.airTempC(), sensor.temperatureErrorK(), tempC, errorK))
            .map(SensorAir::name)
            .findFirst()
            .map(name -> name + " stands apart from the other sensors, which outvote it; check it");
    return new Combined(tempC, vapourPa, errorK, errorPct, false, outvoted);
  }

  private static boolean apart(double a, double errorA, double b, double errorB) {
    return Math.abs(a - b) > LIMIT * Math.hypot(errorA, errorB);
  }

  private static double weighted(double a, double errorA, double b, double errorB) {
    double squareA = errorA * errorA;
    double squareB = errorB * errorB;
    return squareA + squareB > 0 ? (a * squareB + b * squareA) / (squareA + squareB) : (a + b) / 2;
  }

  private static double weightedError(double errorA, double errorB) {
    double sum = Math.hypot(errorA, errorB);
    return sum > 0 ? errorA * errorB / sum : 0;
  }

  private static double median(double[] values) {
    Arrays.sort(values);
    int middle = values.length / 2;
    return values.length % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
  }

  AirPoint point(Instant at) {
    return SensorAir.point(at, airTempC, vapourPressurePa, temperatureErrorK, rhErrorPct);
  }
}
