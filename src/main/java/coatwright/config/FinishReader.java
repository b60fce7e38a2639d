package coatwright.config;

import coatwright.film.CureFacts;
import coatwright.film.CureMoment;
import coatwright.film.CureSigns;
import coatwright.film.Curing;
import coatwright.film.Drying;
import coatwright.film.Finish;
import coatwright.film.Layer;
import coatwright.quantity.Fault;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
    Section air = file.section("reference");
    DryingReader.ReferenceAir reference =
        new DryingReader.ReferenceAir(
            air.quantity("temperature", 20.0, Quantities::temperatureC),
            air.quantity("humidity", 50.0, Quantities::relativeHumidityPct));
    air.refuseOthers();
    BasisReader basis = new BasisReader(file);
    DryingReader family =
        DryingReader.of(file.choice("family", "evaporative", DryingReader.words()));
    Drying drying = family.read(file, reference, basis);
    Map<String, Double> wetFilmUm = wetFilms(file.section("wet-film"));
    Finish finish =
        new Finish(
            name,
            file.needed("title", "Pale dewaxed shellac"),
            layer(file, family.usualLayer()),
            drying,
            reference.tempC(),
            reference.rhPct(),
            wetFilmUm,
            file.number("wet-film-spread", 0.2, 0, 2),
            file.quantity("lowest-temperature", 5.0, Quantities::temperatureC),
            file.quantity("highest-temperature", 35.0, Quantities::temperatureC),
            recoatUntil(file, drying, wetFilmUm),
            file.quantity("test-due", 6, FinishReader::months),
            needed(file, "build-limit", "100um", Quantities::lengthUm),
            file.text("wax", ""),
            layers(file, "may-go-over"),
            layers(file, "may-go-under"),
            basis.sentences(),
            file.texts("cautions"));
    basis.refuseUnknown();
    file.refuseOthers();
    if (finish.lowestTempC() >= finish.highestTempC()) {
      file.fault("highest-temperature", "it is not above lowest-temperature", "change one of them");
    }
    return finish;
  }

  private static Layer layer(Section file, String usual) {
    String word = file.choice("layer", usual, Layer.words());
    return Layer.of(word).orElseThrow(() -> new IllegalStateException("no such layer: " + word));
  }

  private static List<Layer> layers(Section file, String key) {
    List<Layer> layers = new ArrayList<>();
    for (String word : file.texts(key)) {
      Optional<Layer> layer = Layer.of(word);
      if (layer.isEmpty()) {
        file.fault(
            key,
            "\"" + word + "\" is none of " + String.join(", ", Layer.words()),
            YamlText.nearest(word, Layer.words())
                .map(near -> "write " + near)
                .orElse("choose one of them"));
      }
      layer.ifPresent(layers::add);
    }
    return layers;
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

  /** Of a curing finish the model's, in its reference air at the usual brushed film. */
  private static OptionalDouble recoatUntil(
      Section file, Drying drying, Map<String, Double> wetFilmUm) {
    if (drying instanceof Curing curing) {
      double filmUm = wetFilmUm.getOrDefault("brush", 75.0);
      CureFacts facts = curing.facts();
      return CureReader.checked(
          file,
          "wet-film",
          OptionalDouble.empty(),
          () ->
              CureSigns.at(
                      curing,
                      CureMoment.of(
                          facts.referenceTempC(),
                          facts.referenceRhPct(),
                          facts.referenceTempC(),
                          filmUm))
                  .recoatUntilMin());
    }
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
