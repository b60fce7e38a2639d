package coatwright.sensors.serial;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.util.Optional;

/** Why a serial device cannot be used, in words a person can act on. */
final class SerialTrouble {
  private static final int BUSY = 16;
  private static final int NO_PERMISSION = 13;
  private static final int LOCKED = 11;

  private static final String USUAL_GROUP = "dialout";

  private SerialTrouble() {}

  static Optional<String> beforeOpening(Path device) {
    if (!Files.exists(device)) {
      return Optional.of(
          "device %s is not there; is it plugged in, and is the path right?".formatted(device));
    }
    if (!Files.isReadable(device) || !Files.isWritable(device)) {
      return Optional.of(noPermission(device));
    }
    return Optional.empty();
  }

  static String notOpened(Path device, int error) {
    return switch (error) {
      case BUSY, LOCKED ->
          "device %s is busy: another program has it open, and two readers would each get half of it; stop that program (fuser %s names it)"
              .formatted(device, device);
      case NO_PERMISSION -> noPermission(device);
      default -> "device %s could not be opened (error %d)".formatted(device, error);
    };
  }

  static String noLines(Path device, SerialSettings line) {
    return "device %s: bytes but no lines at %s; the speed is probably wrong"
        .formatted(device, line);
  }

  private static String noPermission(Path device) {
    String group = groupOf(device);
    String user = System.getProperty("user.name", "this user");
    return "device %s may not be opened by %s; add it to the group %s (sudo usermod -aG %s %s), then log in anew or restart the service"
        .formatted(device, user, group, group, user);
  }

  /** The group that may open it, as the system has it; on Debian that is dialout. */
  private static String groupOf(Path device) {
    try {
      return Files.readAttributes(device, PosixFileAttributes.class).group().getName();
    } catch (IOException | UnsupportedOperationException e) {
      return USUAL_GROUP;
    }
  }
}
