package coatwright.sensors;

import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Between the links' threads and the one thread that reads payloads: bounded, so that a flood costs
 * the oldest messages and not the house. Whatever a task throws is logged and the next one taken.
 */
final class Inbox implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Inbox.class);
  private static final long POLL_MS = 200;
  private static final long CLOSE_MS = 5_000;

  /**
   * @param ifDropped is run instead when there is no room for it
   */
  private record Task(Runnable work, Runnable ifDropped) {}

  private final BlockingQueue<Task> tasks;
  private final AtomicLong dropped = new AtomicLong();
  private final Thread reader = new Thread(this::run, "sensors-intake");
  private volatile boolean closed;

  Inbox(int capacity) {
    this.tasks = new ArrayBlockingQueue<>(capacity);
    reader.setDaemon(true);
  }

  void start() {
    reader.start();
  }

  /** Never waits; when full, the oldest goes. */
  void put(Runnable task) {
    put(task, () -> {});
  }

  /** The same; {@code ifDropped} tells whose loss it is. */
  void put(Runnable task, Runnable ifDropped) {
    Task next = new Task(task, ifDropped);
    while (!tasks.offer(next)) {
      Task oldest = tasks.poll();
      if (oldest != null) {
        oldest.ifDropped().run();
        if (dropped.incrementAndGet() % 1000 == 1) {
          LOG.warn("more messages than can be read: {} dropped so far", dropped.get());
        }
      }
    }
  }

  long dropped() {
    return dropped.get();
  }

  private void run() {
    while (!closed || !tasks.isEmpty()) {
      Optional<Task> next = next();
      try {
        next.ifPresent(task -> task.work().run());
      } catch (Throwable e) {
        // One payload, or one listener, must not end the reading of all others.
        LOG.error("a payload could not be dealt with", e);
      }
    }
  }

  private Optional<Task> next() {
    try {
      return Optional.ofNullable(tasks.poll(POLL_MS, TimeUnit.MILLISECONDS));
    } catch (InterruptedException e) {
      closed = true;
      return Optional.empty();
    }
  }

  /** Reads what is still waiting, then stops. */
  @Override
  public void close() {
    closed = true;
    try {
      reader.join(CLOSE_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
