package coatwright.sensors.simulated;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Function;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A sensor that does not exist: publishes, over a real broker, whatever text its function gives for
 * the moment. When the broker is away it tries again at its next turn.
 */
public final class SimulatedSensor implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(SimulatedSensor.class);
  private static final int QOS = 1;
  private static final int CONNECT_S = 5;
  private static final long WAIT_MS = 5_000;

  private final String name;
  private final URI broker;
  private final String topic;
  private final Duration every;
  private final Function<Instant, String> payload;
  private final Clock clock;
  private final AtomicLong sent = new AtomicLong();
  private final ScheduledExecutorService worker;
  private final MqttClient client;

  /**
   * @param payload the text sent at a moment; an empty one sends nothing
   * @throws InProcessBroker.CannotStart when the broker's address makes no sense
   */
  public SimulatedSensor(
      String name,
      URI broker,
      String topic,
      Duration every,
      Function<Instant, String> payload,
      Clock clock) {
    this.name = name;
    this.broker = broker;
    this.topic = topic;
    this.every = every;
    this.payload = payload;
    this.clock = clock;
    this.worker =
        Executors.newSingleThreadScheduledExecutor(
            task -> {
              Thread thread = new Thread(task, "simulated-" + name);
              thread.setDaemon(true);
              return thread;
            });
    try {
      this.client = new MqttClient(broker.toString(), "sim-" + name, new MemoryPersistence());
      this.client.setTimeToWait(WAIT_MS);
    } catch (MqttException e) {
      throw new InProcessBroker.CannotStart("sensor " + name + " cannot use " + broker, e);
    }
  }

  /** Begins to publish, the first time at once. */
  public void start() {
    Future<?> unused =
        worker.scheduleAtFixedRate(this::publish, 0, every.toMillis(), TimeUnit.MILLISECONDS);
  }

  /** How many payloads the broker has taken. */
  public long sent() {
    return sent.get();
  }

  private void publish() {
    try {
      if (!client.isConnected()) {
        MqttConnectOptions options = new MqttConnectOptions();
        options.setCleanSession(true);
        options.setConnectionTimeout(CONNECT_S);
        client.connect(options);
      }
      String text = payload.apply(clock.instant());
      if (!text.isEmpty()) {
        client.publish(topic, text.getBytes(StandardCharsets.UTF_8), QOS, false);
        sent.incrementAndGet();
      }
    } catch (MqttException | RuntimeException e) {
      LOG.info("simulated sensor {} could not publish to {}: {}", name, broker, e.getMessage());
    }
  }

  @Override
  public void close() {
    worker.shutdown();
    try {
      if (!worker.awaitTermination(WAIT_MS, TimeUnit.MILLISECONDS)) {
        worker.shutdownNow();
      }
      if (client.isConnected()) {
        client.disconnectForcibly(0, WAIT_MS);
      }
      client.close(true);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (MqttException e) {
      LOG.debug("leaving {}: {}", broker, e.getMessage());
    }
  }
}
