package coatwright.climate;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One believed reading of one sensor: what passed the screen, calibrated.
 *
 * @param source the mapping's own short name
 * @param sensor identity within the source (equal to the source where it carries one sensor)
 * @param room the shop room it stands in; empty only for {@link Role#OUTSIDE}
 * @param part the part a piece probe is fixed to, as {@code piece/part}
 * @param at when it was measured (arrival unless the payload's own time is trusted)
 * @param temperatureC air temperature, °C
 * @param rhPct relative humidity over liquid water, per cent
 * @param surfaceTemperatureC temperature of a board or surface, °C
 * @param temperatureErrorK standard uncertainty of the temperature, K
 * @param rhErrorPct standard uncertainty of the humidity, points of RH
 * @param flags words such as {@code clipped} or {@code fast}; empty when nothing was odd
 * @param sent the numbers as the sensor sent them, where a correction or a clipping changed any
 */
public record Reading(
    String source,
    String sensor,
    Role role,
    Optional<String> room,
    Optional<String> part,
    Instant at,
    OptionalDouble temperatureC,
    OptionalDouble rhPct,
    OptionalDouble surfaceTemperatureC,
    double temperatureErrorK,
    double rhErrorPct,
    List<String> flags,
    Optional<Sent> sent) {
  /**
   * What was changed, as it was sent; empty for what stands as it came.
   *
   * @param temperatureC °C
   * @param rhPct per cent
   * @param surfaceTemperatureC °C
   */
  public record Sent(
      OptionalDouble temperatureC, OptionalDouble rhPct, OptionalDouble surfaceTemperatureC) {}

  /** A reading that stands as it was sent. */
  public Reading(
      String source,
      String sensor,
      Role role,
      Optional<String> room,
      Optional<String> part,
      Instant at,
      OptionalDouble temperatureC,
      OptionalDouble rhPct,
      OptionalDouble surfaceTemperatureC,
      double temperatureErrorK,
      double rhErrorPct,
      List<String> flags) {
    this(
        source,
        sensor,
        role,
        room,
        part,
        at,
        temperatureC,
        rhPct,
        surfaceTemperatureC,
        temperatureErrorK,
        rhErrorPct,
        flags,
        Optional.empty());
  }

  public Reading {
    flags = List.copyOf(flags);
  }

  /** Why it is in doubt though the screen let it pass, if it is. */
  public Optional<Mistrust> mistrust() {
    return Mistrust.among(flags);
  }
}
