package coatwright.journal;

import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.zone.ZoneOffsetTransition;
import java.util.List;
import java.util.Locale;

/**
 * Reads times as the shop types them: {@code 16:20}, {@code yesterday 16:20}, {@code
 * 2026-03-14T16:20} (with an offset where wanted), {@code -20min}, {@code now}; and days: {@code
 * 2026-03-14}, {@code today}, {@code yesterday}.
 *
 * <p>A time on the shop's clock that the change to or from summer time skips or repeats is refused,
 * because guessing would move a coat by an hour.
 */
public final class ShopTime {
  private static final String FORMS =
      "write it like 16:20, yesterday 16:20, 2026-03-14T16:20 or -20min";
  private static final String DAY_FORMS = "write it like 2026-03-14, today or yesterday";

  private static final DateTimeFormatter CLOCK_FACE =
      DateTimeFormatter.ofPattern("H:mm[:ss]", Locale.ROOT);
  private static final DateTimeFormatter SHOWN =
      DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm", Locale.ROOT);

  private final Clock clock;
  private final ZoneId zone;

  /**
   * @param zone the shop's own
   */
  public ShopTime(Clock clock, ZoneId zone) {
    this.clock = clock;
    this.zone = zone;
  }

  /** The instant meant. Future ones are not refused here. */
  public Instant instant(String what, String text) {
    String typed = text.strip();
    String lower = typed.toLowerCase(Locale.ROOT);
    if (lower.equals("now")) {
      return clock.instant();
    }
    if (typed.startsWith("-")) {
      return clock.instant().minus(Quantities.duration(what, typed.substring(1)));
    }
    if (lower.startsWith("yesterday ")) {
      return onDay(what, text, today().minusDays(1), lower.substring("yesterday ".length()));
    }
    if (lower.startsWith("today ")) {
      return onDay(what, text, today(), lower.substring("today ".length()));
    }
    if (typed.indexOf('-') > 0) {
      return dated(what, text, typed.replace(' ', 'T'));
    }
    return onDay(what, text, today(), lower);
  }

  /** The day meant. */
  public LocalDate day(String what, String text) {
    String lower = text.strip().toLowerCase(Locale.ROOT);
    if (lower.equals("today")) {
      return today();
    }
    if (lower.equals("yesterday")) {
      return today().minusDays(1);
    }
    try {
      return LocalDate.parse(lower);
    } catch (DateTimeParseException e) {
      throw RefusedInput.of(what + " \"" + text + "\"", "this is not a day", DAY_FORMS);
    }
  }

  /** Today on the shop's wall. */
  LocalDate today() {
    return LocalDate.ofInstant(clock.instant(), zone);
  }

  /** An instant as the shop's clock shows it. */
  String shown(Instant at) {
    return SHOWN.format(at.atZone(zone));
  }

  private Instant onDay(String what, String text, LocalDate day, String timeText) {
    try {
      return onTheWall(what, text, day.atTime(LocalTime.parse(timeText.strip(), CLOCK_FACE)));
    } catch (DateTimeParseException e) {
      throw RefusedInput.of(what + " \"" + text + "\"", "this is not a time", FORMS);
    }
  }

  private Instant dated(String what, String text, String typed) {
    try {
      boolean hasOffset = typed.matches("(?i).*T.*(Z|[+-][0-9:]+)");
      return hasOffset
          ? OffsetDateTime.parse(typed).toInstant()
          : onTheWall(what, text, LocalDateTime.parse(typed));
    } catch (DateTimeParseException e) {
      throw RefusedInput.of(what + " \"" + text + "\"", "this is not a time", FORMS);
    }
  }

  private Instant onTheWall(String what, String text, LocalDateTime local) {
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    if (offsets.size() == 1) {
      return local.toInstant(offsets.get(0));
    }
    ZoneOffsetTransition change = zone.getRules().getTransition(local);
    if (offsets.isEmpty()) {
      throw RefusedInput.of(
          what + " \"" + text + "\"",
          "on %s the clock went from %s straight to %s, so there was no %s"
              .formatted(
                  local.toLocalDate(),
                  change.getDateTimeBefore().toLocalTime(),
                  change.getDateTimeAfter().toLocalTime(),
                  local.toLocalTime()),
          "write the time the shop's clock showed");
    }
    throw RefusedInput.of(
        what + " \"" + text + "\"",
        "on %s the clock was put back, so %s came twice"
            .formatted(local.toLocalDate(), local.toLocalTime()),
        "write %s%s for the first or %s%s for the second"
            .formatted(SHOWN.format(local), offsets.get(0), SHOWN.format(local), offsets.get(1)));
  }

  /** Refuses what has not come yet; a minute is allowed for clocks that differ. */
  Instant past(String what, String text) {
    Instant at;
    try {
      at = instant(what, text);
    } catch (DateTimeException | ArithmeticException e) {
      throw RefusedInput.of(what + " \"" + text + "\"", "this time is out of reach", FORMS);
    }
    if (at.isAfter(clock.instant().plusSeconds(60))) {
      throw RefusedInput.of(
          what + " \"" + text + "\"",
          "this is " + shown(at) + ", which has not come yet",
          "write when it happened; for last evening write it like yesterday 23:50");
    }
    return at;
  }
}
