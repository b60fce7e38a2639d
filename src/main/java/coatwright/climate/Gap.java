package coatwright.climate;

import java.time.Duration;
import java.time.Instant;

/** A stretch without believed readings. */
public record Gap(Instant from, Instant to) {
  /** How long nothing was known. */
  public Duration length() {
    return Duration.between(from, to);
  }
}
