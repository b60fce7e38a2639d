package coatwright.journal;

import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;

/** Reads the form of an observation on a part or on one coat of it. */
final class NoteForm {
  private static final Set<String> KEYS = Set.of("part", "coat", "what", "at", "text", "who");
  private static final double MOST_RESIDUE_PCT = 60;
  private static final double COLDEST_STORE_C = -30;
  private static final double WARMEST_STORE_C = 60;
  private static final Pattern ENTRY_ID = Pattern.compile("e[0-9]+");
  private static final String GRAMMAR =
      "write clouded=0..5, cleared, tacky, touch|thumbnail|powder|smell|print=pass|fail,"
          + " rubbed-out=fine|not-fine, weighed=3.2% or carried-in=8C";

  /** What was seen, before it is tied to a part. */
  private record Seen(
      Observation.What what,
      OptionalInt grade,
      Optional<Boolean> passed,
      OptionalDouble residuePct,
      OptionalDouble storedTempC) {
    Seen(Observation.What what, OptionalInt grade, Optional<Boolean> passed) {
      this(what, grade, passed, OptionalDouble.empty(), OptionalDouble.empty());
    }
  }

  /** The finished observation and when it was made. */
  record Note(Observation observation, Instant at, Optional<String> who) {}

  private final Known known;
  private final Instant now;
  private final Form form;

  NoteForm(Known known, Instant now, Map<String, String> given) {
    this.known = known;
    this.now = now;
    this.form = new Form(given, KEYS);
  }

  Note note() {
    Optional<Entry> coat = coat();
    Optional<PartPath> part = coat.map(entry -> ((Coat) entry.body()).part());
    if (!namesACoat()) {
      part =
          form.read(
              form.required("part", "name the part or the coat, like cabinet/left-door or e12"),
              "part",
              known::part);
    }
    Optional<Seen> seen =
        form.read(form.required("what", GRAMMAR), "what", (what, text) -> seen(text));
    Optional<Instant> at = form.read("at", "at", known::past);
    Instant when = at.orElse(now);
    coat.ifPresent(entry -> checkAfter((Coat) entry.body(), when));
    form.refuseFaults();
    Seen saw = seen.orElseThrow();
    Observation observation =
        new Observation(
            part.orElseThrow(),
            coat.map(Entry::id),
            saw.what(),
            saw.grade(),
            saw.passed(),
            form.text("text"),
            saw.residuePct(),
            saw.storedTempC());
    return new Note(observation, when, form.text("who"));
  }

  private boolean namesACoat() {
    return form.has("coat")
        || form.text("part").filter(text -> ENTRY_ID.matcher(text).matches()).isPresent();
  }

  private Optional<Entry> coat() {
    if (!namesACoat()) {
      return Optional.empty();
    }
    Optional<String> id = form.has("coat") ? form.text("coat") : form.text("part");
    return form.read(id, "coat", this::standingCoat);
  }

  private Entry standingCoat(String what, String id) {
    Optional<Entry> entry = known.journal().entry(id);
    if (entry.isEmpty() || !(entry.get().body() instanceof Coat)) {
      throw RefusedInput.of(
          what + " \"" + id + "\"",
          "no coat has this number",
          "look it up on the piece's page, or name the part");
    }
    Optional<Entry> strike = known.journal().struckBy(id);
    if (strike.isPresent()) {
      throw RefusedInput.of(
          what + " \"" + id + "\"",
          "this coat was struck out by " + strike.get().id(),
          "note it on a coat that stands, or strike " + strike.get().id() + " first");
    }
    return entry.get();
  }

  private void checkAfter(Coat coat, Instant when) {
    if (when.isBefore(coat.start())) {
      form.fault(
          "at \"" + known.time().shown(when) + "\"",
          "this is before the coat was begun, " + known.time().shown(coat.start()),
          "check the time, or name the coat before it");
    }
  }

  private static Seen seen(String text) {
    String[] sides = text.toLowerCase(Locale.ROOT).split("=", 2);
    String word = sides[0].strip();
    String value = sides.length > 1 ? sides[1].strip() : "";
    return switch (word) {
      case "clouded" ->
          new Seen(Observation.What.CLOUDED, OptionalInt.of(grade(text, value)), Optional.empty());
      case "cleared" -> bare(text, value, Observation.What.CLEARED);
      case "tacky" -> bare(text, value, Observation.What.TACKY);
      case "touch", "thumbnail", "powder", "smell", "print" ->
          new Seen(
              Observation.What.valueOf(word.toUpperCase(Locale.ROOT)),
              OptionalInt.empty(),
              Optional.of(oneOfTwo(text, value, "pass", "fail")));
      case "rubbed-out" ->
          new Seen(
              Observation.What.RUBBED_OUT,
              OptionalInt.empty(),
              Optional.of(oneOfTwo(text, value, "fine", "not-fine")));
      case "weighed" ->
          new Seen(
              Observation.What.WEIGHED,
              OptionalInt.empty(),
              Optional.empty(),
              OptionalDouble.of(residue(text, value)),
              OptionalDouble.empty());
      case "carried-in" ->
          new Seen(
              Observation.What.CARRIED_IN,
              OptionalInt.empty(),
              Optional.empty(),
              OptionalDouble.empty(),
              OptionalDouble.of(stored(text, value)));
      default -> throw unreadable(text, "this is no observation the journal knows");
    };
  }

  private static Seen bare(String text, String value, Observation.What what) {
    if (!value.isEmpty()) {
      throw unreadable(text, what + " stands alone");
    }
    return new Seen(what, OptionalInt.empty(), Optional.empty());
  }

  private static int grade(String text, String value) {
    if (!value.matches("[0-5]")) {
      throw unreadable(text, "clouding is graded 0 (clear) to 5 (white)");
    }
    return value.charAt(0) - '0';
  }

  private static double stored(String text, String value) {
    double tempC = Quantities.temperatureC("what \"" + text + "\"", value);
    if (!(tempC >= COLDEST_STORE_C && tempC <= WARMEST_STORE_C)) {
      throw unreadable(text, "wood is stored between -30 and 60 °C");
    }
    return tempC;
  }

  private static double residue(String text, String value) {
    double pct = Quantities.percent("what \"" + text + "\"", value);
    if (pct > MOST_RESIDUE_PCT) {
      throw unreadable(text, "a film that can be weighed holds at most 60 % solvent");
    }
    return pct;
  }

  private static boolean oneOfTwo(String text, String value, String good, String bad) {
    if (!value.equals(good) && !value.equals(bad)) {
      throw unreadable(text, "its outcome is " + good + " or " + bad);
    }
    return value.equals(good);
  }

  private static RefusedInput unreadable(String text, String rule) {
    return RefusedInput.of("what \"" + text + "\"", rule, GRAMMAR);
  }
}
