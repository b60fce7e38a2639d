package coatwright.quantity;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * A number outside the range a formula or a record holds for.
 *
 * <p>Formulas refuse; they never clamp, because a clamped answer looks like a computed one.
 */
public final class OutOfRange extends IllegalArgumentException {
  private static final int SHOWN_DIGITS = 6;
  private static final String REMEDY = "check the number and its unit";

  private final String sentence;

  /** A refusal that needs its own words, remedy included; {@link #check} makes the usual ones. */
  public OutOfRange(String message) {
    this(message, message);
  }

  private OutOfRange(String message, String sentence) {
    super(message);
    this.sentence = sentence;
  }

  /** What was given, the limit and what to do, for the person who typed it. */
  public String sentence() {
    return sentence;
  }

  /**
   * Hands the value back if it lies in the closed range.
   *
   * @param what what the number is, as the reader calls it: "air temperature"
   * @param unit its unit as shown, "" for a pure number
   * @throws OutOfRange if the value is outside, infinite or not a number
   */
  public static double check(String what, double value, String unit, double low, double high) {
    if (value >= low && value <= high && !Double.isInfinite(value)) {
      return value;
    }
    throw refusal(what, value, unit, low, high);
  }

  /** Apart from {@link #check}, which stays small enough to be compiled into whoever asks. */
  private static OutOfRange refusal(
      String what, double value, String unit, double low, double high) {
    String shownUnit = unit.isEmpty() ? "" : " " + unit;
    String shownValue = Double.isNaN(value) ? "not a number" : shown(value, low, high) + shownUnit;
    String message =
        "%s is %s; this model holds from %s to %s%s"
            .formatted(what, shownValue, plain(low), plain(high), shownUnit);
    return new OutOfRange(message, message + "; " + REMEDY);
  }

  /** Rounds for the eye, unless rounding would print the value as the very limit it broke. */
  private static String shown(double value, double low, double high) {
    String rounded = plain(value);
    boolean looksLikeALimit = rounded.equals(plain(low)) || rounded.equals(plain(high));
    return looksLikeALimit ? Double.toString(value) : rounded;
  }

  private static String plain(double value) {
    if (Double.isInfinite(value)) {
      return value > 0 ? "infinity" : "-infinity";
    }
    double size = Math.abs(value);
    if (size >= 1e9 || (size > 0 && size < 1e-4)) {
      return Double.toString(value);
    }
    BigDecimal rounded =
        new BigDecimal(value).round(new MathContext(SHOWN_DIGITS)).stripTrailingZeros();
    return rounded.setScale(Math.max(1, rounded.scale())).toPlainString();
  }
}
