package coatwright.store.influx;

import java.time.Duration;
import java.util.Optional;
import java.util.random.RandomGenerator;

/**
 * How long to leave a server alone that does not take anything: twice as long after every failure,
 * up to a limit, and a random share of it, so that many mirrors do not come back at once.
 */
final class Backoff {
  private final Duration first;
  private final Duration longest;
  private final RandomGenerator random;
  private int failures;

  Backoff(Duration first, Duration longest, RandomGenerator random) {
    this.first = first;
    this.longest = longest;
    this.random = random;
  }

  void succeeded() {
    failures = 0;
  }

  /**
   * The pause after one more failure, from half of the doubled time to all of it.
   *
   * @param asked what the server asks for; it is given that, up to the limit
   */
  Duration afterFailure(Optional<Duration> asked) {
    // Beyond thirty doublings of a millisecond any limit is reached.
    long doubledMs = first.toMillis() << Math.min(failures, 30);
    failures++;
    long wholeMs = Math.min(longest.toMillis(), doubledMs);
    long ownMs = wholeMs / 2 + (long) (random.nextDouble() * (wholeMs - wholeMs / 2.0));
    long askedMs = asked.map(Duration::toMillis).orElse(0L);
    return Duration.ofMillis(Math.max(ownMs, Math.min(askedMs, longest.toMillis())));
  }
}
