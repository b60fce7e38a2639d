package coatwright.sensors;

import java.util.regex.Pattern;

/** Names what a line that fits nothing probably is, so that a person knows where to look. */
final class LineTrouble {
  private static final Pattern MODEM = Pattern.compile("^AT(?:[A-Z&+].{0,40})?$");
  private static final Pattern BOOT =
      Pattern.compile(
          "(?i)^(?:r?om [A-Z]|rst:|rst cause|ets |load:|boot|configsip|mode:|entry ).*");
  private static final int HALF = 2;

  private LineTrouble() {}

  static String of(String line) {
    if (MODEM.matcher(line).matches()) {
      return "echo of modem probing (\"AT\"): another program opens this port; tell the modem "
          + "manager to leave it alone";
    }
    if (BOOT.matcher(line).matches() || line.startsWith("om ")) {
      return "pattern mismatch: boot text; set settle longer if it comes after every start";
    }
    long unprintable = line.chars().filter(c -> c != '\t' && (c < ' ' || c > '~')).count();
    if (unprintable * HALF > line.length() || (unprintable > 2 && line.length() < 64)) {
      return "pattern mismatch: binary noise, boot text or a wrong speed; check line";
    }
    return "pattern mismatch: compare the line with the pattern of the mapping";
  }
}
