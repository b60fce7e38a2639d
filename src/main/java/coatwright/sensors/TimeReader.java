package coatwright.sensors;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * When a payload was measured. A time that cannot be true is never used: the arrival stands in, and
 * a flag says why.
 */
final class TimeReader {
  /** No sensor this reads was built before: an earlier time is a clock that was never set. */
  private static final Instant CLOCKS_SET_SINCE = Instant.parse("2015-01-01T00:00:00Z");

  private static final Duration AHEAD = Duration.ofMinutes(2);
  private static final Duration OLD = Duration.ofDays(1);
  private static final Pattern NUMBER = Pattern.compile("^-?\\d{1,19}(?:\\.\\d{1,9})?$");
  private static final long SENML_ABSOLUTE_FROM = 1L << 28;
  private static final Duration SENML_FARTHEST = Duration.ofDays(3650);
  private static final int MAX_SCALE = 9;
  private static final BigDecimal MILLIS_FROM = new BigDecimal("1e11");
  private static final BigDecimal MICROS_FROM = new BigDecimal("1e14");
  private static final BigDecimal NANOS_FROM = new BigDecimal("1e17");

  /**
   * A time and what was odd about it.
   *
   * @param own the payload's own time was used
   */
  record Found(Instant at, boolean own, List<String> flags) {
    Found {
      flags = List.copyOf(flags);
    }
  }

  private final Optional<TimeRule> rule;

  TimeReader(Optional<TimeRule> rule) {
    this.rule = rule;
  }

  Found read(Cells cells, Instant arrivedAt) {
    if (rule.isEmpty()) {
      return new Found(arrivedAt, false, List.of());
    }
    Optional<String> text = cells.text(rule.get().at());
    boolean senml = rule.get().forms().contains(TimeRule.Form.SENML);
    if (text.isEmpty()) {
      return new Found(arrivedAt, false, senml ? List.of() : List.of("time_missing"));
    }
    List<String> flags = new ArrayList<>();
    Optional<Instant> parsed = parse(rule.get(), text.get(), arrivedAt, flags);
    if (parsed.isEmpty()) {
      return new Found(arrivedAt, false, flags);
    }
    Instant at = parsed.get();
    if (at.isBefore(CLOCKS_SET_SINCE)) {
      return new Found(arrivedAt, false, List.of("clock_not_set"));
    }
    if (at.isAfter(arrivedAt.plus(AHEAD))) {
      return new Found(arrivedAt, false, List.of("future_time"));
    }
    if (!rule.get().trustPayload()) {
      return new Found(arrivedAt, false, flags);
    }
    if (at.isBefore(arrivedAt.minus(OLD))) {
      flags.add("old_time");
    }
    return new Found(at, !senml || isAbsolute(text.get()), flags);
  }

  private static Optional<Instant> parse(
      TimeRule rule, String text, Instant arrivedAt, List<String> flags) {
    for (TimeRule.Form form : rule.forms()) {
      Optional<Instant> found =
          switch (form) {
            case RFC3339 -> rfc3339(text);
            case EPOCH_AUTO -> epoch(text, true);
            case EPOCH_S -> epoch(text, false);
            case SENML -> senml(text, arrivedAt);
            case LOCAL -> local(text, rule.zone().orElse(ZoneOffset.UTC), arrivedAt, flags);
          };
      if (found.isPresent()) {
        return found;
      }
    }
    Optional<LocalDateTime> zoneless = localDateTime(text);
    if (zoneless.isPresent()
        && zoneless.get().toInstant(ZoneOffset.UTC).isBefore(CLOCKS_SET_SINCE)) {
      flags.add("clock_not_set");
    } else {
      flags.add("time_unparsed");
      if (zoneless.isPresent() && !flags.contains("nonexistent_local_time")) {
        flags.add("time_without_zone");
      }
    }
    return Optional.empty();
  }

  private static Optional<Instant> rfc3339(String text) {
    try {
      String strict = text.replace(' ', 'T');
      return Optional.of(
          OffsetDateTime.parse(strict, DateTimeFormatter.ISO_OFFSET_DATE_TIME).toInstant());
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  /** Seconds, or by size milli-, micro- or nanoseconds, since 1970. */
  private static Optional<Instant> epoch(String text, boolean bySize) {
    if (!NUMBER.matcher(text).matches()) {
      return Optional.empty();
    }
    BigDecimal number = new BigDecimal(text);
    BigDecimal size = number.abs();
    int shift = 0;
    if (bySize && size.compareTo(MILLIS_FROM) >= 0) {
      shift = size.compareTo(MICROS_FROM) < 0 ? 3 : size.compareTo(NANOS_FROM) < 0 ? 6 : 9;
    }
    BigInteger nanos = number.movePointLeft(shift).movePointRight(MAX_SCALE).toBigInteger();
    BigInteger[] parts = nanos.divideAndRemainder(BigInteger.TEN.pow(MAX_SCALE));
    try {
      return Optional.of(Instant.ofEpochSecond(parts[0].longValueExact(), parts[1].longValue()));
    } catch (DateTimeException | ArithmeticException e) {
      return Optional.empty();
    }
  }

  /**
   * Seconds since 1970 from 2^28 up; below that, seconds from now (RFC 8428, section 4.5.3), which
   * leans on the arrival and so is no time of the sender's own.
   */
  private static Optional<Instant> senml(String text, Instant arrivedAt) {
    Optional<Instant> counted = epoch(text, false);
    if (counted.isEmpty() || isAbsolute(text)) {
      return counted;
    }
    Duration fromNow = Duration.between(Instant.EPOCH, counted.get());
    return fromNow.abs().compareTo(SENML_FARTHEST) > 0
        ? Optional.empty()
        : Optional.of(arrivedAt.plus(fromNow));
  }

  private static boolean isAbsolute(String senmlTime) {
    return epoch(senmlTime, false)
        .filter(counted -> counted.getEpochSecond() >= SENML_ABSOLUTE_FROM)
        .isPresent();
  }

  /** A wall clock's time: the repeated hour is taken nearest to the arrival, a skipped one not. */
  private static Optional<Instant> local(
      String text, ZoneId zone, Instant arrivedAt, List<String> flags) {
    Optional<LocalDateTime> wall = localDateTime(text);
    if (wall.isEmpty()) {
      return Optional.empty();
    }
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(wall.get());
    if (offsets.isEmpty()) {
      flags.add("nonexistent_local_time");
      return Optional.empty();
    }
    if (offsets.size() > 1) {
      flags.add("ambiguous_local_time");
    }
    return offsets.stream()
        .map(offset -> wall.get().toInstant(offset))
        .min(Comparator.comparing(instant -> Duration.between(instant, arrivedAt).abs()));
  }

  private static Optional<LocalDateTime> localDateTime(String text) {
    try {
      return Optional.of(
          LocalDateTime.parse(text.replace(' ', 'T'), DateTimeFormatter.ISO_LOCAL_DATE_TIME));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }
}
