package coatwright.sensors;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Duration;
import java.util.Locale;

/** Numbers and durations in messages. */
final class Text {
  private static final MathContext SIX = new MathContext(6);

  private Text() {}

  static String plain(double value) {
    BigDecimal shown = new BigDecimal(value).round(SIX).stripTrailingZeros();
    return shown.scale() < 0 ? shown.setScale(0).toPlainString() : shown.toPlainString();
  }

  static String tenth(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  /** A sender's text, cut where it is too long to be shown. */
  static String shortened(String text) {
    return text.length() <= 40 ? text : text.substring(0, 40) + "...";
  }

  static String span(Duration span) {
    long seconds = span.toSeconds();
    if (seconds < 120) {
      return seconds + " s";
    }
    if (seconds < 7200) {
      return seconds / 60 + " min";
    }
    return seconds < 172_800 ? seconds / 3600 + " h" : seconds / 86_400 + " days";
  }
}
