package coatwright.climate;

import java.time.Duration;
import java.time.Instant;

/**
 * A stretch of time in which the machine's clock and its steady clock kept step. A new one begins
 * at each start, whenever the clock is set, and when it becomes one to be trusted.
 *
 * @param id rises with each; 0 before it is written down
 * @param boot the system's name for this run of the machine
 * @param from when it began, by the machine's clock
 * @param steady the same moment by the steady clock, since the machine was started
 * @param trusted whether dates of this stretch are to be believed
 */
public record ClockStretch(long id, String boot, Instant from, Duration steady, boolean trusted) {
  /** How far the machine's clock stands ahead of its steady clock, all through the stretch. */
  public Duration ahead() {
    return Duration.between(Instant.EPOCH, from).minus(steady);
  }

  /** The same, written down. */
  public ClockStretch numbered(long number) {
    return new ClockStretch(number, boot, from, steady, trusted);
  }
}
