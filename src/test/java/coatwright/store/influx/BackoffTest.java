package coatwright.store.influx;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class BackoffTest {
  private static final Duration FIRST = Duration.ofSeconds(1);
  private static final Duration LONGEST = Duration.ofSeconds(60);

  @Property(seed = "20261125")
  void doublesFromASecondToAMinuteAndTakesHalfToAllOfIt(
      @ForAll long seed, @ForAll @IntRange(min = 0, max = 200) int failuresBefore) {
    Backoff backoff = new Backoff(FIRST, LONGEST, new Random(seed));
    for (int i = 0; i < failuresBefore; i++) {
      backoff.afterFailure(Optional.empty());
    }
    long wholeMs = failuresBefore >= 6 ? 60_000 : 1_000L << failuresBefore;

    assertThat(backoff.afterFailure(Optional.empty()).toMillis()).isBetween(wholeMs / 2, wholeMs);
  }

  @Test
  void beginsAnewAfterASuccess() {
    Backoff backoff = new Backoff(FIRST, LONGEST, new Random(1));
    for (int i = 0; i < 10; i++) {
      backoff.afterFailure(Optional.empty());
    }
    backoff.succeeded();

    assertThat(backoff.afterFailure(Optional.empty())).isLessThanOrEqualTo(FIRST);
  }

  @Test
  void waitsAsLongAsTheServerAsksUpToItsLimit() {
    Backoff backoff = new Backoff(FIRST, LONGEST, new Random(1));

    assertThat(backoff.afterFailure(Optional.of(Duration.ofSeconds(30)))).hasSeconds(30);
    assertThat(backoff.afterFailure(Optional.of(Duration.ofDays(1)))).isEqualTo(LONGEST);
  }
}
