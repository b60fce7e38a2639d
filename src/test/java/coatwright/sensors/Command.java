package coatwright.sensors;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Runs a program to its end; a program that is missing or fails, fails the test and says so. */
public final class Command {
  private Command() {}

  /** What it printed. */
  public static String run(String... words) {
    try {
      Process process = new ProcessBuilder(words).redirectErrorStream(true).start();
      String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      if (!process.waitFor(60, TimeUnit.SECONDS) || process.exitValue() != 0) {
        process.destroyForcibly();
        throw new AssertionError(List.of(words) + " failed: " + said);
      }
      return said;
    } catch (IOException e) {
      throw new UncheckedIOException(
          words[0] + " cannot be run; ./verify installs it on Debian", e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError(words[0] + " was interrupted", e);
    }
  }
}
