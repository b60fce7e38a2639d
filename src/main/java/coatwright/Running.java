package coatwright;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.Optional;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What was started, to be stopped in the reverse order; one that fails to stop does not keep the
 * others. Stopping twice does nothing the second time. Safe for many threads.
 */
final class Running implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Running.class);

  private final Deque<AutoCloseable> started = new ArrayDeque<>();
  private final Optional<Path> passing;

  /**
   * @param passing a folder that goes when everything has stopped
   */
  Running(Optional<Path> passing) {
    this.passing = passing;
  }

  Running() {
    this(Optional.empty());
  }

  /** Remembers it, and hands it back. */
  synchronized <T extends AutoCloseable> T with(T part) {
    started.push(part);
    return part;
  }

  /** Whether its folder goes in the end. */
  boolean goes() {
    return passing.isPresent();
  }

  @Override
  public synchronized void close() {
    while (!started.isEmpty()) {
      AutoCloseable part = started.pop();
      try {
        part.close();
      } catch (Exception trouble) {
        LOG.error("stopping {} failed", part.getClass().getSimpleName(), trouble);
      }
    }
    passing.filter(Files::exists).ifPresent(Running::remove);
  }

  private static void remove(Path folder) {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(file);
      }
    } catch (IOException left) {
      LOG.warn("{} could not be removed; remove it by hand", folder, left);
    }
  }
}
