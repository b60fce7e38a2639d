package coatwright.web;

import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.EntryBody;
import coatwright.journal.Forms;
import coatwright.journal.Jar;
import coatwright.journal.Journal;
import coatwright.journal.Ledger;
import coatwright.journal.Method;
import coatwright.journal.NotKept;
import coatwright.journal.Observation;
import coatwright.journal.Part;
import coatwright.journal.PartPath;
import coatwright.journal.Piece;
import coatwright.journal.Strike;
import coatwright.quantity.Fault;
import coatwright.quantity.RefusedInput;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.function.Function;

/** A small journal on the heap, and forms just wide enough for the routes to be tried. */
final class InMemoryJournal implements Journal, Forms {
  private final Clock clock;
  private final List<Entry> entries = new CopyOnWriteArrayList<>();
  private final List<Consumer<Entry>> listeners = new CopyOnWriteArrayList<>();

  volatile boolean full;

  InMemoryJournal(Clock clock) {
    this.clock = clock;
  }

  @Override
  public List<Entry> entries() {
    return List.copyOf(entries);
  }

  @Override
  public Optional<Entry> entry(String id) {
    return entries.stream().filter(entry -> entry.id().equals(id)).findFirst();
  }

  @Override
  public Optional<Entry> struckBy(String id) {
    return entries.stream()
        .filter(entry -> entry.body() instanceof Strike strike && strike.entry().equals(id))
        .findFirst();
  }

  private <B extends EntryBody> List<Entry> standing(Class<B> kind, Function<B, Boolean> wanted) {
    return entries.stream()
        .filter(entry -> kind.isInstance(entry.body()) && wanted.apply(kind.cast(entry.body())))
        .filter(entry -> struckBy(entry.id()).isEmpty())
        .toList();
  }

  private static <B extends EntryBody> List<B> bodies(Class<B> kind, List<Entry> entries) {
    return entries.stream().map(entry -> kind.cast(entry.body())).toList();
  }

  @Override
  public List<Piece> pieces() {
    return bodies(Piece.class, standing(Piece.class, piece -> true));
  }

  @Override
  public List<Part> parts(String piece) {
    return bodies(Part.class, standing(Part.class, part -> part.path().piece().equals(piece)));
  }

  @Override
  public Optional<Part> part(PartPath path) {
    return bodies(Part.class, standing(Part.class, part -> part.path().equals(path))).stream()
        .findFirst();
  }

  @Override
  public List<Entry> jars() {
    return standing(Jar.class, jar -> true);
  }

  @Override
  public List<Entry> coats(PartPath path) {
    return standing(Coat.class, coat -> coat.part().equals(path));
  }

  @Override
  public List<Entry> coats() {
    return standing(Coat.class, coat -> true);
  }

  @Override
  public List<Entry> observations(PartPath path) {
    return standing(Observation.class, seen -> seen.part().equals(path));
  }

  @Override
  public List<Entry> write(List<Ledger.Line> lines) {
    if (full) {
      throw new DiskFull();
    }
    List<Entry> written = new ArrayList<>();
    synchronized (entries) {
      for (Ledger.Line line : lines) {
        Entry entry =
            new Entry(
                "e" + (entries.size() + 1), line.at(), line.writtenAt(), line.who(), line.body());
        entries.add(entry);
        written.add(entry);
      }
    }
    written.forEach(entry -> listeners.forEach(listener -> listener.accept(entry)));
    return written;
  }

  @Override
  public void onEntry(Consumer<Entry> listener) {
    listeners.add(listener);
  }

  private List<Entry> write(Map<String, String> form, Instant at, EntryBody body) {
    return write(
        List.of(new Ledger.Line(at, clock.instant(), Optional.ofNullable(form.get("who")), body)));
  }

  private static void need(Map<String, String> form, String... keys) {
    List<Fault> faults = new ArrayList<>();
    for (String key : keys) {
      if (form.getOrDefault(key, "").isBlank()) {
        faults.add(Fault.of(key, "it is missing", "say which " + key));
      }
    }
    if (!faults.isEmpty()) {
      throw new RefusedInput(faults);
    }
  }

  @Override
  public List<Entry> piece(Map<String, String> form) {
    need(form, "name");
    return write(
        form,
        clock.instant(),
        new Piece(form.get("name"), Optional.ofNullable(form.get("room")), Optional.empty()));
  }

  @Override
  public List<Entry> part(Map<String, String> form) {
    need(form, "part");
    return write(
        form,
        clock.instant(),
        new Part(
            PartPath.parse(form.get("part")),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.ofNullable(form.get("species"))));
  }

  @Override
  public List<Entry> jar(Map<String, String> form) {
    need(form, "name", "finish");
    return write(
        form,
        clock.instant(),
        new Jar(
            form.get("name"),
            form.get("finish"),
            OptionalDouble.of(180),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty()));
  }

  @Override
  public List<Entry> coat(Map<String, String> form) {
    need(form, "part", "jar");
    Map<String, PartPath> parts = new LinkedHashMap<>();
    for (String name : form.get("part").split(",", -1)) {
      parts.put(name, PartPath.parse(name));
    }
    Instant now = clock.instant();
    return write(
        parts.values().stream()
            .map(
                part ->
                    new Ledger.Line(
                        now,
                        now,
                        Optional.ofNullable(form.get("who")),
                        new Coat(
                            part,
                            form.get("jar"),
                            "e1",
                            now,
                            Optional.empty(),
                            form.getOrDefault("room", "finishing room"),
                            Method.BRUSH,
                            OptionalDouble.empty(),
                            OptionalDouble.empty(),
                            Optional.empty())))
            .toList());
  }

  @Override
  public List<Entry> note(Map<String, String> form) {
    need(form, "part", "what");
    return write(
        form,
        clock.instant(),
        new Observation(
            PartPath.parse(form.get("part")),
            Optional.empty(),
            Observation.What.CLOUDED,
            OptionalInt.of(3),
            Optional.empty(),
            Optional.empty()));
  }

  @Override
  public List<Entry> strike(Map<String, String> form) {
    need(form, "entry", "reason");
    if (entry(form.get("entry")).isEmpty()) {
      throw RefusedInput.of(
          "entry \"" + form.get("entry") + "\"", "no such entry", "look it up in the journal");
    }
    return write(form, clock.instant(), new Strike(form.get("entry"), form.get("reason")));
  }

  /** What a store says when its disk is full. */
  private static final class DiskFull extends NotKept {
    DiskFull() {
      super("coatwright.db: the disk is full; make room and send it again", null);
    }
  }
}
