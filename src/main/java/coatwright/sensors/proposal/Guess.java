package coatwright.sensors.proposal;

import coatwright.quantity.StrictNumber;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What a number may be, from its name, the unit beside it and its size. A guess is only ever shown;
 * whatever is not certain carries its doubt in words.
 *
 * @param quantity a word of the settings
 * @param unit a UCUM code
 * @param scale factor, 1 where none is needed
 * @param decimal the decimal mark
 * @param doubt what the person should look at; empty when name and unit say it themselves
 */
record Guess(String quantity, String unit, double scale, char decimal, Optional<String> doubt) {
  static final String AIR = "air-temperature";
  static final String WOOD = "surface-temperature";
  static final String RH = "relative-humidity";
  static final String LEVEL = "battery-level";
  static final String VOLTAGE = "battery-voltage";

  private static final Set<String> TEMPERATURES =
      Set.of(
          "temperature",
          "temp",
          "tmp",
          "t",
          "ta",
          "tair",
          "tc",
          "tf",
          "tempc",
          "tempf",
          "celsius",
          "fahrenheit",
          "temperatur",
          "degc",
          "degf");
  private static final Set<String> HUMIDITIES =
      Set.of(
          "humidity", "hum", "humi", "rh", "h", "relhum", "feuchte", "luftfeuchte", "hr", "relh");
  private static final Set<String> BATTERIES =
      Set.of("battery", "batt", "bat", "soc", "vbat", "vbatt", "vcc", "voltage", "cell");
  private static final Set<String> OF_WOOD =
      Set.of("probe", "probes", "surface", "wood", "board", "slab", "rack", "ds18b20", "panel");
  private static final Set<String> NOT_AIR =
      Set.of(
          "dew",
          "dewpoint",
          "index",
          "heat",
          "feels",
          "apparent",
          "outdoor",
          "cpu",
          "chip",
          "core",
          "target",
          "setpoint",
          "min",
          "max",
          "pressure",
          "press",
          "gas",
          "co2",
          "offset",
          "mcu");
  private static final Map<String, String> UNIT_TEXTS =
      Map.of(
          "c", "Cel", "°c", "Cel", "*c", "Cel", "cel", "Cel", "f", "[degF]", "°f", "[degF]", "*f",
          "[degF]", "k", "K", "%", "%");

  /** The numbers a member or column held, by the mark that reads them; empty when it holds none. */
  record Numbers(List<Double> values, char decimal) {
    static Optional<Numbers> of(List<String> texts) {
      for (char mark : new char[] {'.', ','}) {
        List<Double> values = new ArrayList<>();
        for (String text : texts) {
          OptionalDouble value = StrictNumber.parse(text, mark);
          value.ifPresent(values::add);
        }
        if (!values.isEmpty() && values.size() * 2 > texts.size()) {
          return Optional.of(new Numbers(values, mark));
        }
      }
      return Optional.empty();
    }

    boolean within(double low, double high) {
      return values.stream().allMatch(value -> value >= low && value <= high);
    }

    boolean whole() {
      return values.stream().allMatch(value -> value == Math.rint(value));
    }

    double last() {
      return values.get(values.size() - 1);
    }
  }

  /** The unit a text beside a number means; empty when it means none. */
  static Optional<String> unitOf(String text) {
    return Optional.ofNullable(UNIT_TEXTS.get(text.strip().toLowerCase(Locale.ROOT)));
  }

  /** The words of a path, topic or label; at least one, which may be empty. */
  static List<String> words(String name) {
    List<String> words =
        List.of(
            name.replaceAll("([a-z])([A-Z])", "$1 $2")
                .toLowerCase(Locale.ROOT)
                .split("[^a-z0-9%°*]+"));
    return words.isEmpty() ? List.of("") : words;
  }

