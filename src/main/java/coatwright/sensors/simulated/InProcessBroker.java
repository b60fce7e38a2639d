package coatwright.sensors.simulated;

import io.moquette.broker.Server;
import io.moquette.broker.config.IConfig;
import io.moquette.broker.config.MemoryConfig;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.util.OptionalInt;
import java.util.Properties;

/**
 * A real MQTT broker inside this process, for the demo or for a shop without one. Listens on the
 * loopback address only, so that it may let anyone in; keeps nothing on disk; sends nothing home.
 */
public final class InProcessBroker implements AutoCloseable {
  private static final int PORTS_TRIED = 50;
  private static final int MOST_BYTES = 64 * 1024;

  private final Server server;
  private final int port;

  private InProcessBroker(Server server, int port) {
    this.server = server;
    this.port = port;
  }

  /**
   * Starts a broker.
   *
   * @param wantedPort the port, or the next free one if it is taken; 0 for any free one
   * @throws CannotStart when none of the next ports is free, or the broker fails
   */
  public static InProcessBroker start(int wantedPort) {
    int port = freePort(wantedPort);
    Server server = new Server();
    try {
      server.startServer(new MemoryConfig(settings(port)));
      return new InProcessBroker(server, port);
    } catch (IOException | RuntimeException e) {
      throw new CannotStart("the in-process broker did not start on port " + port, e);
    }
  }

  /** What it is started with; its library would otherwise report home and store to disk. */
  static Properties settings(int port) {
    Properties settings = new Properties();
    settings.setProperty(IConfig.ENABLE_TELEMETRY_NAME, "false");
    settings.setProperty(IConfig.HOST_PROPERTY_NAME, loopback().getHostAddress());
    settings.setProperty(IConfig.PORT_PROPERTY_NAME, Integer.toString(port));
    settings.setProperty(IConfig.ALLOW_ANONYMOUS_PROPERTY_NAME, "true");
    settings.setProperty(IConfig.PERSISTENCE_ENABLED_PROPERTY_NAME, "false");
    settings.setProperty(IConfig.NETTY_MAX_BYTES_PROPERTY_NAME, Integer.toString(MOST_BYTES));
    return settings;
  }

  private static InetAddress loopback() {
    try {
      return InetAddress.getByAddress(new byte[] {127, 0, 0, 1});
    } catch (IOException e) {
      throw new CannotStart("this machine has no loopback address", e);
    }
  }

  private static int freePort(int wanted) {
    for (int port = wanted; port < wanted + PORTS_TRIED; port++) {
      OptionalInt free = free(port);
      if (free.isPresent()) {
        return free.getAsInt();
      }
    }
    throw new CannotStart(
        "ports %d to %d are all taken; stop the other program or choose another port"
            .formatted(wanted, wanted + PORTS_TRIED - 1),
        null);
  }

  /** The port if it is free; asked for port 0, whichever the system gives. */
  private static OptionalInt free(int port) {
    try (ServerSocket probe = new ServerSocket()) {
      probe.setReuseAddress(true);
      probe.bind(new InetSocketAddress(loopback(), port));
      return OptionalInt.of(probe.getLocalPort());
    } catch (IOException e) {
      return OptionalInt.empty();
    }
  }

  /** The port it listens on. */
  public int port() {
    return port;
  }

  /** Where a client finds it. */
  public URI url() {
    return URI.create("tcp://" + loopback().getHostAddress() + ":" + port);
  }

  @Override
  public void close() {
    server.stopServer();
  }

  /** The broker cannot run. */
  public static final class CannotStart extends RuntimeException {
    CannotStart(String message, @org.jspecify.annotations.Nullable Throwable cause) {
      super(message, cause);
    }
  }
}
