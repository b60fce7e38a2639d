package coatwright;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;

/**
 * The name the house goes by at a broker: the shop's, and a mark of this machine and this data
 * folder, because two clients of one name throw each other out without a word.
 */
final class ClientId {
  private static final Path MACHINE = Path.of("/etc/machine-id");
  private static final int LONGEST_SHOP = 40;
  private static final int MARK = 8;

  private ClientId() {}

  static String of(String shop, Path data) {
    return of(shop, machine(), data);
  }

  static String of(String shop, String machine, Path data) {
    String name = shop.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    String mark = sha256(machine + "\n" + data.toAbsolutePath().normalize()).substring(0, MARK);
    return "coatwright-%s-%s"
        .formatted(name.substring(0, Math.min(LONGEST_SHOP, name.length())), mark);
  }

  /** What tells this machine from others and stays; a machine without an id has its name. */
  private static String machine() {
    try {
      if (Files.isReadable(MACHINE)) {
        return Files.readString(MACHINE).strip();
      }
      return InetAddress.getLocalHost().getHostName();
    } catch (IOException e) {
      return "unnamed";
    }
  }

  private static String sha256(String text) {
    try {
      return HexFormat.of()
          .formatHex(
              MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every JDK has SHA-256", e);
    }
  }
}
