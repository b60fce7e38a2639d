package coatwright.climate;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Readings for tests, named by what they say. */
public final class Readings {
  private Readings() {}

  /** A room sensor's full reading with the errors of a good chip. */
  public static Reading air(String source, String room, Instant at, double tempC, double rhPct) {
    return reading(
        source,
        Role.ROOM,
        Optional.of(room),
        at,
        OptionalDouble.of(tempC),
        OptionalDouble.of(rhPct));
  }

  static Reading temperatureOnly(String source, String room, Instant at, double tempC) {
    return reading(
        source, Role.ROOM, Optional.of(room), at, OptionalDouble.of(tempC), OptionalDouble.empty());
  }

  static Reading humidityOnly(String source, String room, Instant at, double rhPct) {
    return reading(
        source, Role.ROOM, Optional.of(room), at, OptionalDouble.empty(), OptionalDouble.of(rhPct));
  }

  static Reading outside(
      String source, Optional<String> room, Instant at, double tempC, double rhPct) {
    return reading(
        source, Role.OUTSIDE, room, at, OptionalDouble.of(tempC), OptionalDouble.of(rhPct));
  }

  /** A probe on a part of a piece. */
  public static Reading onPart(String source, String room, String part, Instant at, double tempC) {
    return new Reading(
        source,
        source,
        Role.PIECE,
        Optional.of(room),
        Optional.of(part),
        at,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.of(tempC),
        0.5,
        0,
        List.of());
  }

  private static Reading reading(
      String source,
      Role role,
      Optional<String> room,
      Instant at,
      OptionalDouble tempC,
      OptionalDouble rhPct) {
    return new Reading(
        source,
        source,
        role,
        room,
        Optional.empty(),
        at,
        tempC,
        rhPct,
        OptionalDouble.empty(),
        0.3,
        2,
        List.of());
  }
}
