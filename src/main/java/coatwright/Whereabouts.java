package coatwright;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A note in the data folder of where the daemon that holds it listens, so that {@code --data} alone
 * finds one that was started on another port. Gone when the daemon stops; one left behind by a
 * program that was killed names a process that is no more, and is not believed.
 */
final class Whereabouts implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Whereabouts.class);
  private static final String FILE_NAME = "coatwright.address";
  private static final int LINES = 3;

  private final Path file;

  private Whereabouts(Path file) {
    this.file = file;
  }

  /** Where a daemon listens. */
  record Address(String host, int port) {}

  /** Leaves the note; without one the settings' own address is asked, so a failure is only told. */
  static Whereabouts leave(Path data, String host, int port) {
    Path file = data.resolve(FILE_NAME);
    String text = "%s%n%d%n%d%n".formatted(host, port, ProcessHandle.current().pid());
    try {
      Files.writeString(file, text);
    } catch (IOException unwritable) {
      LOG.warn("{} cannot be written; commands need --config with this port", file, unwritable);
    }
    return new Whereabouts(file);
  }

  /** Where the daemon of a data folder listens, if one runs. */
  static Optional<Address> of(Path data) {
    try {
      List<String> lines = Files.readAllLines(data.resolve(FILE_NAME), StandardCharsets.UTF_8);
      if (lines.size() != LINES || !alive(Long.parseLong(lines.get(2)))) {
        return Optional.empty();
      }
      return Optional.of(new Address(lines.get(0), Integer.parseInt(lines.get(1))));
    } catch (IOException | NumberFormatException none) {
      LOG.debug("no daemon says where it is in {}", data, none);
      return Optional.empty();
    }
  }

  private static boolean alive(long pid) {
    return ProcessHandle.of(pid).map(ProcessHandle::isAlive).orElse(false);
  }

  @Override
  public void close() throws IOException {
    Files.deleteIfExists(file);
  }
}