  /**
   * @param name path, topic or label; its last word counts most
   * @param unitText what stands beside the number
   */
  static Optional<Guess> of(String name, Optional<String> unitText, Numbers numbers) {
    List<String> words = words(name);
    String last = words.get(words.size() - 1);
    String named = words.stream().filter(Guess::isKnown).reduce((a, b) -> b).orElse("");
    if (words.stream().anyMatch(NOT_AIR::contains)) {
      return Optional.empty();
    }
    Optional<String> unit = unitText.flatMap(Guess::unitOf).or(() -> unitInName(words, last));
    if (BATTERIES.contains(named)) {
      return battery(named, numbers);
    }
    if (HUMIDITIES.contains(named) || (named.isEmpty() && unit.filter("%"::equals).isPresent())) {
      return humidity(numbers);
    }
    if (TEMPERATURES.contains(named)
        || (named.isEmpty() && unit.filter(u -> !u.equals("%")).isPresent())) {
      boolean wood = words.stream().anyMatch(OF_WOOD::contains);
      return Optional.of(temperature(wood, unit, numbers));
    }
    return Optional.empty();
  }

  private static boolean isKnown(String word) {
    return TEMPERATURES.contains(word) || HUMIDITIES.contains(word) || BATTERIES.contains(word);
  }

  private static Optional<String> unitInName(List<String> words, String last) {
    if (Set.of("c", "celsius", "degc", "tempc", "tc").contains(last)) {
      return Optional.of("Cel");
    }
    if (Set.of("f", "fahrenheit", "degf", "tempf", "tf").contains(last)) {
      return Optional.of("[degF]");
    }
    return words.contains("kelvin") ? Optional.of("K") : Optional.empty();
  }

  private static Guess temperature(boolean wood, Optional<String> unit, Numbers numbers) {
    String quantity = wood ? WOOD : AIR;
    Optional<String> doubt =
        wood
            ? Optional.of(
                "taken for a probe on wood by its name; if it hangs in the air write " + AIR)
            : Optional.empty();
    if (unit.isPresent()) {
      return new Guess(quantity, unit.get(), 1, numbers.decimal(), doubt);
    }
    double value = numbers.last();
    if (numbers.within(258, 323) && !numbers.whole()) {
      return new Guess(
          quantity, "K", 1, numbers.decimal(), with(doubt, shown(value) + " looks like kelvin"));
    }
    for (int scale : new int[] {10, 100}) {
      if (numbers.whole() && numbers.within(110, 450.0 * scale / 10) && value / scale >= 5) {
        return new Guess(
            quantity,
            "Cel",
            1.0 / scale,
            numbers.decimal(),
            with(
                doubt,
                "%s looks like %s °C times %d"
                    .formatted(shown(value), shown(value / scale), scale)));
      }
    }
    if (numbers.within(46, 115)) {
      return new Guess(
          quantity,
          "[degF]",
          1,
          numbers.decimal(),
          with(
              doubt,
              "%s is too hot for a room in °C, so °F is taken (%s °C); compare with a thermometer"
                  .formatted(shown(value), shown((value - 32) / 1.8))));
    }
    return new Guess(
        quantity,
        "Cel",
        1,
        numbers.decimal(),
        with(
            doubt,
            "the payload does not say °C or °F; %s °C is taken, as °F it would be %s °C; compare with "
                    .formatted(shown(value), shown((value - 32) / 1.8))
                + "a thermometer"));
  }

  private static Optional<Guess> humidity(Numbers numbers) {
    if (numbers.within(0, 1) && !numbers.whole()) {
      return Optional.of(
          new Guess(
              RH,
              "1",
              1,
              numbers.decimal(),
              Optional.of(
                  shown(numbers.last()) + " looks like a fraction of 1, not like percent")));
    }
    if (numbers.within(0, 103)) {
      return Optional.of(new Guess(RH, "%", 1, numbers.decimal(), Optional.empty()));
    }
    for (int scale : new int[] {10, 100}) {
      if (numbers.whole() && numbers.within(0, 103.0 * scale)) {
        return Optional.of(
            new Guess(
                RH,
                "%",
                1.0 / scale,
                numbers.decimal(),
                Optional.of(
                    "%s looks like %s %% times %d"
                        .formatted(shown(numbers.last()), shown(numbers.last() / scale), scale))));
      }
    }
    return Optional.empty();
  }

