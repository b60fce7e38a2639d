package coatwright.sensors;

import coatwright.quantity.StrictNumber;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** What senders write when they have no value. */
final class Missing {
  /** The one-wire probe's power-on register, °C: no conversion was done (DS18B20 data sheet). */
  private static final double ONE_WIRE_POWER_ON_C = 85;

  /** What common drivers of that probe give when nothing answers on the wire, °C. */
  private static final double ONE_WIRE_GONE_C = -127;

  private static final double SAME = 0.005;
  private static final Set<String> NO_VALUE =
      Set.of(
          "nan",
          "-nan",
          "+nan",
          "inf",
          "-inf",
          "+inf",
          "infinity",
          "-infinity",
          "null",
          "none",
          "nil",
          "unavailable",
          "unknown",
          "undefined",
          "n/a",
          "na",
          "error",
          "err",
          "fail",
          "failed",
          "invalid",
          "-",
          "--",
          "---");
  private static final Set<String> PRESENCE =
      Set.of("offline", "online", "disconnected", "connected");

  private Missing() {}

  /** Why a text is no value, when it is one of the words for that. */
  static Optional<String> word(String text) {
    String folded = text.toLowerCase(Locale.ROOT);
    if (NO_VALUE.contains(folded)) {
      return Optional.of("no value (\"" + text + "\")");
    }
    return PRESENCE.contains(folded)
        ? Optional.of("presence message on the value topic (\"" + text + "\")")
        : Optional.empty();
  }

  /** True when a text on the value topic says that the node is gone. */
  static boolean saysAbsent(String text) {
    String folded = text.toLowerCase(Locale.ROOT);
    return folded.equals("offline") || folded.equals("disconnected");
  }

  /** Why the sent value means "no value" by the source's own list. */
  static Optional<String> listed(ReadingRule rule, String sent, OptionalDouble number) {
    for (String missing : rule.missing()) {
      OptionalDouble value = StrictNumber.parse(missing, '.');
      boolean same =
          (value.isPresent() && number.isPresent())
              ? Math.abs(value.getAsDouble() - number.getAsDouble()) < SAME
              : missing.equals(sent);
      if (same) {
        return Optional.of(reason(rule, sent, value));
      }
    }
    return Optional.empty();
  }

  /** The same, where the payload names another unit than the list was written in. */
  static Optional<String> converted(ReadingRule rule, Unit named, double sent) {
    if (named == rule.unit()) {
      return Optional.empty();
    }
    double house = named.toHouse(rule.quantity(), sent);
    for (String missing : rule.missing()) {
      OptionalDouble listed = StrictNumber.parse(missing, '.');
      if (listed.isPresent()
          && Math.abs(rule.unit().toHouse(rule.quantity(), listed.getAsDouble()) - house) < SAME) {
        return Optional.of(reason(rule, missing, listed));
      }
    }
    return Optional.empty();
  }

  private static String reason(ReadingRule rule, String sent, OptionalDouble value) {
    if (value.isPresent() && rule.quantity().isTemperature()) {
      double celsius = rule.unit().toHouse(rule.quantity(), value.getAsDouble());
      if (Math.abs(celsius - ONE_WIRE_POWER_ON_C) < SAME) {
        return "power-on value " + sent + ": the probe did not convert; check its supply";
      }
      if (Math.abs(celsius - ONE_WIRE_GONE_C) < SAME) {
        return "probe disconnected (" + sent + "); check its cable";
      }
    }
    return "no value (\"" + sent + "\" is listed as missing)";
  }
}
