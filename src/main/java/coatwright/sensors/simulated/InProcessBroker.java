package coatwright.sensors.simulated;

import io.moquette.broker.Server;
import io.moquette.broker.config.IConfig;
import io.moquette.broker.config.MemoryConfig;
import io.moquette.broker.security.AcceptAllAuthenticator;
import io.moquette.broker.security.IAuthenticator;
import io.moquette.broker.security.PermitAllAuthorizatorPolicy;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Properties;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A real MQTT broker inside this process, for the demo or for a shop without one. Without a login
 * it listens on a loopback address only; keeps nothing on disk; sends nothing home.
 */
public final class InProcessBroker implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(InProcessBroker.class);
  private static final int PORTS_TRIED = 50;
  private static final int MOST_BYTES = 64 * 1024;

  private final Server server;
  private final InetAddress host;
  private final int port;

  private InProcessBroker(Server server, InetAddress host, int port) {
    this.server = server;
    this.host = host;
    this.port = port;
  }

  /**
   * Who may come in.
   *
   * @param passwordFile the password is its first line, read anew at each login
   */
  public record Login(String user, Path passwordFile) {}

  /**
   * Starts a broker for this machine alone, open to anyone on it.
   *
   * @param wantedPort the port, or the next free one if it is taken; 0 for any free one
   * @throws CannotStart when none of the next ports is free, or the broker fails
   */
  public static InProcessBroker start(int wantedPort) {
    return start(loopback(), freePort(wantedPort), Optional.empty());
  }

  /**
   * Starts the broker of a shop.
   *
   * @param host an address of this machine
   * @throws CannotStart when the port is taken or the address is not one of this machine's, when
   *     others than this machine could come in without a login, or the broker fails
   */
  public static InProcessBroker open(String host, int port, Optional<Login> login) {
    InetAddress address;
    try {
      address = InetAddress.getByName(host);
    } catch (UnknownHostException e) {
      throw new CannotStart("the in-process broker: no address " + host + "; write 127.0.0.1", e);
    }
    if (!address.isLoopbackAddress() && login.isEmpty()) {
      throw new CannotStart(
          "the in-process broker would let anyone in at %s; give it user and password-file, or 127.0.0.1"
              .formatted(host),
          null);
    }
    if (free(address, port).isEmpty()) {
      throw new CannotStart(
          "the in-process broker cannot listen at %s:%d: taken by another program, or no address of this machine; choose another port, or use that broker by its url"
              .formatted(host, port),
          null);
    }
    return start(address, port, login);
  }

  private static InProcessBroker start(InetAddress host, int port, Optional<Login> login) {
    Server server = new Server();
    IAuthenticator door =
        login
            .<IAuthenticator>map(InProcessBroker::askingFor)
            .orElseGet(AcceptAllAuthenticator::new);
    try {
      server.startServer(
          new MemoryConfig(settings(host, port, login.isPresent())),
          List.of(),
          null,
          door,
          new PermitAllAuthorizatorPolicy());
      LOG.info(
          "the broker inside this program listens at {}:{}{}",
          host.getHostAddress(),
          port,
          login.isPresent() ? ", with a password" : "");
      return new InProcessBroker(server, host, port);
    } catch (IOException | RuntimeException e) {
      throw new CannotStart("the in-process broker did not start on port " + port, e);
    }
  }

  private static IAuthenticator askingFor(Login login) {
    return (clientId, user, password) -> login.user().equals(user) && matches(login, password);
  }

  /** Compared in constant time, so that a password cannot be guessed letter by letter. */
  private static boolean matches(Login login, byte @Nullable [] given) {
    try {
      List<String> lines = Files.readAllLines(login.passwordFile());
      String password = lines.isEmpty() ? "" : lines.get(0);
      return given != null
          && !password.isEmpty()
          && MessageDigest.isEqual(password.getBytes(StandardCharsets.UTF_8), given);
    } catch (IOException e) {
      LOG.error("nobody is let in: {} cannot be read; see its rights", login.passwordFile(), e);
      return false;
    }
  }

  /** What it is started with; its library would otherwise report home and store to disk. */
  static Properties settings(InetAddress host, int port, boolean locked) {
    Properties settings = new Properties();
    settings.setProperty(IConfig.ENABLE_TELEMETRY_NAME, "false");
    settings.setProperty(IConfig.HOST_PROPERTY_NAME, host.getHostAddress());
    settings.setProperty(IConfig.PORT_PROPERTY_NAME, Integer.toString(port));
    settings.setProperty(IConfig.ALLOW_ANONYMOUS_PROPERTY_NAME, Boolean.toString(!locked));
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
      OptionalInt free = free(loopback(), port);
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
  private static OptionalInt free(InetAddress host, int port) {
    try (ServerSocket probe = new ServerSocket()) {
      probe.setReuseAddress(true);
      probe.bind(new InetSocketAddress(host, port));
      return OptionalInt.of(probe.getLocalPort());
    } catch (IOException e) {
      return OptionalInt.empty();
    }
  }

  /** The port it listens on. */
  public int port() {
    return port;
  }

  /** Where a client on this machine finds it. */
  public URI url() {
    InetAddress near = host.isAnyLocalAddress() ? loopback() : host;
    String text = near.getHostAddress();
    return URI.create("tcp://%s:%d".formatted(text.contains(":") ? "[" + text + "]" : text, port));
  }

  @Override
  public void close() {
    server.stopServer();
  }

  /** The broker cannot run. */
  public static final class CannotStart extends RuntimeException {
    CannotStart(String message, @Nullable Throwable cause) {
      super(message, cause);
    }
  }
}
