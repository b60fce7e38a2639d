package coatwright.journal;

import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The shop's forms. A form is read whole, every fault is told at once, and only a faultless one is
 * written: all its lines or none. One form at a time, so that two people cannot enter the same name
 * between check and writing.
 */
public final class ShopForms implements Forms {
  private static final double MOST_AREA_M2 = 200;
  private static final double THINNEST_MM = 0.3;
  private static final double THICKEST_MM = 300;
  private static final double THINNEST_CUT_G_PER_L = 5;
  private static final double WEAKEST_SPIRIT_PCT = 30;

  private final Journal journal;
  private final Clock clock;
  private final String defaultRoom;
  private final FinishNames finishes;
  private final Known known;

  /**
   * @param zone the shop's own; typed times are read on its clock
   * @param finishes what a jar may hold
   * @param rooms the shop's rooms
   * @param defaultRoom where a coat is laid when neither form nor piece says
   */
  public ShopForms(
      Journal journal,
      Clock clock,
      ZoneId zone,
      FinishNames finishes,
      List<String> rooms,
      String defaultRoom) {
    if (!rooms.contains(defaultRoom)) {
      throw new IllegalArgumentException(
          "the default room " + defaultRoom + " is not among " + rooms);
    }
    this.journal = journal;
    this.clock = clock;
    this.defaultRoom = defaultRoom;
    this.finishes = finishes;
    this.known = new Known(journal, clock, zone, finishes.sorted(), rooms);
  }

  @Override
  public synchronized List<Entry> piece(Map<String, String> given) {
    Form form = new Form(given, Set.of("name", "room", "promise", "who", "at"));
    Optional<String> name =
        form.read(form.required("name", "name the piece, like cabinet"), "name", known::newName);
    name.flatMap(this::pieceEntry)
        .ifPresent(entry -> known(form, "name \"" + name.orElseThrow() + "\"", entry));
    Optional<String> room = form.read("room", "room", known::room);
    Optional<LocalDate> promise = form.read("promise", "promise", known::promise);
    Optional<Instant> at = form.read("at", "at", known::past);
    form.refuseFaults();
    return write(at, form.text("who"), new Piece(name.orElseThrow(), room, promise));
  }

  @Override
  public synchronized List<Entry> part(Map<String, String> given) {
    Form form = new Form(given, Set.of("part", "area", "thickness", "species", "who", "at"));
    Optional<PartPath> path =
        form.read(
            form.required("part", "name it like cabinet/left-door"), "part", this::newPartPath);
    path.flatMap(this::partEntry)
        .ifPresent(entry -> known(form, "part \"" + path.orElseThrow() + "\"", entry));
    Optional<Double> areaM2 = form.read("area", "area", ShopForms::areaM2);
    Optional<Double> thicknessMm = form.read("thickness", "thickness", ShopForms::thicknessMm);
    Optional<Instant> at = form.read("at", "at", known::past);
    form.refuseFaults();
    return write(
        at,
        form.text("who"),
        new Part(
            path.orElseThrow(), optional(areaM2), optional(thicknessMm), form.text("species")));
  }

  @Override
  public synchronized List<Entry> jar(Map<String, String> given) {
    Form form =
        new Form(
            given, Set.of("name", "finish", "cut", "strength", "opened", "retarder", "who", "at"));
    Optional<String> name =
        form.read(form.required("name", "name the jar, like J1"), "name", known::newName);
    Optional<String> finish =
        form.read(
            form.required("finish", "name the finish, like shellac-pale"), "finish", known::finish);
    Optional<String> cutText = form.text("cut").filter(text -> !text.equalsIgnoreCase("unknown"));
    Optional<Double> cutGPerL = form.read(cutText, "cut", ShopForms::cutGPerL);
    Optional<Double> strengthPct = form.read("strength", "strength", ShopForms::strengthPct);
    Optional<LocalDate> opened = form.read("opened", "opened", known::openedOn);
    Optional<String> retarderText =
        form.text("retarder").filter(text -> !text.equalsIgnoreCase("none"));
    Optional<Retarder> retarder = form.read(retarderText, "retarder", Retarder::parse);
    Optional<Instant> at = form.read("at", "at", known::past);
    finish.ifPresent(
        f -> {
          form.read(cutText, "cut", (key, text) -> finishes.onlyDissolved(f, key, text));
          form.read("strength", "strength", (key, text) -> finishes.onlyDissolved(f, key, text));
          form.read(retarderText, "retarder", (key, text) -> finishes.onlyDissolved(f, key, text));
        });
    form.refuseFaults();
    return write(
        at,
        form.text("who"),
        new Jar(
            name.orElseThrow(),
            finish.orElseThrow(),
            optional(cutGPerL),
            optional(strengthPct),
            opened,
            retarder.map(Retarder::toString)));
  }

