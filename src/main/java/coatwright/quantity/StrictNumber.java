package coatwright.quantity;

import java.util.OptionalDouble;

/**
 * The one number grammar of the house: optional sign, ASCII digits with at most one decimal mark
 * between or beside them, optional exponent of one to three digits.
 *
 * <p>The JDK's own parser is looser than any sensor or form should be: it takes {@code 21.5f},
 * {@code 0x1.5p4} and {@code NaN}, and trims control characters. None of those is a number here.
 */
public final class StrictNumber {
  private static final int LONGEST_EXPONENT = 3;

  private StrictNumber() {}

  /**
   * The number a text wholly is, or nothing: no blanks around it, no unit, no grouping. A number
   * too large for a double is none.
   */
  public static OptionalDouble parse(String text, char decimalMark) {
    if (text.isEmpty() || endOfNumber(text, 0, decimalMark) != text.length()) {
      return OptionalDouble.empty();
    }
    double value = Double.parseDouble(text.replace(decimalMark, '.'));
    return Double.isInfinite(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  /** Where the number starting at {@code from} ends; {@code from} itself if none starts there. */
  static int endOfNumber(String text, int from, char decimalMark) {
    int at = from < text.length() && isSign(text.charAt(from)) ? from + 1 : from;
    int endOfWhole = endOfDigits(text, at);
    int digits = endOfWhole - at;
    at = endOfWhole;
    if (at < text.length() && text.charAt(at) == decimalMark) {
      int endOfFraction = endOfDigits(text, at + 1);
      digits += endOfFraction - at - 1;
      at = endOfFraction;
    }
    return digits == 0 ? from : endOfExponent(text, at);
  }

  /** An "e" that no digit follows belongs to the unit, not to the number. */
  private static int endOfExponent(String text, int at) {
    if (at >= text.length() || (text.charAt(at) != 'e' && text.charAt(at) != 'E')) {
      return at;
    }
    int start = at + 1 < text.length() && isSign(text.charAt(at + 1)) ? at + 2 : at + 1;
    int end = endOfDigits(text, start);
    return end > start && end - start <= LONGEST_EXPONENT ? end : at;
  }

  private static int endOfDigits(String text, int from) {
    int at = from;
    while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
      at++;
    }
    return at;
  }

  private static boolean isSign(char c) {
    return c == '+' || c == '-';
  }
}
