package coatwright.sensors.serial;

import coatwright.sensors.Eventually;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.TimeUnit;

/** A pair of joined serial lines, which can be pulled out and put back under another number. */
public final class Socat implements AutoCloseable {
  private static final Duration START = Duration.ofSeconds(10);

  private final Path near;
  private final Path far;
  private Process process;

  public Socat(Path directory) {
    this.near = directory.resolve("near");
    this.far = directory.resolve("far");
    plugIn();
  }

  public void plugIn() {
    try {
      process =
          new ProcessBuilder("socat", "pty,raw,echo=0,link=" + near, "pty,raw,echo=0,link=" + far)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Eventually.within(START, "both ends there", () -> Files.exists(near) && Files.exists(far));
  }

  public void pullOut() {
    process.destroyForcibly();
    try {
      process.waitFor(10, TimeUnit.SECONDS);
      Files.deleteIfExists(near);
      Files.deleteIfExists(far);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The stable name the house listens to. */
  public Path device() {
    return near;
  }

  /** The other end, where the board is. */
  public Path far() {
    return far;
  }

  /** The number behind the stable name, as the system gave it. */
  public Path number() {
    try {
      return near.toRealPath();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The board at the other end prints something. */
  public void print(String text) {
    try (OutputStream out = Files.newOutputStream(far)) {
      out.write(text.getBytes(StandardCharsets.ISO_8859_1));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    pullOut();
  }
}
