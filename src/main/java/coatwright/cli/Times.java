package coatwright.cli;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** Prints the daemon's times as the shop's clock shows them. */
final class Times {
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.ENGLISH);
  private static final DateTimeFormatter YEAR =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  private Times() {}

  /** {@code 16:20}, {@code tomorrow 09:10}, {@code Sat 14 Mar 16:20} or with the year. */
  static String shown(String iso, OffsetDateTime now) {
    OffsetDateTime at;
    try {
      at = OffsetDateTime.parse(iso);
    } catch (DateTimeParseException unread) {
      return iso;
    }
    OffsetDateTime here = now.withOffsetSameInstant(offset(at));
    long days = ChronoUnit.DAYS.between(here.toLocalDate(), at.toLocalDate());
    if (days == 0) {
      return CLOCK.format(at);
    }
    if (days == 1 || days == -1) {
      return (days == 1 ? "tomorrow " : "yesterday ") + CLOCK.format(at);
    }
    return Duration.between(here, at).abs().toDays() < 200 ? DAY.format(at) : YEAR.format(at);
  }

  private static ZoneOffset offset(OffsetDateTime at) {
    return at.getOffset();
  }
}
