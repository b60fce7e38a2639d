package coatwright.sensors.mqtt;

import java.io.EOFException;
import java.net.SocketException;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import org.jspecify.annotations.Nullable;

/**
 * Tells a rival with our own client id from a bad network. MQTT 3.1.1 gives the client that is
 * thrown out no reason; what shows is that the broker, which is there and takes us in, closes the
 * connection again and again. Belongs to one thread.
 */
final class LossCount {
  private static final int MANY = 3;
  private static final Duration WITHIN = Duration.ofSeconds(60);
  private static final int DEEPEST = 8;

  private final Deque<Long> nanos = new ArrayDeque<>();

  /** A connection that had succeeded was lost. */
  void lost(@Nullable Throwable cause, long nowNanos) {
    if (closedByTheOther(cause)) {
      nanos.addLast(nowNanos);
    }
  }

  /** The broker took us in and closed before we had subscribed. */
  void closedAtOnce(long nowNanos) {
    nanos.addLast(nowNanos);
  }

  /** The broker could not be reached: then it is the network, or the broker itself. */
  void unreachable() {
    nanos.clear();
  }

  /** Closed more than three times within the last minute. */
  boolean rival(long nowNanos) {
    while (!nanos.isEmpty() && nowNanos - nanos.getFirst() > WITHIN.toNanos()) {
      nanos.removeFirst();
    }
    return nanos.size() > MANY;
  }

  private static boolean closedByTheOther(@Nullable Throwable cause) {
    Throwable at = cause;
    for (int depth = 0; at != null && depth < DEEPEST; depth++) {
      String message = String.valueOf(at.getMessage());
      boolean reset =
          at instanceof SocketException
              && (message.startsWith("Connection reset") || message.startsWith("Broken pipe"));
      if (at instanceof EOFException || reset) {
        return true;
      }
      at = at.getCause();
    }
    return false;
  }
}
