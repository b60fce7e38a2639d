package coatwright.outlook;

import coatwright.air.StandardAtmosphere;
import coatwright.film.Finish;
import coatwright.journal.Method;
import coatwright.journal.Retarder;
import coatwright.quantity.Fault;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.Show;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleBiFunction;

/**
 * Reads a described coat from what a person typed, in a command or a form. Keys are the command's
 * option names: {@code finish air wood cut wetFilm strength retarder draught coatsBefore interval
 * pressure altitude method board}. Every quantity carries its unit; all faults are told together.
 */
public final class OutlookForm {
  private static final Set<String> KEYS =
      Set.of(
          "finish",
          "air",
          "wood",
          "cut",
          "wetFilm",
          "strength",
          "retarder",
          "draught",
          "coatsBefore",
          "interval",
          "pressure",
          "altitude",
          "method",
          "board");
  private static final double STILL_M_PER_S = 0.1;
  private static final Map<String, Double> DRAUGHTS =
      Map.of("still", STILL_M_PER_S, "light", 0.5, "brisk", 1.5);
  private static final double SEA_LEVEL_PA = 101_325;
  private static final double USUAL_BOARD_MM = 18;
  private static final double USUAL_INTERVAL_MIN = 15;
  private static final double MOST_RETARDER_PCT = 10;
  private static final int MOST_COATS_BEFORE = 39;

  private final Map<String, String> form;
  private final List<Fault> faults = new ArrayList<>();
  private final List<String> assumptions = new ArrayList<>();

  private OutlookForm(Map<String, String> form) {
    this.form = form;
  }

  /**
   * Reads the form.
   *
   * @param form keys as above; blank counts as not given
   * @param finishes the shop's finishes by name
   * @throws RefusedInput naming every fault
   */
  public static OutlookRequest read(Map<String, String> form, Map<String, Finish> finishes) {
    return new OutlookForm(form).read(finishes);
  }

  private OutlookRequest read(Map<String, Finish> finishes) {
    for (String key : new TreeSet<>(form.keySet())) {
      if (!KEYS.contains(key)) {
        fault(
            key,
            "is not asked for here",
            "leave it out; known are " + String.join(", ", new TreeSet<>(KEYS)));
      }
    }
    Optional<Finish> finish = finish(finishes);
    double[] air = air();
    OptionalDouble wood =
        within("wood", "wood temperature", Quantities::temperatureC, -5, 45, "°C");
    OptionalDouble cut = within("cut", "cut", Quantities::cutGPerL, 20, 600, "g/L");
    OptionalDouble wet = within("wetFilm", "wet film", Quantities::lengthUm, 10, 300, "µm");
    OptionalDouble strength =
        within(
            "strength", "spirit strength", Quantities::volumeFractionPct, 80, 99.95, "% by volume");
    OptionalDouble board = within("board", "board thickness", Quantities::lengthMm, 2, 200, "mm");
    Optional<Retarder> retarder = retarder();
    double draught = draught();
    int coatsBefore = coatsBefore();
    double intervalMin = intervalMin();
    double pressurePa = pressurePa();
    String method = method();
    finish.ifPresent(this::refuseSpirit);
    if (!faults.isEmpty()) {
      throw new RefusedInput(faults);
    }
    return new OutlookRequest(
        finish.orElseThrow(),
        air[0],
        air[1],
        pressurePa,
        0,
        0,
        wood,
        0,
        cut,
        wet,
        method,
        strength,
        retarder.flatMap(OutlookForm::simulated).orElse(0.0),
        retarder.flatMap(Retarder::drops),
        draught,
        coatsBefore,
        intervalMin,
        board.orElse(USUAL_BOARD_MM),
        OptionalDouble.empty(),
        assumptions);
  }

  /** A cut, a spirit strength and a retarder belong to finishes dissolved in spirit. */
  private void refuseSpirit(Finish finish) {
    for (String key : SpiritOnly.KEYS) {
      given(key).flatMap(text -> SpiritOnly.refused(finish, key, text)).ifPresent(faults::add);
    }
  }

  private Optional<String> given(String key) {
    String text = form.get(key);
    return text == null || text.isBlank() ? Optional.empty() : Optional.of(text.strip());
  }

  private void fault(String input, String rule, String remedy) {
    faults.add(Fault.of(input, rule, remedy));
  }

  private OptionalDouble within(
      String key,
      String what,
      ToDoubleBiFunction<String, String> reader,
      double low,
      double high,
      String unit) {
    Optional<String> text = given(key);
    return text.isEmpty()
        ? OptionalDouble.empty()
        : checked(what, text.get(), reader, low, high, unit);
  }

  private OptionalDouble checked(
      String what,
      String text,
      ToDoubleBiFunction<String, String> reader,
      double low,
      double high,
      String unit) {
    try {
      double value = reader.applyAsDouble(what, text);
      if (value >= low && value <= high) {
        return OptionalDouble.of(value);
      }
      fault(
          what + " \"" + text + "\"",
          "the film model holds from " + plain(low) + " to " + plain(high) + " " + unit,
          "check the number and its unit");
    } catch (RefusedInput refused) {
      faults.addAll(refused.faults());
    }
    return OptionalDouble.empty();
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? Show.fixed(value, 0) : Double.toString(value);
  }

