package coatwright.watch;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Times as a message tells them: the hour alone today, else with the day. */
final class ShopTime {
  private static final DateTimeFormatter HOUR = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

  private ShopTime() {}

  static String hour(Instant at, Instant now, ZoneId zone) {
    ZonedDateTime then = at.atZone(zone);
    boolean today = then.toLocalDate().equals(now.atZone(zone).toLocalDate());
    return today ? HOUR.format(then) : DAY.format(then) + " " + HOUR.format(then);
  }

  static String day(Instant at, ZoneId zone) {
    return DAY.format(at.atZone(zone));
  }
}
