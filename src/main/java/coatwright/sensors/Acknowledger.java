package coatwright.sensors;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells brokers that messages are stored, and not before they are: takes what has gathered, waits
 * until all that was read so far is durable, then acknowledges. While the disk is full nothing is
 * acknowledged, and the brokers keep what they have.
 */
final class Acknowledger implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Acknowledger.class);
  private static final long POLL_MS = 200;
  private static final long AGAIN_MS = 1_000;
  private static final long CLOSE_MS = 5_000;

  private final BlockingQueue<Runnable> waiting = new LinkedBlockingQueue<>();
  private final Runnable flush;
  private final Thread thread = new Thread(this::run, "sensors-acknowledge");
  private volatile boolean closed;

  /**
   * @param flush returns when all that was handed to the store is durable, or throws
   */
  Acknowledger(Runnable flush) {
    this.flush = flush;
    thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  /** What the acknowledgement speaks of has been handed to the store. */
  void handed(Runnable acknowledge) {
    waiting.add(acknowledge);
  }

  private void run() {
    List<Runnable> gathered = new ArrayList<>();
    try {
      while (!closed || !waiting.isEmpty()) {
        Runnable first = waiting.poll(POLL_MS, TimeUnit.MILLISECONDS);
        if (first != null) {
          gathered.add(first);
          waiting.drainTo(gathered);
          untilDurable();
          gathered.forEach(Runnable::run);
          gathered.clear();
        }
      }
    } catch (InterruptedException e) {
      LOG.debug("{} messages not acknowledged; their brokers send them again", gathered.size());
    }
  }

  private void untilDurable() throws InterruptedException {
    while (true) {
      try {
        flush.run();
        return;
      } catch (RuntimeException e) {
        if (closed) {
          throw new InterruptedException("closed before the store could write");
        }
        LOG.warn("nothing is acknowledged to the brokers while: {}", e.getMessage());
        TimeUnit.MILLISECONDS.sleep(AGAIN_MS);
      }
    }
  }

  /** Acknowledges what can still be stored. */
  @Override
  public void close() {
    closed = true;
    try {
      thread.join(CLOSE_MS);
      thread.interrupt();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
