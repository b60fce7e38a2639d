package coatwright.journal;

import coatwright.quantity.RefusedInput;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** What a form may name: the shop's rooms and finishes, and what the journal already holds. */
final class Known {
  private static final int LONGEST_NAME = 60;
  private static final int OLDEST_YEAR = 1990;

  private final Journal journal;
  private final Clock clock;
  private final ZoneId zone;
  private final Set<String> finishes;
  private final List<String> rooms;
  private final ShopTime time;

  Known(Journal journal, Clock clock, ZoneId zone, Set<String> finishes, List<String> rooms) {
    this.journal = journal;
    this.clock = clock;
    this.zone = zone;
    this.finishes = new TreeSet<>(finishes);
    this.rooms = List.copyOf(rooms);
    this.time = new ShopTime(clock, zone);
  }

  Journal journal() {
    return journal;
  }

  ShopTime time() {
    return time;
  }

  /** A new name: short, and without the marks that part paths and lists of parts. */
  String newName(String what, String text) {
    boolean marks = text.chars().anyMatch(c -> c == '/' || c == ',' || Character.isISOControl(c));
    if (marks || text.length() > LONGEST_NAME || text.startsWith("-")) {
      throw RefusedInput.of(
          what + " \"" + text + "\"",
          "a name has at most " + LONGEST_NAME + " letters, no / or comma, and no - in front",
          "choose a name like cabinet or left-door");
    }
    return text;
  }

  String room(String what, String text) {
    return oneOf(what, text, rooms, "a room of this shop", "add rooms in the settings");
  }

  String finish(String what, String text) {
    return oneOf(
        what, text, finishes, "a finish this shop knows", "add a finish file to the settings");
  }

  Method method(String what, String text) {
    List<String> words = List.of("brush", "pad", "wipe", "spray");
    String word =
        oneOf(what, text.toLowerCase(Locale.ROOT), words, "a way to lay a coat", "use one of them");
    return Method.valueOf(word.toUpperCase(Locale.ROOT));
  }

  private static String oneOf(
      String what, String text, Collection<String> known, String kind, String otherwise) {
    if (known.contains(text)) {
      return text;
    }
    String remedy =
        Nearest.to(text, known).map(near -> "did you mean " + near + "?").orElse(otherwise);
    throw RefusedInput.of(
        what + " \"" + text + "\"",
        "this is not " + kind + " (" + String.join(", ", known) + ")",
        remedy);
  }

  String piece(String what, String text) {
    List<String> names = journal.pieces().stream().map(Piece::name).toList();
    if (names.contains(text)) {
      return text;
    }
    throw unknown(what, text, text, names, "coatwright piece new " + text);
  }

  /** A part or face that may take a coat: it, or the part it is a face of, is in the book. */
  PartPath part(String what, String text) {
    PartPath path = PartPath.parse(text);
    if (journal.part(path).isPresent()) {
      return path;
    }
    List<String> paths =
        journal.pieces().stream()
            .flatMap(piece -> journal.parts(piece.name()).stream())
            .map(part -> part.path().toString())
            .toList();
    throw unknown(what, text, path.toString(), paths, "coatwright part new " + path);
  }

  private static RefusedInput unknown(
      String what, String text, String name, Collection<String> known, String command) {
    String nearest = Nearest.to(name, known).map(near -> "; nearest is " + near).orElse("");
    return RefusedInput.of(
        what + " \"" + text + "\"", name + " is not known" + nearest, "enter it with: " + command);
  }

  /** The jar's name, if any filling of it stands. */
  String jar(String what, String text) {
    List<String> names =
        journal.jars().stream().map(entry -> ((Jar) entry.body()).name()).sorted().toList();
    if (names.contains(text)) {
      return text;
    }
    throw unknown(what, text, text, names, "coatwright jar new " + text + " --finish FINISH");
  }

  /**
   * The filling a coat begun then was laid from: the newest one opened by then. The first filling
   * without a date may have been opened any time.
   */
  Entry filling(String jar, Instant start) {
    List<Entry> fillings = journal.fillings(jar);
    for (int i = fillings.size() - 1; i >= 0; i--) {
      if (!openedAt(fillings.get(i), i == 0).isAfter(start)) {
        return fillings.get(i);
      }
    }
    Instant first = openedAt(fillings.get(0), true);
    throw RefusedInput.of(
        "start \"" + time.shown(start) + "\"",
        "the jar "
            + jar
            + " was opened on "
            + LocalDate.ofInstant(first, zone)
            + ", after this coat",
        "check the start, or enter the jar it was laid from");
  }

  private Instant openedAt(Entry filling, boolean first) {
    Optional<LocalDate> opened = ((Jar) filling.body()).opened();
    return opened
        .map(day -> day.atStartOfDay(zone).toInstant())
        .orElse(first ? Instant.MIN : filling.at());
  }

  LocalDate openedOn(String what, String text) {
    LocalDate day = time.day(what, text);
    if (day.isAfter(time.today())) {
      throw RefusedInput.of(
          what + " \"" + text + "\"", "this day has not come yet", "write the day it was opened");
    }
    if (day.getYear() < OLDEST_YEAR) {
      throw RefusedInput.of(
          what + " \"" + text + "\"", "this is before " + OLDEST_YEAR, "check the year");
    }
    return day;
  }

  Instant past(String what, String text) {
    Instant at = time.past(what, text);
    if (at.atZone(zone).getYear() < OLDEST_YEAR) {
      throw RefusedInput.of(
          what + " \"" + text + "\"", "this is before " + OLDEST_YEAR, "check the date");
    }
    return at;
  }

  LocalDate promise(String what, String text) {
    LocalDate day = time.day(what, text);
    LocalDate today = LocalDate.ofInstant(clock.instant(), zone);
    if (day.isBefore(today)) {
      throw RefusedInput.of(
          what + " \"" + text + "\"",
          "the day has passed; today is " + today,
          "promise today or a day to come, or leave it out");
    }
    return day;
  }
}