  @Override
  public synchronized List<Entry> coat(Map<String, String> given) {
    Instant now = clock.instant();
    List<Ledger.Line> lines = new ArrayList<>();
    for (Coat coat : new CoatForm(known, now, defaultRoom, given).coats()) {
      lines.add(new Ledger.Line(coat.start(), now, coat.who(), coat));
    }
    return journal.write(lines);
  }

  @Override
  public synchronized List<Entry> note(Map<String, String> given) {
    NoteForm.Note note = new NoteForm(known, clock.instant(), given).note();
    return write(Optional.of(note.at()), note.who(), note.observation());
  }

  @Override
  public synchronized List<Entry> strike(Map<String, String> given) {
    Form form = new Form(given, Set.of("entry", "reason", "who"));
    Optional<String> id =
        form.read(form.required("entry", "name the entry, like e12"), "entry", this::standingEntry);
    Optional<String> reason = form.required("reason", "say why, in a few words");
    form.refuseFaults();
    return write(
        Optional.empty(), form.text("who"), new Strike(id.orElseThrow(), reason.orElseThrow()));
  }

  private List<Entry> write(Optional<Instant> at, Optional<String> who, EntryBody body) {
    Instant now = clock.instant();
    return journal.write(List.of(new Ledger.Line(at.orElse(now), now, who, body)));
  }

  private String standingEntry(String what, String id) {
    if (journal.entry(id).isEmpty()) {
      throw RefusedInput.of(
          what + " \"" + id + "\"", "no entry has this number", "look it up on the piece's page");
    }
    Optional<Entry> strike = journal.struckBy(id);
    if (strike.isPresent()) {
      throw RefusedInput.of(
          what + " \"" + id + "\"",
          "it is already struck out by " + strike.get().id(),
          "to bring it back, strike " + strike.get().id());
    }
    return id;
  }

  private PartPath newPartPath(String what, String text) {
    PartPath path = PartPath.parse(text);
    known.piece(what, path.piece());
    known.newName(what, path.part());
    path.face().ifPresent(face -> known.newName(what, face));
    return path;
  }

  private static void known(Form form, String input, Entry entry) {
    form.fault(
        input,
        "it is already in the journal, entry " + entry.id(),
        "choose another name; to change it, strike " + entry.id() + " and enter it again");
  }

  private Optional<Entry> pieceEntry(String name) {
    return standing(body -> body instanceof Piece piece && piece.name().equals(name));
  }

  private Optional<Entry> partEntry(PartPath path) {
    return standing(body -> body instanceof Part part && part.path().equals(path));
  }

  private Optional<Entry> standing(java.util.function.Predicate<EntryBody> wanted) {
    return journal.entries().stream()
        .filter(entry -> wanted.test(entry.body()) && journal.struckBy(entry.id()).isEmpty())
        .findFirst();
  }

  private static double areaM2(String what, String text) {
    return within(
        what, text, Quantities.areaM2(what, text), 1e-6, MOST_AREA_M2, "from 1 mm² to 200 m²");
  }

  private static double thicknessMm(String what, String text) {
    return within(
        what,
        text,
        Quantities.lengthMm(what, text),
        THINNEST_MM,
        THICKEST_MM,
        "from 0.3 to 300 mm");
  }

  private static double cutGPerL(String what, String text) {
    return within(
        what,
        text,
        Quantities.cutGPerL(what, text),
        THINNEST_CUT_G_PER_L,
        1500,
        "from 5 to 1500 g/L (0.04 to 12.5 lb); write unknown if it is not known");
  }

  private static double strengthPct(String what, String text) {
    return within(
        what,
        text,
        Quantities.volumeFractionPct(what, text),
        WEAKEST_SPIRIT_PCT,
        100,
        "from 30 to 100 % by volume");
  }

  private static double within(
      String what, String text, double value, double low, double high, String range) {
    if (!(value >= low && value <= high)) {
      throw RefusedInput.of(
          what + " \"" + text + "\"", "this lies " + range, "check the number and its unit");
    }
    return value;
  }

  private static OptionalDouble optional(Optional<Double> value) {
    return value.map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }
}
