package coatwright.sensors.mqtt;

import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;

/** A program that only keeps a link, and says what becomes of it, until its input ends. */
public final class LonelyLink {
  private LonelyLink() {}

  public static void main(String[] args) throws IOException {
    MqttListener listener =
        new MqttListener() {
          @Override
          public void message(String topic, byte[] bytes, boolean retained) {
            say("heard " + new String(bytes, StandardCharsets.UTF_8));
          }

          @Override
          public void tooLong(String topic, int bytes) {}

          @Override
          public void changed() {}
        };
    LinkManner manner =
        new LinkManner(
            false,
            Duration.ofSeconds(2),
            Duration.ofMillis(300),
            Duration.ofSeconds(1),
            Duration.ofHours(1));
    MqttLink link =
        new MqttLink(
            Broker.open("far", URI.create(args[0]), "lonely"), List.of("a/b"), listener, manner);
    Thread watcher = new Thread(() -> watch(link));
    watcher.setDaemon(true);
    watcher.start();
    link.start();
    while (System.in.read() >= 0) {
      // Until whoever started this closes its end.
    }
    link.close();
  }

  private static void watch(MqttLink link) {
    boolean before = false;
    while (true) {
      boolean up = link.connected();
      if (up != before) {
        say(up ? "link up" : "link down");
        before = up;
      }
      java.util.concurrent.locks.LockSupport.parkNanos(5_000_000);
    }
  }

  private static synchronized void say(String what) {
    System.out.print(what + "\n");
    System.out.flush();
  }
}
