package coatwright.sensors;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.TimeUnit;

/** A real broker in a process of its own, which can be killed and brought back. */
public final class Mosquitto implements AutoCloseable {
  private static final Duration START = Duration.ofSeconds(20);

  private final Path config;
  private final int port;
  private Process process;

  public Mosquitto(Path directory) {
    this(directory, "allow_anonymous true");
  }

  /** With further lines of its settings, which say who may come in and how. */
  public Mosquitto(Path directory, String... lines) {
    this.port = freePort();
    this.config = directory.resolve("mosquitto-%d.conf".formatted(port));
    try {
      // As root it would become another user, who may not read what a test has made.
      Files.writeString(
          config,
          "user root\nlistener %d 127.0.0.1\npersistence false\n%s\n"
              .formatted(port, String.join("\n", lines)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    start();
  }

  private static int freePort() {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public void start() {
    try {
      Path installed = Path.of("/usr/sbin/mosquitto");
      String program = Files.exists(installed) ? installed.toString() : "mosquitto";
      process =
          new ProcessBuilder(program, "-c", config.toString())
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Eventually.within(START, "broker answers", this::answers);
  }

  private boolean answers() {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
      return socket.isConnected();
    } catch (IOException e) {
      return false;
    }
  }

  /** As a power cut would: no time to say goodbye. */
  public void kill() {
    process.destroyForcibly();
    try {
      process.waitFor(10, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  public URI url() {
    return URI.create("tcp://127.0.0.1:" + port);
  }

  /** Its port, at 127.0.0.1. */
  public int port() {
    return port;
  }

  /** The same place over TLS. */
  public URI tlsUrl() {
    return URI.create("ssl://localhost:" + port);
  }

  @Override
  public void close() {
    kill();
  }
}
