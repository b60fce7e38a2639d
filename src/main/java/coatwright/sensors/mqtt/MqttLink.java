package coatwright.sensors.mqtt;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A connection to one broker that keeps itself up.
 *
 * <p>The client library retries no first connect and subscribes to nothing after a reconnect, so
 * both are done here, on a thread of this link's own: a fresh client for every attempt, back-off
 * from 1 s to 30 s, subscriptions after every connect. "Connected" is never taken as proof of life;
 * only messages are, and a link that hears nothing for long is opened anew. What a listener throws
 * is caught, because the library would drop the connection for it.
 */
public final class MqttLink implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(MqttLink.class);
  private static final int CONNECT_S = 10;
  private static final long WAIT_MS = 10_000;
  private static final long LOOK_MS = 1_000;
  private static final long LOOK_AGAIN_NANOS = 2_000_000;
  private static final int QOS = 1;

  /** The longest message that is looked at, bytes. */
  static final int MOST_BYTES = 64 * 1024;

  private final Broker broker;
  private final List<String> filters;
  private final MqttListener listener;
  private final LinkManner manner;
  private final ScheduledExecutorService worker;
  private final LossCount losses = new LossCount();
  private final AtomicLong connects = new AtomicLong();
  private final AtomicLong thrown = new AtomicLong();
  private final AtomicLong heardNanos = new AtomicLong();
  private @Nullable MqttAsyncClient client;
  private Duration delay;
  private volatile boolean connected;
  private volatile boolean closed;
  private volatile @Nullable String trouble;

  /**
   * A link with a clean session.
   *
   * @param filters topic filters to be kept subscribed
   */
  public MqttLink(Broker broker, List<String> filters, MqttListener listener) {
    this(broker, filters, listener, LinkManner.CLEAN);
  }

  /**
   * @param filters topic filters to be kept subscribed
   */
  public MqttLink(Broker broker, List<String> filters, MqttListener listener, LinkManner manner) {
    this.broker = broker;
    this.filters = filters.stream().distinct().toList();
    this.listener = listener;
    this.manner = manner;
    this.delay = manner.firstRetry();
    this.worker =
        Executors.newSingleThreadScheduledExecutor(
            task -> {
              Thread thread = new Thread(task, "mqtt-" + broker.name());
              thread.setDaemon(true);
              return thread;
            });
  }

  /** Begins to connect; returns at once and needs no broker to be there yet. */
  public void start() {
    worker.execute(this::connect);
    Future<?> unused =
        worker.scheduleWithFixedDelay(this::look, LOOK_MS, LOOK_MS, TimeUnit.MILLISECONDS);
  }

  /** True after a connect whose subscriptions all succeeded. */
  public boolean connected() {
    return connected;
  }

  /** How often it has connected and subscribed. */
  public long connects() {
    return connects.get();
  }

  /** How often a listener threw. */
  public long thrown() {
    return thrown.get();
  }

  /** What is wrong and what to do, in one sentence. */
  public Optional<String> trouble() {
    return Optional.ofNullable(trouble);
  }

  /** The broker it speaks to. */
  public Broker broker() {
    return broker;
  }

  private void connect() {
    if (closed) {
      return;
    }
    drop();
    boolean takenIn = false;
    try {
      listener.connecting();
      MqttAsyncClient fresh =
          new MqttAsyncClient(broker.url().toString(), broker.clientId(), new MemoryPersistence());
      client = fresh;
      fresh.setManualAcks(manner.kept());
      fresh.setCallback(new Ear(fresh));
      completed(fresh.connect(options()));
      takenIn = true;
      for (String filter : filters) {
        completed(fresh.subscribe(filter, QOS));
      }
      connects.incrementAndGet();
      heardNanos.set(System.nanoTime());
      connected = true;
      if (!losses.rival(System.nanoTime())) {
        trouble = null;
        delay = manner.firstRetry();
      }
      LOG.info("connected to broker {} at {}", broker.name(), broker.url());
    } catch (MqttException | RuntimeException e) {
      connected = false;
      failed(e, takenIn);
      later();
    }
    tell();
  }

  /**
   * The library takes every early wake-up of a waiting thread, which Java allows and a clock that
   * is set can bring about, for the time being up; so it is only asked once it has an answer.
   */
  private static void completed(IMqttToken token) throws MqttException {
    long began = System.nanoTime();
    while (!token.isComplete()
        && System.nanoTime() - began < TimeUnit.MILLISECONDS.toNanos(WAIT_MS)) {
      LockSupport.parkNanos(LOOK_AGAIN_NANOS);
    }
    token.waitForCompletion(1);
  }

  private void failed(Exception e, boolean takenIn) {
    if (takenIn && !(e instanceof MqttException refused && isAnswer(refused))) {
      losses.closedAtOnce(System.nanoTime());
    } else {
      losses.unreachable();
    }
    trouble = losses.rival(System.nanoTime()) ? rival() : BrokerTrouble.sentence(broker, e);
    LOG.info("{}; next try in {} s", trouble, delay.toSeconds());
  }

  private static boolean isAnswer(MqttException e) {
    return e.getReasonCode() == MqttException.REASON_CODE_SUBSCRIBE_FAILED
        || e.getReasonCode() == MqttException.REASON_CODE_CLIENT_TIMEOUT;
  }

  private String rival() {
    delay = manner.longestRetry();
    return ("broker %s closes the connection again and again: another client uses the id \"%s\";"
            + " give each its own client-id")
        .formatted(broker.name(), broker.clientId());
  }

  private MqttConnectOptions options() {
    MqttConnectOptions options = new MqttConnectOptions();
    options.setCleanSession(!manner.kept());
    options.setAutomaticReconnect(false);
    options.setKeepAliveInterval((int) manner.keepAlive().toSeconds());
    options.setConnectionTimeout(CONNECT_S);
    BrokerSecret.into(options, broker);
    return options;
  }

  private void later() {
    Duration wait = delay;
    Duration twice = delay.multipliedBy(2);
    delay = twice.compareTo(manner.longestRetry()) > 0 ? manner.longestRetry() : twice;
    try {
      Future<?> unused = worker.schedule(this::connect, wait.toMillis(), TimeUnit.MILLISECONDS);
    } catch (RejectedExecutionException e) {
      LOG.debug("link to {} is closing", broker.name());
    }
  }

  private void lost(MqttAsyncClient which, Throwable cause) {
    if (closed || which != client) {
      return;
    }
    // A loss while it is still connecting is told by the connect itself.
    if (!connected) {
      return;
    }
    connected = false;
    long now = System.nanoTime();
    losses.lost(cause, now);
    trouble = losses.rival(now) ? rival() : BrokerTrouble.sentence(broker, cause);
    LOG.info("{}", trouble);
    later();
    tell();
  }

  /** Each second: is it over with the rival, and does anything come at all? */
  private void look() {
    if (closed || !connected) {
      return;
    }
    long now = System.nanoTime();
    if (trouble != null && !losses.rival(now)) {
      trouble = null;
      delay = manner.firstRetry();
      tell();
    }
    Duration quiet = Duration.ofNanos(now - heardNanos.get());
    if (quiet.compareTo(manner.silence()) > 0) {
      LOG.info(
          "broker {}: connected and nothing heard for {} s; connecting anew",
          broker.name(),
          quiet.toSeconds());
      connected = false;
      connect();
    }
  }

  private void drop() {
    MqttAsyncClient old = client;
    client = null;
    if (old == null) {
      return;
    }
    try {
      old.disconnectForcibly(0, WAIT_MS / 10, false);
    } catch (MqttException e) {
      LOG.debug("closing a lost connection to {}: {}", broker.name(), e.getMessage());
    }
    try {
      old.close(true);
    } catch (MqttException e) {
      LOG.debug("closing a lost client of {}: {}", broker.name(), e.getMessage());
    }
  }

  private void tell() {
    try {
      listener.changed();
    } catch (RuntimeException e) {
      thrown.incrementAndGet();
      LOG.error("a listener of broker {} failed", broker.name(), e);
    }
  }

  /** Disconnects and stops trying. */
  @Override
  public void close() {
    closed = true;
    connected = false;
    worker.execute(this::leave);
    worker.shutdown();
    try {
      if (!worker.awaitTermination(WAIT_MS, TimeUnit.MILLISECONDS)) {
        worker.shutdownNow();
      }
    } catch (InterruptedException e) {
      worker.shutdownNow();
      Thread.currentThread().interrupt();
    }
  }

  private void leave() {
    MqttAsyncClient last = client;
    if (last != null && last.isConnected()) {
      try {
        last.disconnect(0).waitForCompletion(WAIT_MS / 10);
      } catch (MqttException e) {
        LOG.debug("leaving {}: {}", broker.name(), e.getMessage());
      }
    }
    drop();
  }

  /** Hears the library's callbacks; hands on and never throws. */
  private final class Ear implements MqttCallback {
    private final MqttAsyncClient which;

    Ear(MqttAsyncClient which) {
      this.which = which;
    }

    @Override
    public void connectionLost(Throwable cause) {
      try {
        worker.execute(() -> lost(which, cause));
      } catch (RejectedExecutionException e) {
        LOG.debug("link to {} is closing", broker.name());
      }
    }

    @Override
    public void messageArrived(String topic, MqttMessage message) {
      heardNanos.set(System.nanoTime());
      Runnable stored = () -> acknowledge(message.getId(), message.getQos());
      try {
        byte[] bytes = message.getPayload();
        if (bytes.length > MOST_BYTES) {
          listener.tooLong(topic, bytes.length);
          stored.run();
        } else {
          listener.message(topic, bytes, message.isRetained(), stored);
        }
      } catch (Throwable e) {
        // Whatever it is, letting it out of here would drop the connection; and a message that is
        // never acknowledged would come again for ever.
        thrown.incrementAndGet();
        LOG.error("a message on {} could not be handed on", topic, e);
        stored.run();
      }
    }

    private void acknowledge(int id, int qos) {
      if (!manner.kept() || qos == 0) {
        return;
      }
      try {
        which.messageArrivedComplete(id, qos);
      } catch (MqttException | RuntimeException e) {
        // The link is down: the broker sends it once more, and it is known for a duplicate.
        LOG.debug("message {} of {} not acknowledged: {}", id, broker.name(), e.getMessage());
      }
    }

    @Override
    public void deliveryComplete(IMqttDeliveryToken token) {
      // This link publishes nothing.
    }
  }
}
