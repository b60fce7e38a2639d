package coatwright.quantity;

import java.util.function.DoubleUnaryOperator;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * Puts a finished sentence into a shop's units. The house reasons and writes in SI, a number, one
 * blank and the unit; this is the edge where such a sentence is printed for people. JSON is never
 * reworded.
 */
public final class Reworded {
  private static final String NUMBER = "(?<![\\w.])(-?\\d+(?:\\.\\d+)?)";
  private static final String SPAN = "(?:" + NUMBER + "( to | or |–))?" + NUMBER;
  private static final Pattern CELSIUS = Pattern.compile(SPAN + " °C");
  private static final Pattern KELVIN = Pattern.compile(SPAN + " K\\b");
  private static final Pattern BOTH_FILMS =
      Pattern.compile(NUMBER + " µm \\((\\d+(?:\\.\\d+)?) mil\\)");
  private static final Pattern MICROMETRES = Pattern.compile(NUMBER + " µm(?!\\))");
  private static final Pattern GRAMS = Pattern.compile(SPAN + " g/m³");

  private Reworded() {}

  /** The sentence in those units; what they do not change stays as it was. */
  public static String in(UnitSystem units, String sentence) {
    if (units == UnitSystem.METRIC) {
      return sentence;
    }
    String films = BOTH_FILMS.matcher(sentence).replaceAll("$2 mil ($1 µm)");
    String thick = MICROMETRES.matcher(films).replaceAll(Reworded::mil);
    return units == UnitSystem.IMPERIAL ? thick : degreesAndGrains(thick);
  }

  private static String degreesAndGrains(String sentence) {
    String degrees = replaced(sentence, CELSIUS, "°F", Conversions::fahrenheitFromCelsius, false);
    String steps = replaced(degrees, KELVIN, "°F", k -> k / Conversions.K_PER_F, true);
    return replaced(steps, GRAMS, "gr/ft³", g -> g / Conversions.G_M3_PER_GRAIN_FT3, true);
  }

  private static String mil(MatchResult um) {
    return Show.fixed(Double.parseDouble(um.group(1)) / Conversions.UM_PER_MIL, 1) + " mil";
  }

  private static String replaced(
      String sentence, Pattern pattern, String unit, DoubleUnaryOperator by, boolean finer) {
    return pattern
        .matcher(sentence)
        .replaceAll(
            found -> {
              String from =
                  found.group(1) == null ? "" : number(found.group(1), by, finer) + found.group(2);
              return from + number(found.group(3), by, finer) + " " + unit;
            });
  }

  /** As many decimals as it had; a whole step may need one more ("1 K" is "1.8 °F"). */
  private static String number(String text, DoubleUnaryOperator by, boolean finer) {
    int point = text.indexOf('.');
    int decimals = point < 0 ? 0 : text.length() - point - 1;
    String shown = Show.fixed(by.applyAsDouble(Double.parseDouble(text)), decimals);
    if (!finer || decimals > 0) {
      return shown;
    }
    String tenth = Show.fixed(by.applyAsDouble(Double.parseDouble(text)), 1);
    return tenth.endsWith(".0") ? tenth.substring(0, tenth.length() - 2) : tenth;
  }
}
