package coatwright.web;

import io.javalin.http.sse.SseClient;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The open event streams. One event goes to all; nobody waits for a slow listener: each has its own
 * queue, and one that lets it run full is dropped (its browser comes back by itself). Safe for many
 * threads.
 */
final class Events implements AutoCloseable {
  /** Listeners at once; a shop has a wall screen and a few phones. */
  static final int MOST_LISTENERS = 64;

  private static final int QUEUE = 256;
  private static final Logger LOG = LoggerFactory.getLogger(Events.class);

  private final Set<Listener> listeners = ConcurrentHashMap.newKeySet();
  private final ExecutorService senders = Executors.newCachedThreadPool(named("web-sender"));
  private final ScheduledExecutorService pulse =
      Executors.newSingleThreadScheduledExecutor(named("web-pulse"));
  private final Duration heartbeat;
  private volatile boolean closed;

  Events(Duration heartbeat) {
    this.heartbeat = heartbeat;
  }

  /** Starts the heartbeat: a comment that tells both ends the line still stands. */
  void start() {
    long everyMs = heartbeat.toMillis();
    Future<?> unused =
        pulse.scheduleAtFixedRate(
            () -> listeners.forEach(listener -> listener.offer(Message.heartbeat())),
            everyMs,
            everyMs,
            TimeUnit.MILLISECONDS);
  }

  /** Whether one more may listen. */
  boolean hasRoom() {
    return !closed && listeners.size() < MOST_LISTENERS;
  }

  /** How many listen. */
  int listening() {
    return listeners.size();
  }

  /** Takes a new stream and keeps it open. */
  void take(SseClient client) {
    Listener listener = new Listener(client);
    client.keepAlive();
    client.onClose(() -> listeners.remove(listener));
    listeners.add(listener);
    listener.offer(Message.heartbeat());
    if (closed) {
      listener.drop();
    }
  }

  /** Sends an event to all; {@code json} is its data on one line. */
  void send(String event, String json) {
    if (!closed) {
      Message message = new Message(event, json);
      listeners.forEach(listener -> listener.offer(message));
    }
  }

  /** Ends every stream; comes before the server stops, so that nothing writes to a dead one. */
  @Override
  public void close() {
    closed = true;
    pulse.shutdownNow();
    listeners.forEach(Listener::drop);
    senders.shutdownNow();
  }

  private static ThreadFactory named(String name) {
    return task -> {
      Thread thread = new Thread(task, name);
      thread.setDaemon(true);
      return thread;
    };
  }

  private record Message(String event, String json) {
    static Message heartbeat() {
      return new Message("", "");
    }

    boolean isHeartbeat() {
      return event.isEmpty();
    }
  }

  /** One open stream. At most one sender works for it at a time, so events keep their order. */
  private final class Listener {
    private final SseClient client;
    private final Deque<Message> waiting = new ArrayDeque<>();
    private boolean sending;

    Listener(SseClient client) {
      this.client = client;
    }

    void offer(Message message) {
      synchronized (waiting) {
        if (waiting.size() < QUEUE) {
          waiting.addLast(message);
          if (sending) {
            return;
          }
          sending = true;
        } else {
          LOG.info("a page that no longer takes its events was dropped; it reconnects by itself");
          waiting.clear();
          drop();
          return;
        }
      }
      try {
        senders.execute(this::sendAll);
      } catch (RejectedExecutionException stopping) {
        drop();
      }
    }

    private void sendAll() {
      while (true) {
        Message message;
        synchronized (waiting) {
          message = waiting.pollFirst();
          if (message == null) {
            sending = false;
            return;
          }
        }
        if (client.terminated() || !sent(message)) {
          drop();
          return;
        }
      }
    }

    /** A client's line can fail in any way while it is torn down; whatever it is, it is gone. */
    private boolean sent(Message message) {
      try {
        if (message.isHeartbeat()) {
          client.sendComment("still here");
        } else {
          client.sendEvent(message.event(), message.json());
        }
        return !client.terminated();
      } catch (RuntimeException | LinkageError gone) {
        LOG.debug("an event stream ended while being written to", gone);
        return false;
      }
    }

    private void drop() {
      listeners.remove(this);
      try {
        client.close();
      } catch (RuntimeException alreadyGone) {
        LOG.debug("an event stream was already closed", alreadyGone);
      }
    }
  }
}
