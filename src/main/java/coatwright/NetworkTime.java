package coatwright;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** Asks the system whether its clock follows network time. */
final class NetworkTime {
  private static final Path TOLD_BY_ITS_SERVICE = Path.of("/run/systemd/timesync/synchronized");
  private static final long PATIENCE_S = 5;

  private NetworkTime() {}

  /** What the system says. */
  enum Sync {
    /** The clock follows network time. */
    YES,
    /** It does not, or not yet. */
    NO,
    /** Nobody here knows. */
    UNKNOWN
  }

  /** Asks; takes a moment. */
  static Sync ask() {
    if (Files.exists(TOLD_BY_ITS_SERVICE)) {
      return Sync.YES;
    }
    try {
      Process process =
          new ProcessBuilder("timedatectl", "show", "-p", "NTPSynchronized", "--value")
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      process.getOutputStream().close();
      if (!process.waitFor(PATIENCE_S, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        return Sync.UNKNOWN;
      }
      String said =
          new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
      return switch (process.exitValue() == 0 ? said : "") {
        case "yes" -> Sync.YES;
        case "no" -> Sync.NO;
        default -> Sync.UNKNOWN;
      };
    } catch (IOException notThere) {
      return Sync.UNKNOWN;
    } catch (InterruptedException stopping) {
      Thread.currentThread().interrupt();
      return Sync.UNKNOWN;
    }
  }
}
