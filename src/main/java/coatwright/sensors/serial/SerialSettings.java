package coatwright.sensors.serial;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Speed and form of a serial line, written {@code 9600 8N1}.
 *
 * @param baud bits a second, 300 to 4,000,000
 * @param dataBits 5 to 8
 * @param parity none, even or odd
 * @param stopBits 1 or 2
 */
public record SerialSettings(int baud, int dataBits, Parity parity, int stopBits) {
  private static final Pattern FORM = Pattern.compile("^(\\d{3,7}) ([5-8])([NEO])([12])$");
  private static final int SLOWEST = 300;
  private static final int FASTEST = 4_000_000;

  /** What most boards speak. */
  public static final SerialSettings USUAL = new SerialSettings(9600, 8, Parity.NONE, 1);

  /** The check bit. */
  public enum Parity {
    NONE,
    EVEN,
    ODD
  }

  /** Reads {@code 9600 8N1}; empty when it is not of that form. */
  public static Optional<SerialSettings> parse(String text) {
    Matcher matcher = FORM.matcher(text.toUpperCase(Locale.ROOT));
    if (!matcher.matches()) {
      return Optional.empty();
    }
    int baud = Integer.parseInt(matcher.group(1));
    if (baud < SLOWEST || baud > FASTEST) {
      return Optional.empty();
    }
    Parity parity =
        switch (matcher.group(3)) {
          case "E" -> Parity.EVEN;
          case "O" -> Parity.ODD;
          default -> Parity.NONE;
        };
    return Optional.of(
        new SerialSettings(
            baud, Integer.parseInt(matcher.group(2)), parity, Integer.parseInt(matcher.group(4))));
  }

  @Override
  public String toString() {
    return baud + " " + dataBits + parity.name().charAt(0) + stopBits;
  }
}
