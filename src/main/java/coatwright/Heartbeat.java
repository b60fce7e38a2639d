package coatwright;

import coatwright.outlook.Outlooks;
import coatwright.watch.Watch;
import java.time.Clock;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Has the shop judged anew: within a second or two of readings and entries, and once a minute
 * because films dry by themselves. One thread, so that no two looks overlap.
 */
final class Heartbeat implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Heartbeat.class);
  private static final long BEAT_MS = 1_000;
  private static final long BETWEEN_LOOKS_NS = TimeUnit.SECONDS.toNanos(5);
  private static final long BETWEEN_PREDICTIONS_NS = TimeUnit.SECONDS.toNanos(60);
  private static final long TO_STOP_S = 5;

  private final Outlooks outlooks;
  private final Watch watch;
  private final Clock clock;
  private final AtomicBoolean heard = new AtomicBoolean(true);
  private final AtomicReference<String> asked = new AtomicReference<>("the start");
  private final ScheduledExecutorService thread =
      Executors.newSingleThreadScheduledExecutor(task -> new Thread(task, "heartbeat"));
  private @Nullable Future<?> beating;
  private long lookedNs = System.nanoTime() - BETWEEN_LOOKS_NS;
  private long predictedNs = System.nanoTime();

  Heartbeat(Outlooks outlooks, Watch watch, Clock clock) {
    this.outlooks = outlooks;
    this.watch = watch;
    this.clock = clock;
  }

  void start() {
    beating = thread.scheduleWithFixedDelay(this::beat, 0, BEAT_MS, TimeUnit.MILLISECONDS);
  }

  /** A reading came: judge soon. */
  void reading() {
    heard.set(true);
  }

  /** Something was written down: predict and judge now. */
  void entry(String id) {
    asked.set("entry " + id);
    heard.set(true);
  }

  private void beat() {
    try {
      long nowNs = System.nanoTime();
      String reason = asked.getAndSet("");
      if (reason.isEmpty() && nowNs - predictedNs >= BETWEEN_PREDICTIONS_NS) {
        reason = "the air since";
      }
      if (!reason.isEmpty()) {
        predictedNs = nowNs;
        outlooks.refresh(clock.instant(), reason);
      }
      boolean due = nowNs - lookedNs >= BETWEEN_LOOKS_NS;
      if (!reason.isEmpty() || (due && heard.getAndSet(false))) {
        lookedNs = nowNs;
        watch.judge(clock.instant());
      }
    } catch (RuntimeException trouble) {
      // The next beat tries again; a daemon that stops judging would be worse.
      LOG.error("judging the shop failed; trying again", trouble);
    }
  }

  @Override
  public void close() {
    if (beating != null) {
      beating.cancel(false);
    }
    thread.shutdown();
    try {
      if (!thread.awaitTermination(TO_STOP_S, TimeUnit.SECONDS)) {
        thread.shutdownNow();
      }
    } catch (InterruptedException stopped) {
      thread.shutdownNow();
      Thread.currentThread().interrupt();
    }
  }
}
