package coatwright.replay;

import coatwright.quantity.RefusedInput;
import coatwright.quantity.StrictNumber;
import coatwright.sensors.TimeRule;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.Optional;

/**
 * When a line of a record was measured, by the mapping's rule. A record has no arrival to fall back
 * on, so its own time is taken whatever its year, and a line without one is refused.
 */
final class LineTimes {
  private static final double MILLIS_FROM = 1e11;
  private static final double MICROS_FROM = 1e14;

  private final TimeRule rule;

  LineTimes(Optional<TimeRule> rule) {
    this.rule =
        rule.orElseThrow(
            () ->
                RefusedInput.of(
                    "mapping",
                    "names no time, and a record needs one",
                    "write time: {at: COLUMN, form: rfc3339, trust: payload}"));
  }

  /** The column the time stands in. */
  String column() {
    return rule.at();
  }

  Optional<Instant> read(String text) {
    for (TimeRule.Form form : rule.forms()) {
      Optional<Instant> found =
          switch (form) {
            case RFC3339 -> withOffset(text);
            case EPOCH_AUTO -> epoch(text, true);
            case EPOCH_S -> epoch(text, false);
            case LOCAL -> local(text, rule.zone().orElse(ZoneOffset.UTC));
            // Only a pack of records carries it; a column never does.
            case SENML -> Optional.empty();
          };
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  private static Optional<Instant> withOffset(String text) {
    try {
      return Optional.of(
          OffsetDateTime.parse(
                  text.strip().replace(' ', 'T'), DateTimeFormatter.ISO_OFFSET_DATE_TIME)
              .toInstant());
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  /** An hour that the change from summer time repeats is taken as the earlier one. */
  private static Optional<Instant> local(String text, ZoneId zone) {
    try {
      return Optional.of(
          LocalDateTime.parse(text.strip().replace(' ', 'T')).atZone(zone).toInstant());
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  private static Optional<Instant> epoch(String text, boolean bySize) {
    var number = StrictNumber.parse(text.strip(), '.');
    if (number.isEmpty() || Math.abs(number.getAsDouble()) > 1e17) {
      return Optional.empty();
    }
    double value = number.getAsDouble();
    double size = Math.abs(value);
    double seconds =
        !bySize || size < MILLIS_FROM ? value : size < MICROS_FROM ? value / 1e3 : value / 1e6;
    return Math.abs(seconds) > 1e11
        ? Optional.empty()
        : Optional.of(Instant.ofEpochMilli(Math.round(seconds * 1000)));
  }
}
