package coatwright.quantity;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** One kind of quantity a person types: its units, its sensible range and an example to show. */
final class Measure {
  /** A spelling of a unit, and value in the room's unit = (number + offset) × factor. */
  record Unit(String spellings, double factor, double offset) {
    static Unit of(String spellings, double factor) {
      return new Unit(spellings, factor, 0);
    }

    private double value(double number) {
      return (number + offset) * factor;
    }

    private String firstSpelling() {
      return spellings.split(" ", -1)[0];
    }
  }

  private final String kind;
  private final String example;
  private final double low;
  private final double high;
  private final String range;
  private final String unitNames;
  private final Map<String, Unit> unitBySpelling = new HashMap<>();
  private final Map<String, String> hintBySpelling = new HashMap<>();

  /**
   * @param kind with its article: "a temperature"
   * @param example what to type: "27C or 80F"
   * @param range the range in words, told when it is broken
   */
  Measure(String kind, String example, double low, double high, String range, Unit... units) {
    this.kind = kind;
    this.example = example;
    this.low = low;
    this.high = high;
    this.range = range;
    this.unitNames =
        Arrays.stream(units).map(Unit::firstSpelling).collect(Collectors.joining(", "));
    for (Unit unit : units) {
      for (String spelling : unit.spellings().split(" ", -1)) {
        unitBySpelling.put(folded(spelling), unit);
      }
    }
  }

  /** Adds a better remedy for a unit people type here by mistake. */
  Measure mistaken(String spellings, String remedy) {
    for (String spelling : spellings.split(" ", -1)) {
      hintBySpelling.put(folded(spelling), remedy);
    }
    return this;
  }

  double read(String what, String text) {
    String typed = text.strip();
    int end = StrictNumber.endOfNumber(typed, 0, '.');
    String unitText = folded(typed.substring(end).strip());
    if (end == 0) {
      throw refused(what, text, kind + " is a number with its unit", "write it like " + example);
    }
    Unit unit = unitBySpelling.get(unitText);
    if (unit == null) {
      throw unknownUnit(what, text, unitText);
    }
    OptionalDouble number = StrictNumber.parse(typed.substring(0, end), '.');
    double value = number.isPresent() ? unit.value(number.getAsDouble()) : Double.NaN;
    if (!(value >= low && value <= high)) {
      throw refused(what, text, kind + " here is " + range, "check the number and its unit");
    }
    return value;
  }

  private RefusedInput unknownUnit(String what, String text, String unitText) {
    if (unitText.isEmpty()) {
      return refused(what, text, kind + " needs its unit", "write it like " + example);
    }
    if (unitText.startsWith(",")) {
      return refused(what, text, "the decimal mark is a point", "write it like " + example);
    }
    String remedy = hintBySpelling.getOrDefault(unitText, "write it like " + example);
    return refused(what, text, kind + " is given in " + unitNames, remedy);
  }

  static RefusedInput refused(String what, String text, String rule, String remedy) {
    return new RefusedInput(List.of(Fault.of(what + " \"" + text + "\"", rule, remedy)));
  }

  /** Case and the look of the micro sign, the degree sign and small raised digits do not matter. */
  static String folded(String unitText) {
    return unitText
        .toLowerCase(Locale.ROOT)
        .replace('\u00b5', 'u')
        .replace('\u03bc', 'u')
        .replace("°", "")
        .replace("º", "")
        .replace('²', '2')
        .replace('³', '3')
        .replace(" ", "");
  }
}
