package coatwright.outlook;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Times as people in the shop say them. */
final class Times {
  private static final DateTimeFormatter HOUR = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.ENGLISH);

  private Times() {}

  /** {@code Thu 26 Nov 16:20}. */
  static String show(Instant at, ZoneId zone) {
    return at.atZone(zone).format(DAY);
  }

  /** {@code 16:20} on the same day as now, else with its day. */
  static String near(Instant at, Instant now, ZoneId zone) {
    ZonedDateTime time = at.atZone(zone);
    LocalDate today = now.atZone(zone).toLocalDate();
    return time.toLocalDate().equals(today) ? time.format(HOUR) : time.format(DAY);
  }
}