  private static Optional<Guess> battery(String named, Numbers numbers) {
    boolean volts = Set.of("vbat", "vbatt", "vcc", "voltage").contains(named);
    if (numbers.within(1500, 15_000)) {
      return Optional.of(new Guess(VOLTAGE, "mV", 1, numbers.decimal(), Optional.empty()));
    }
    if (volts && numbers.within(0.5, 15)) {
      return Optional.of(new Guess(VOLTAGE, "V", 1, numbers.decimal(), Optional.empty()));
    }
    if (!volts && !numbers.whole() && numbers.within(1.5, 5)) {
      return Optional.of(
          new Guess(
              VOLTAGE,
              "V",
              1,
              numbers.decimal(),
              Optional.of(shown(numbers.last()) + " looks like a cell's volts, not like percent")));
    }
    return !volts && numbers.within(0, 100)
        ? Optional.of(new Guess(LEVEL, "%", 1, numbers.decimal(), Optional.empty()))
        : Optional.empty();
  }

  private static final String UNNAMED =
      "nothing names this number; breathe on the sensor and listen again: the humidity is the one "
          + "that jumps up";

  /** A number nobody names, taken for a temperature; empty where it can be none. */
  static Optional<Guess> unnamedTemperature(Numbers numbers) {
    if (!numbers.within(-30, 115)) {
      return Optional.empty();
    }
    Guess guess = temperature(false, Optional.empty(), numbers);
    return Optional.of(
        new Guess(
            guess.quantity(),
            guess.unit(),
            guess.scale(),
            guess.decimal(),
            with(Optional.of(UNNAMED), guess.doubt())));
  }

  /** A number nobody names, taken for a humidity; empty where it can be none. */
  static Optional<Guess> unnamedHumidity(Numbers numbers) {
    return humidity(numbers)
        .map(
            guess ->
                new Guess(
                    RH,
                    guess.unit(),
                    guess.scale(),
                    guess.decimal(),
                    with(Optional.of(UNNAMED), guess.doubt())));
  }

  /**
   * Which of several numbers nobody names would be temperature and humidity: the first that would
   * do as °C in a room (else as °F), and the first other that would do as humidity.
   *
   * @return the guess at its index; empty lists where nothing would do
   */
  static List<Optional<Guess>> unnamed(List<Numbers> all) {
    List<Optional<Guess>> guesses = new ArrayList<>();
    all.forEach(each -> guesses.add(Optional.empty()));
    int t = first(all, -1, -10, 45);
    t = t < 0 ? first(all, -1, 46, 115) : t;
    if (t < 0) {
      return guesses;
    }
    guesses.set(t, unnamedTemperature(all.get(t)));
    int rh = first(all, t, 8, 98);
    if (rh >= 0) {
      guesses.set(rh, unnamedHumidity(all.get(rh)));
    }
    return guesses;
  }

  private static int first(List<Numbers> all, int not, double low, double high) {
    for (int i = 0; i < all.size(); i++) {
      if (i != not && all.get(i).within(low, high)) {
        return i;
      }
    }
    return -1;
  }

  private static Optional<String> with(Optional<String> first, Optional<String> second) {
    return second.isEmpty() ? first : with(first, second.get());
  }

  private static Optional<String> with(Optional<String> first, String second) {
    return Optional.of(first.map(each -> each + "; " + second).orElse(second));
  }

  static String shown(double value) {
    double step = Math.abs(value) < 2 ? 100 : 10;
    double rounded = Math.round(value * step) / step;
    return rounded == Math.rint(rounded) ? Long.toString((long) rounded) : Double.toString(rounded);
  }

  boolean isTemperature() {
    return quantity.equals(AIR) || quantity.equals(WOOD);
  }
}
