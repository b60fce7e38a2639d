package coatwright.journal;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * What a check against one or two salts found: true = gain × sent + offset.
 *
 * <p>One point gives an offset only: it cannot tell a tilt from a shift. Two that lie far enough
 * apart give both. The limits beyond which an element is to be replaced are common practice, no
 * source.
 *
 * @param offsetPct points of RH
 * @param points how many salts it rests on
 */
public record SaltFit(double gain, double offsetPct, int points) {
  private static final double LEAST_GAIN = 0.93;
  private static final double MOST_GAIN = 1.10;
  private static final double MOST_OFFSET_PCT = 8;

  /** Two salts nearer than this tell no gain, points of RH. */
  static final double LEAST_APART_PCT = 20;

  /**
   * The line through what was read over the salts.
   *
   * @param points at least one; of several, the driest and the dampest decide
   */
  public static SaltFit of(List<SaltCheck.Point> points) {
    Comparator<SaltCheck.Point> byHumidity =
        Comparator.comparingDouble(SaltCheck.Point::expectedRhPct);
    SaltCheck.Point dry = points.stream().min(byHumidity).orElseThrow();
    SaltCheck.Point damp = points.stream().max(byHumidity).orElseThrow();
    double apart = damp.expectedRhPct() - dry.expectedRhPct();
    double sentApart = damp.sentRhPct() - dry.sentRhPct();
    if (apart < LEAST_APART_PCT) {
      SaltCheck.Point last = points.get(points.size() - 1);
      return new SaltFit(1, last.expectedRhPct() - last.sentRhPct(), 1);
    }
    if (!(sentApart > 0)) {
      // It does not follow the air at all: no gain can mend that.
      return new SaltFit(0, damp.expectedRhPct(), 2);
    }
    double gain = apart / sentApart;
    return new SaltFit(gain, dry.expectedRhPct() - gain * dry.sentRhPct(), 2);
  }

  /** Whether the element may be corrected; beyond it is to be replaced. */
  public boolean isPassed() {
    return gain >= LEAST_GAIN && gain <= MOST_GAIN && Math.abs(offsetPct) <= MOST_OFFSET_PCT;
  }

  /** The corrected humidity, %. */
  public double applyTo(double sentRhPct) {
    return gain * sentRhPct + offsetPct;
  }

  /** What it means for the sensor. */
  public String sentence() {
    String line = String.format(Locale.ROOT, "true = %.3f × sent %+.1f", gain, offsetPct);
    if (!isPassed()) {
      return line + ": beyond gain 0.93 to 1.10 or offset 8, so replace the sensor";
    }
    return points > 1
        ? line
        : line
            + ", an offset only: one salt cannot tell a tilt from a shift, so read a second one at"
            + " least 20 points away";
  }
}
