package coatwright.sensors.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.EOFException;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class LossCountTest {
  private static final long SECOND = TimeUnit.SECONDS.toNanos(1);

  private final LossCount losses = new LossCount();

  @Test
  void takesFourClosuresInAMinuteForARival() {
    for (int i = 0; i < 3; i++) {
      losses.lost(new IllegalStateException(new EOFException()), i * SECOND);
      assertThat(losses.rival(i * SECOND)).isFalse();
    }
    losses.lost(new SocketException("Connection reset"), 3 * SECOND);

    assertThat(losses.rival(3 * SECOND)).isTrue();
    assertThat(losses.rival(62 * SECOND)).isFalse();
  }

  @Test
  void doesNotBlameARivalForABadNetwork() {
    for (int i = 0; i < 9; i++) {
      losses.lost(new SocketTimeoutException(), i * SECOND);
      losses.lost(new SocketException("Network is unreachable"), i * SECOND);
    }
    assertThat(losses.rival(9 * SECOND)).isFalse();
  }

  @Test
  void doesNotBlameARivalForABrokerThatIsStartedAnewAgainAndAgain() {
    for (int i = 0; i < 9; i++) {
      losses.lost(new EOFException(), i * SECOND);
      losses.unreachable();
    }
    assertThat(losses.rival(9 * SECOND)).isFalse();
  }
}
