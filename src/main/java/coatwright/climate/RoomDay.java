package coatwright.climate;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What a stretch of a room's air was good for. A reading holds until the next one; gaps count for
 * nothing.
 *
 * @param knownHours of the stretch with readings
 * @param warmHours at or above the warm limit
 * @param dampHours at or above the damp limit
 * @param nightLowC the lowest between 20:00 and 08:00 on the shop's clock, °C
 */
public record RoomDay(
    double knownHours,
    double warmHours,
    double dampHours,
    OptionalDouble nightLowC,
    Optional<Instant> nightLowAt) {
  private static final LocalTime DUSK = LocalTime.of(20, 0);
  private static final LocalTime DAWN = LocalTime.of(8, 0);
  private static final double MS_PER_HOUR = 3_600_000;

  /**
   * Of a stretch of air.
   *
   * @param warmC from here up an hour is warm, °C
   * @param dampPct from here up an hour is damp, % RH
   */
  public static RoomDay of(AirSeries air, double warmC, double dampPct, ZoneId zone) {
    Set<Instant> silentFrom =
        air.gaps().stream().map(Gap::from).collect(Collectors.toUnmodifiableSet());
    double known = 0;
    double warm = 0;
    double damp = 0;
    Optional<AirPoint> low = Optional.empty();
    List<AirPoint> points = air.points();
    for (int i = 0; i < points.size(); i++) {
      AirPoint point = points.get(i);
      if (i + 1 < points.size() && !silentFrom.contains(point.at())) {
        double hours =
            Duration.between(point.at(), points.get(i + 1).at()).toMillis() / MS_PER_HOUR;
        known += hours;
        warm += point.airTempC() >= warmC ? hours : 0;
        damp += point.rhPct() >= dampPct ? hours : 0;
      }
      boolean lower = low.map(lowest -> point.airTempC() < lowest.airTempC()).orElse(true);
      if (lower && isNight(point.at(), zone)) {
        low = Optional.of(point);
      }
    }
    return new RoomDay(
        known,
        warm,
        damp,
        low.map(point -> OptionalDouble.of(point.airTempC())).orElse(OptionalDouble.empty()),
        low.map(AirPoint::at));
  }

  private static boolean isNight(Instant at, ZoneId zone) {
    LocalTime time = LocalTime.ofInstant(at, zone);
    return !time.isBefore(DUSK) || time.isBefore(DAWN);
  }
}
