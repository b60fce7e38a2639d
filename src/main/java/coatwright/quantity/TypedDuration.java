package coatwright.quantity;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;

/**
 * Reads a length of time typed as numbers with units, largest first: {@code 1h30min}, {@code 2d}.
 */
final class TypedDuration {
  private static final String EXAMPLE = "write it like 20min, 1h30min or 2d";
  private static final BigDecimal LONGEST_S = BigDecimal.valueOf(100L * 366 * 86_400);
  private static final Map<String, Long> SECONDS = new HashMap<>();

  static {
    add(1, "s", "sec", "secs", "second", "seconds");
    add(60, "min", "mins", "minute", "minutes");
    add(3600, "h", "hr", "hrs", "hour", "hours");
    add(86_400, "d", "day", "days");
    add(7 * 86_400, "w", "wk", "week", "weeks");
  }

  private TypedDuration() {}

  private static void add(long seconds, String... spellings) {
    for (String spelling : spellings) {
      SECONDS.put(spelling, seconds);
    }
  }

  static Duration read(String what, String text) {
    String typed = Measure.folded(text.strip());
    BigDecimal totalS = BigDecimal.ZERO;
    long smallestSoFarS = Long.MAX_VALUE;
    int at = 0;
    do {
      int endOfNumber = StrictNumber.endOfNumber(typed, at, '.');
      if (endOfNumber == at) {
        throw Measure.refused(what, text, "a length of time is a number with its unit", EXAMPLE);
      }
      int endOfUnit = endOfLetters(typed, endOfNumber);
      String unit = typed.substring(endOfNumber, endOfUnit);
      long unitS = unitSeconds(what, text, unit);
      if (unitS >= smallestSoFarS) {
        throw Measure.refused(what, text, "each unit stands once, the largest first", EXAMPLE);
      }
      BigDecimal number = new BigDecimal(typed.substring(at, endOfNumber));
      if (number.signum() < 0 || number.compareTo(LONGEST_S) > 0) {
        throw tooLongOrNegative(what, text);
      }
      totalS = totalS.add(number.multiply(BigDecimal.valueOf(unitS)));
      smallestSoFarS = unitS;
      at = endOfUnit;
    } while (at < typed.length());
    if (totalS.compareTo(LONGEST_S) > 0) {
      throw tooLongOrNegative(what, text);
    }
    return Duration.ofMillis(totalS.movePointRight(3).longValue());
  }

  private static long unitSeconds(String what, String text, String unit) {
    Long unitS = SECONDS.get(unit);
    if (unitS != null) {
      return unitS;
    }
    String rule =
        switch (unit) {
          case "" -> "a length of time needs its unit";
          case "m" -> "a bare m may be minutes or months";
          default -> "a length of time is given in s, min, h, d, w";
        };
    throw Measure.refused(what, text, rule, EXAMPLE);
  }

  private static RefusedInput tooLongOrNegative(String what, String text) {
    return Measure.refused(
        what, text, "a length of time is from 0 to 100 years", "check the number and its unit");
  }

  private static int endOfLetters(String text, int from) {
    int at = from;
    while (at < text.length() && Character.isLetter(text.charAt(at))) {
      at++;
    }
    return at;
  }
}
