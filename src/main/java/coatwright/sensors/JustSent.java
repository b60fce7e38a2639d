package coatwright.sensors;

import java.time.Instant;
import java.util.OptionalDouble;

/**
 * A humidity as it was sent, before limits and corrections, with the temperature beside it.
 *
 * @param sensor identity within the source
 * @param temperatureC °C
 * @param rhPct per cent
 */
public record JustSent(String sensor, Instant at, OptionalDouble temperatureC, double rhPct) {}
