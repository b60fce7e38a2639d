package coatwright.soak;

import coatwright.sensors.serial.Socat;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Locale;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** Two sensors that speak twice a second, each number only once. */
final class Voices implements AutoCloseable {
  private static final long EVERY_MS = 500;

  private final URI broker;
  private final Socat line;
  private final Ledger ledger;
  private final ScheduledExecutorService turns = Executors.newScheduledThreadPool(2);
  private MqttClient client;
  private long spoken;
  private long printed;

  Voices(URI broker, Socat line, Ledger ledger) {
    this.broker = broker;
    this.line = line;
    this.ledger = ledger;
  }

  void start() {
    turns.scheduleAtFixedRate(this::speak, EVERY_MS, EVERY_MS, TimeUnit.MILLISECONDS);
    turns.scheduleAtFixedRate(this::print, EVERY_MS, EVERY_MS, TimeUnit.MILLISECONDS);
  }

  /** Air that warms and cools a little; the last digits number the message. */
  private static long microC(long number) {
    double slowC = 20 + 2 * Math.sin(number / 500.0);
    return Math.round(slowC * 100) * 10_000 + number % 10_000;
  }

  private static String humidity(long number) {
    return String.format(Locale.ROOT, "%.2f", 50 + 3 * Math.sin(number / 300.0));
  }

  private static String degrees(long microC) {
    return String.format(Locale.ROOT, "%d.%06d", microC / 1_000_000, microC % 1_000_000);
  }

  private void speak() {
    long number = spoken++;
    Instant at = Instant.now();
    String text =
        "{\"at\":\"%s\",\"t\":%s,\"h\":%s}"
            .formatted(at, degrees(microC(number)), humidity(number));
    try {
      if (client == null) {
        client = connected();
      }
      client.publish("soak/wall", text.getBytes(StandardCharsets.UTF_8), 1, false);
      ledger.acknowledged(microC(number), at);
    } catch (MqttException away) {
      forget();
    }
  }

  private MqttClient connected() throws MqttException {
    MqttClient made = new MqttClient(broker.toString(), "soak", new MemoryPersistence());
    made.setTimeToWait(2_000);
    MqttConnectOptions options = new MqttConnectOptions();
    options.setCleanSession(true);
    options.setConnectionTimeout(2);
    made.connect(options);
    return made;
  }

  private void forget() {
    try {
      if (client != null) {
        client.disconnectForcibly(0, 100, false);
        client.close(true);
      }
    } catch (MqttException gone) {
      // It is gone already, which is what was wanted.
    }
    client = null;
  }

  private void print() {
    long number = printed++;
    Instant at = Instant.now();
    try {
      line.print(degrees(microC(number)) + " " + humidity(number) + "\r\n");
      ledger.printed(microC(number), at);
    } catch (UncheckedIOException pulledOut) {
      // Nobody hears it, so it is not in the ledger.
    }
  }

  @Override
  public void close() throws InterruptedException {
    turns.shutdown();
    turns.awaitTermination(10, TimeUnit.SECONDS);
    forget();
  }
}
