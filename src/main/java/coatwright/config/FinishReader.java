package coatwright.config;

import coatwright.film.Drying;
import coatwright.film.FilmParameters;
import coatwright.film.Finish;
import coatwright.film.SpiritDrying;
import coatwright.quantity.Fault;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads a finish from its file. */
final class FinishReader {
  private static final Pattern MONTHS = Pattern.compile("(\\d{1,3}) ?months?");
  private static final List<String> METHODS = List.of("brush", "pad", "wipe", "spray");

  private FinishReader() {}

  /**
   * The finish a file describes; with faults added, what is returned is only good for reading on.
   *
   * @param name the file's name without its ending
   */
  static Finish read(String name, Node root, List<Fault> faults) {
    Section file = Section.of("", root, faults);
    Section reference = file.section("reference");
    Finish finish =
        new Finish(
            name,
            file.needed("title", "Pale dewaxed shellac"),
            drying(file),
            reference.quantity("temperature", 20.0, Quantities::temperatureC),
            reference.quantity("humidity", 50.0, Quantities::relativeHumidityPct),
            wetFilms(file.section("wet-film")),
            file.number("wet-film-spread", 0.2, 0, 2),
            file.quantity("lowest-temperature", 5.0, Quantities::temperatureC),
            file.quantity("highest-temperature", 35.0, Quantities::temperatureC),
            recoatUntil(file),
            file.quantity("test-due", 6, FinishReader::months),
            needed(file, "build-limit", "100um", Quantities::lengthUm),
            file.text("wax", ""),
            file.texts("may-go-over"),
            file.texts("may-go-under"),
            file.texts("basis"),
            file.texts("cautions"));
    reference.refuseOthers();
    file.refuseOthers();
    if (finish.lowestTempC() >= finish.highestTempC()) {
      file.fault("highest-temperature", "it is not above lowest-temperature", "change one of them");
    }
    return finish;
  }

  private static Drying drying(Section file) {
    file.choice("family", "evaporative", List.of("evaporative"));
    file.choice("drying-set", "shellac", List.of("shellac"));
    boolean told = !file.needed("usual-cut", "1.5lb").isEmpty();
    double cutGPerL = told ? file.quantity("usual-cut", 180.0, Quantities::cutGPerL) : 180;
    double cutLnSd = file.number("cut-spread", 0.2, 0, 2);
    double strengthVolPct = file.quantity("spirit-strength", 95.0, Quantities::volumeFractionPct);
    try {
      return new SpiritDrying(FilmParameters.SHELLAC, cutGPerL, cutLnSd, strengthVolPct);
    } catch (OutOfRange outside) {
      file.fault(
          "usual-cut", String.valueOf(outside.getMessage()), "change it, or spirit-strength");
      return new SpiritDrying(FilmParameters.SHELLAC, 180, cutLnSd, 95);
    }
  }

  /** Names a finish may go by in a command and an address. */
  static boolean isName(String name) {
    return name.matches("[a-z0-9][a-z0-9-]*");
  }

  private static double needed(Section file, String key, String example, Reader reader) {
    String text = file.needed(key, example);
    return text.isEmpty() ? 1 : file.quantity(key, 1.0, reader::read);
  }

  private static Map<String, Double> wetFilms(Section films) {
    Map<String, Double> wetFilmUmByMethod = new HashMap<>();
    films.needed("brush", "75um");
    for (String method : METHODS) {
      films
          .optionalQuantity(method, Quantities::lengthUm)
          .ifPresent(um -> wetFilmUmByMethod.put(method, um));
    }
    films.refuseOthers();
    return wetFilmUmByMethod;
  }

  private static OptionalDouble recoatUntil(Section file) {
    return file.optionalQuantity(
        "recoat-until", (what, text) -> minutes(Quantities.duration(what, text)));
  }

  private static double minutes(Duration time) {
    return time.toSeconds() / 60.0;
  }

  private static int months(String what, String text) {
    Matcher months = MONTHS.matcher(text);
    if (!months.matches()) {
      Fault fault =
          new Fault(
              what + " \"" + text + "\"",
              "whole months are expected",
              "write it like 6 months",
              OptionalInt.empty());
      throw new RefusedInput(List.of(fault));
    }
    return Integer.parseInt(months.group(1));
  }

  /** Reads one quantity. */
  private interface Reader {
    double read(String what, String text);
  }
}
