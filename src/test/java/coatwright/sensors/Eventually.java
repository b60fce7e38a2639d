package coatwright.sensors;

import java.time.Duration;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/** Waits for what other threads bring about, no longer than it takes. */
public final class Eventually {
  private static final long LOOK_AGAIN_NANOS = 5_000_000;

  private Eventually() {}

  /** Returns as soon as the condition holds. */
  public static void within(Duration limit, String what, BooleanSupplier condition) {
    long deadline = System.nanoTime() + limit.toNanos();
    while (!condition.getAsBoolean()) {
      if (System.nanoTime() - deadline > 0) {
        throw new AssertionError("not within " + limit + ": " + what);
      }
      LockSupport.parkNanos(LOOK_AGAIN_NANOS);
    }
  }
}