  private Optional<Finish> finish(Map<String, Finish> finishes) {
    String known = String.join(", ", new TreeSet<>(finishes.keySet()));
    Optional<String> name = given("finish");
    if (name.isEmpty()) {
      fault("finish", "is missing", "name one of " + known);
      return Optional.empty();
    }
    Finish finish = finishes.get(name.get());
    if (finish == null) {
      fault(
          "finish \"" + name.get() + "\"",
          "has no file in config/finishes",
          "name one of " + known);
    }
    return Optional.ofNullable(finish);
  }

  private double[] air() {
    Optional<String> text = given("air");
    if (text.isEmpty()) {
      fault("air", "is missing", "write temperature and humidity like 27C,65%");
      return new double[2];
    }
    String[] two = text.get().split(",", -1);
    if (two.length != 2) {
      fault(
          "air \"" + text.get() + "\"",
          "is a temperature and a humidity with a comma between",
          "write it like 27C,65%");
      return new double[2];
    }
    OptionalDouble tempC =
        checked("air temperature", two[0].strip(), Quantities::temperatureC, -5, 45, "°C");
    OptionalDouble rhPct =
        checked("relative humidity", two[1].strip(), Quantities::relativeHumidityPct, 3, 100, "%");
    return new double[] {tempC.orElse(0), rhPct.orElse(0)};
  }

  private Optional<Retarder> retarder() {
    Optional<String> text = given("retarder");
    try {
      Optional<Retarder> read = text.map(t -> Retarder.parse("retarder", t));
      if (read.flatMap(OutlookForm::simulated).orElse(0.0) > MOST_RETARDER_PCT) {
        fault(
            "retarder \"" + text.orElse("") + "\"",
            "the film model holds up to " + plain(MOST_RETARDER_PCT) + " % of the solution",
            "give a smaller dose");
      }
      return read;
    } catch (RefusedInput refused) {
      faults.addAll(refused.faults());
      return Optional.empty();
    }
  }

  private static Optional<Double> simulated(Retarder retarder) {
    return retarder.volPct().isPresent()
        ? Optional.of(retarder.volPct().getAsDouble())
        : Optional.empty();
  }

  private double draught() {
    Optional<String> text = given("draught");
    if (text.isEmpty()) {
      return STILL_M_PER_S;
    }
    Double named = DRAUGHTS.get(text.get().toLowerCase(Locale.ROOT));
    if (named != null) {
      return named;
    }
    if (!Character.isDigit(text.get().charAt(0))) {
      fault(
          "draught \"" + text.get() + "\"",
          "is still, light, brisk or an air speed",
          "write still (0.1 m/s), light (0.5), brisk (1.5) or a speed like 0.3m/s");
      return 0;
    }
    return checked("draught", text.get(), Quantities::airSpeedMPerS, 0, 3, "m/s").orElse(0);
  }

  private int coatsBefore() {
    Optional<String> text = given("coatsBefore");
    if (text.isEmpty()) {
      return 0;
    }
    boolean number = text.get().length() <= 3 && text.get().chars().allMatch(Character::isDigit);
    int coats = number ? Integer.parseInt(text.get()) : -1;
    if (coats < 0 || coats > MOST_COATS_BEFORE) {
      fault(
          "coats before \"" + text.get() + "\"",
          "is a whole number from 0 to " + MOST_COATS_BEFORE,
          "write it like 3");
      return 0;
    }
    return coats;
  }

  private double intervalMin() {
    Optional<String> text = given("interval");
    if (text.isEmpty()) {
      return USUAL_INTERVAL_MIN;
    }
    try {
      Duration interval = Quantities.duration("interval", text.get());
      double minutes = interval.toSeconds() / 60.0;
      if (minutes >= 1 && minutes <= 60 * 24 * 30) {
        return minutes;
      }
      fault(
          "interval \"" + text.get() + "\"", "lies between 1 min and 30 d", "write it like 15min");
    } catch (RefusedInput refused) {
      faults.addAll(refused.faults());
    }
    return USUAL_INTERVAL_MIN;
  }

  private double pressurePa() {
    Optional<String> altitude = given("altitude");
    if (given("pressure").isPresent() && altitude.isPresent()) {
      fault("pressure and altitude", "tell the same thing twice", "give one of them");
      return SEA_LEVEL_PA;
    }
    OptionalDouble metres = within("altitude", "altitude", Quantities::altitudeM, -500, 5000, "m");
    if (metres.isPresent()) {
      return StandardAtmosphere.pressurePa(metres.getAsDouble());
    }
    return within("pressure", "air pressure", Quantities::pressurePa, 50_000, 110_000, "Pa")
        .orElse(SEA_LEVEL_PA);
  }

  private String method() {
    String word = given("method").orElse("brush").toLowerCase(Locale.ROOT);
    List<String> known = Arrays.stream(Method.values()).map(Method::toString).toList();
    if (!known.contains(word)) {
      fault("method \"" + word + "\"", "is not known", "write one of " + String.join(", ", known));
    }
    return word;
  }
}
