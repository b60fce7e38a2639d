package coatwright.journal;

import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Reads the form of a coat: one body for each part named. */
final class CoatForm {
  private static final Set<String> KEYS =
      Set.of("part", "jar", "start", "end", "room", "wetFilm", "wood", "method", "who", "same");

  /** A wet coat of any finish lies between; common practice, no source. */
  private static final double LEAST_WET_UM = 5;

  private static final double MOST_WET_UM = 1000;
  private static final double COLDEST_WOOD_C = -20;
  private static final double WARMEST_WOOD_C = 60;
  private static final Duration LONGEST_COAT = Duration.ofHours(12);

  private final Known known;
  private final Instant now;
  private final String defaultRoom;
  private final Form form;

  CoatForm(Known known, Instant now, String defaultRoom, Map<String, String> given) {
    this.known = known;
    this.now = now;
    this.defaultRoom = defaultRoom;
    this.form = new Form(given, KEYS);
  }

  /** Every coat the form describes, or a refusal with every fault. */
  List<Coat> coats() {
    Optional<Coat> last = last();
    List<PartPath> parts = parts();
    Optional<String> jar = jar(last);
    Optional<Instant> start = form.read("start", "start", known::past);
    Optional<Instant> end = form.read("end", "end", known::past);
    Optional<String> room = form.read("room", "room", known::room);
    Optional<Method> method = form.read("method", "method", known::method);
    Optional<Double> wetFilmUm = form.read("wetFilm", "wet film", CoatForm::wetFilmUm);
    Optional<Double> woodTempC = form.read("wood", "wood", CoatForm::woodTempC);
    checkTimes(start, end);
    Instant begun = start.orElse(now);
    Optional<Entry> filling = form.read(jar, "jar", (what, name) -> known.filling(name, begun));
    form.refuseFaults();
    List<Coat> coats = new ArrayList<>();
    for (PartPath part : parts) {
      coats.add(
          new Coat(
              part,
              jar.orElseThrow(),
              filling.orElseThrow().id(),
              begun,
              end,
              room.or(() -> last.map(Coat::room)).or(() -> pieceRoom(part)).orElse(defaultRoom),
              method.or(() -> last.map(Coat::method)).orElse(Method.BRUSH),
              wetFilmUm
                  .map(OptionalDouble::of)
                  .or(() -> last.map(Coat::wetFilmUm))
                  .orElse(OptionalDouble.empty()),
              woodTempC.map(OptionalDouble::of).orElse(OptionalDouble.empty()),
              form.text("who")));
    }
    return coats;
  }

  /** The coat written last, when the form says "the same again"; else nothing. */
  private Optional<Coat> last() {
    Optional<Boolean> same = form.read("same", "same", CoatForm::yesOrNo);
    if (!same.orElse(false)) {
      return Optional.empty();
    }
    Optional<Entry> newest =
        known.journal().coats().stream().max(java.util.Comparator.comparingLong(Pages::number));
    if (newest.isEmpty()) {
      form.fault("same", "no coat stands in the journal yet", "name the jar");
    }
    return newest.map(entry -> (Coat) entry.body());
  }

  private static boolean yesOrNo(String what, String text) {
    return switch (text) {
      case "true", "yes", "on", "1" -> true;
      case "false", "no", "off", "0" -> false;
      default ->
          throw RefusedInput.of(
              what + " \"" + text + "\"", "this is yes or no", "write yes or leave it out");
    };
  }

  private List<PartPath> parts() {
    Set<PartPath> parts = new LinkedHashSet<>();
    Optional<String> text = form.required("part", "name it like cabinet/left-door");
    for (String one : text.map(t -> t.split(",", -1)).orElse(new String[0])) {
      Optional<PartPath> path = form.read(Optional.of(one.strip()), "part", known::part);
      if (path.isPresent() && !parts.add(path.get())) {
        form.fault("part \"" + one.strip() + "\"", "this part is named twice", "name it once");
      }
    }
    return List.copyOf(parts);
  }

  private Optional<String> jar(Optional<Coat> last) {
    if (form.has("jar") || last.isEmpty()) {
      return form.read(
          form.required("jar", "name the jar, for example --jar J1"), "jar", known::jar);
    }
    return form.read(last.map(Coat::jar), "jar", known::jar);
  }

  private void checkTimes(Optional<Instant> start, Optional<Instant> end) {
    if (end.isEmpty()) {
      return;
    }
    String shownEnd = "end \"" + form.text("end").orElseThrow() + "\"";
    if (!form.has("start")) {
      form.fault(shownEnd, "a coat that has ended has a start", "say when it was begun");
    } else if (start.isPresent() && end.get().isBefore(start.get())) {
      form.fault(
          shownEnd,
          "this is before the start, " + known.time().shown(start.get()),
          "check both times; a coat over midnight needs yesterday or a date");
    } else if (start.isPresent()
        && Duration.between(start.get(), end.get()).compareTo(LONGEST_COAT) > 0) {
      form.fault(shownEnd, "this is more than 12 h after the start", "check the day of both times");
    }
  }

  private Optional<String> pieceRoom(PartPath part) {
    return known.journal().pieces().stream()
        .filter(piece -> piece.name().equals(part.piece()))
        .findFirst()
        .flatMap(Piece::room);
  }

  private static double wetFilmUm(String what, String text) {
    double filmUm = Quantities.lengthUm(what, text);
    if (!(filmUm >= LEAST_WET_UM && filmUm <= MOST_WET_UM)) {
      throw RefusedInput.of(
          what + " \"" + text + "\"",
          "a wet coat is from 5 to 1000 µm (0.2 to 39 mil)",
          "check the gauge");
    }
    return filmUm;
  }

  private static double woodTempC(String what, String text) {
    double tempC = Quantities.temperatureC(what, text);
    if (!(tempC >= COLDEST_WOOD_C && tempC <= WARMEST_WOOD_C)) {
      throw RefusedInput.of(
          what + " \"" + text + "\"",
          "wood in a shop is from -20 to 60 °C",
          "check the thermometer and the unit");
    }
    return tempC;
  }
}
