package coatwright.mix;

import coatwright.quantity.OutOfRange;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A cup with a hole: how thick a liquid is by how long it runs out.
 *
 * <p>Two published forms: ν = A t − B/t (ISO 2431, DIN 53211) and ν = K (t − c) (ASTM D1200, ASTM
 * D4212), ν in mm²/s, t in s. Coefficients and ranges as quoted from those standards in public
 * literature; the standards' own text was not at hand. DIN 53211 is withdrawn; some quote it as
 * valid from 20 s. Outside its range a cup says nothing, and the formula refuses.
 */
public enum FlowCup {
  ISO_3("iso3", "ISO 2431, 3 mm", Form.DIFFERENCE, 0.443, 200, 30, 100, 23),
  ISO_4("iso4", "ISO 2431, 4 mm", Form.DIFFERENCE, 1.37, 200, 30, 100, 23),
  ISO_5("iso5", "ISO 2431, 5 mm", Form.DIFFERENCE, 3.28, 220, 30, 100, 23),
  ISO_6("iso6", "ISO 2431, 6 mm", Form.DIFFERENCE, 6.9, 570, 30, 100, 23),
  DIN_4("din4", "DIN 53211, 4 mm", Form.DIFFERENCE, 4.57, 452, 25, 150, 20),
  FORD_2("ford2", "ASTM D1200, Ford 2", Form.OFFSET, 1.44, 18, 40, 100, 25),
  FORD_3("ford3", "ASTM D1200, Ford 3", Form.OFFSET, 2.31, 6.58, 20, 100, 25),
  FORD_4("ford4", "ASTM D1200, Ford 4", Form.OFFSET, 3.85, 4.49, 20, 100, 25),
  ZAHN_1("zahn1", "ASTM D4212, Zahn 1", Form.OFFSET, 1.1, 29, 35, 80, 25),
  ZAHN_2("zahn2", "ASTM D4212, Zahn 2", Form.OFFSET, 3.5, 14, 20, 80, 25),
  ZAHN_3("zahn3", "ASTM D4212, Zahn 3", Form.OFFSET, 11.7, 7.5, 20, 80, 25),
  ZAHN_4("zahn4", "ASTM D4212, Zahn 4", Form.OFFSET, 14.8, 5, 20, 80, 25),
  ZAHN_5("zahn5", "ASTM D4212, Zahn 5", Form.OFFSET, 23, 0, 20, 80, 25);

  private enum Form {
    /** ν = A t − B/t. */
    DIFFERENCE,
    /** ν = K (t − c). */
    OFFSET
  }

  private final String word;
  private final String title;
  private final Form form;
  private final double factor;
  private final double correction;
  private final double shortestS;
  private final double longestS;
  private final double tempC;

  FlowCup(
      String word,
      String title,
      Form form,
      double factor,
      double correction,
      double shortestS,
      double longestS,
      double tempC) {
    this.word = word;
    this.title = title;
    this.form = form;
    this.factor = factor;
    this.correction = correction;
    this.shortestS = shortestS;
    this.longestS = longestS;
    this.tempC = tempC;
  }

  /** The cup of a word such as {@code iso4}; capitals, blanks and # do not matter. */
  public static Optional<FlowCup> named(String text) {
    String asked = text.toLowerCase(java.util.Locale.ROOT).replaceAll("[ #-]", "");
    return Arrays.stream(values()).filter(cup -> cup.word.equals(asked)).findFirst();
  }

  /** The word a person types. */
  public String word() {
    return word;
  }

  /** Standard and cup as read on it. */
  public String title() {
    return title;
  }

  /** Temperature the standard measures at, °C. */
  public double tempC() {
    return tempC;
  }

  /** Shortest time the equation holds for, s. */
  public double shortestS() {
    return shortestS;
  }

  /** Longest time the equation holds for, s. */
  public double longestS() {
    return longestS;
  }

  /**
   * Kinematic viscosity, mm²/s, at the temperature the liquid ran at.
   *
   * @param seconds within the cup's own range
   */
  public double viscosityMm2PerS(double seconds) {
    if (!(seconds >= shortestS && seconds <= longestS)) {
      throw new OutOfRange(
          "%s is valid from %.0f to %.0f s, and this ran %.1f s; take a cup with a %s hole"
              .formatted(
                  title, shortestS, longestS, seconds, seconds < shortestS ? "smaller" : "wider"));
    }
    return form == Form.DIFFERENCE
        ? factor * seconds - correction / seconds
        : factor * (seconds - correction);
  }

  /** The time a liquid of that viscosity takes, s; nothing if that is outside the cup's range. */
  public OptionalDouble seconds(double viscosityMm2PerS) {
    OutOfRange.check("kinematic viscosity", viscosityMm2PerS, "mm²/s", 0, 1e6);
    double half = viscosityMm2PerS / (2 * factor);
    double seconds =
        form == Form.DIFFERENCE
            ? half + Math.sqrt(half * half + correction / factor)
            : viscosityMm2PerS / factor + correction;
    return seconds >= shortestS && seconds <= longestS
        ? OptionalDouble.of(seconds)
        : OptionalDouble.empty();
  }
}
