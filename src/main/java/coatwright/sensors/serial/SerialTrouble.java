package coatwright.sensors.serial;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Why a serial device cannot be used, in words a person can act on. */
final class SerialTrouble {
  private static final int BUSY = 16;
  private static final int NO_PERMISSION = 13;
  private static final int LOCKED = 11;

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
          "device %s is busy: another program has it open; stop that program".formatted(device);
      case NO_PERMISSION -> noPermission(device);
      default -> "device %s could not be opened (error %d)".formatted(device, error);
    };
  }

  static String noLines(Path device, SerialSettings line) {
    return "device %s: bytes but no lines at %s; the speed is probably wrong"
        .formatted(device, line);
  }

  private static String noPermission(Path device) {
    return "device %s may not be opened by this user; add it to the group dialout and log in anew"
        .formatted(device);
  }
}
