package coatwright.sensors.mqtt;

import java.time.Duration;

/**
 * How a link keeps its session and itself.
 *
 * @param kept the broker keeps the session while we are away, and each message until it is
 *     acknowledged; for payloads that carry a time of their own
 * @param keepAlive how often the broker is asked whether it is there, whole seconds
 * @param firstRetry the first wait before connecting again; it doubles up to {@code longestRetry}
 * @param silence connected and nothing heard for so long: the link is closed and opened anew
 */
public record LinkManner(
    boolean kept,
    Duration keepAlive,
    Duration firstRetry,
    Duration longestRetry,
    Duration silence) {
  private static final Duration LEAST_SILENCE = Duration.ofMinutes(5);

  /** Live values only: what is sent while we are away is a gap. */
  public static final LinkManner CLEAN =
      new LinkManner(
          false,
          Duration.ofSeconds(20),
          Duration.ofSeconds(1),
          Duration.ofSeconds(30),
          Duration.ofHours(1));

  public LinkManner {
    if (keepAlive.toSeconds() < 1 || firstRetry.isNegative() || firstRetry.isZero()) {
      throw new IllegalArgumentException(
          "keep-alive %s and first retry %s are above 0".formatted(keepAlive, firstRetry));
    }
  }

  /** The same over a session that the broker keeps. */
  public LinkManner keptByTheBroker() {
    return new LinkManner(true, keepAlive, firstRetry, longestRetry, silence);
  }

  /** The same, opened anew after that silence, or five minutes if that is shorter. */
  public LinkManner openedAnewAfter(Duration quiet) {
    Duration longer = quiet.compareTo(LEAST_SILENCE) < 0 ? LEAST_SILENCE : quiet;
    return new LinkManner(kept, keepAlive, firstRetry, longestRetry, longer);
  }
}
