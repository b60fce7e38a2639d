package coatwright.journal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The ledger's entries at one moment, sorted into what the shop asks for. Never changes: a write
 * makes new pages.
 *
 * <p>A strike may itself be struck; the entry it set aside then counts again.
 */
final class Pages {
  private static final Comparator<Entry> OLDEST_START_FIRST =
      Comparator.comparing((Entry entry) -> coatOf(entry).start()).thenComparing(Pages::number);

  private static final Comparator<Entry> OLDEST_FIRST =
      Comparator.comparing(Entry::at).thenComparing(Pages::number);

  private final List<Entry> entries;
  private final Map<String, Entry> byId = new HashMap<>();
  private final Map<String, Entry> strikeOf = new HashMap<>();
  private final Map<String, Entry> pieces = new LinkedHashMap<>();
  private final Map<PartPath, Entry> parts = new LinkedHashMap<>();
  private final List<Entry> fillings = new ArrayList<>();
  private final List<Entry> coats = new ArrayList<>();
  private final Map<PartPath, List<Entry>> coatsOf = new HashMap<>();
  private final Map<PartPath, List<Entry>> observationsOf = new HashMap<>();

  Pages(List<Entry> entries) {
    this.entries = List.copyOf(entries);
    for (Entry entry : entries) {
      byId.put(entry.id(), entry);
    }
    markStruck();
    for (Entry entry : entries) {
      if (!strikeOf.containsKey(entry.id())) {
        file(entry);
      }
    }
    coats.sort(OLDEST_START_FIRST);
    coatsOf.values().forEach(list -> list.sort(OLDEST_START_FIRST));
    observationsOf.values().forEach(list -> list.sort(OLDEST_FIRST));
  }

  /** A strike names an earlier line, so reading backwards settles which strikes still count. */
  private void markStruck() {
    for (int i = entries.size() - 1; i >= 0; i--) {
      Entry entry = entries.get(i);
      if (entry.body() instanceof Strike strike && !strikeOf.containsKey(entry.id())) {
        strikeOf.putIfAbsent(strike.entry(), entry);
      }
    }
  }

  private void file(Entry entry) {
    EntryBody body = entry.body();
    if (body instanceof Piece piece) {
      pieces.putIfAbsent(piece.name(), entry);
    } else if (body instanceof Part part) {
      parts.putIfAbsent(part.path(), entry);
    } else if (body instanceof Jar) {
      fillings.add(entry);
    } else if (body instanceof Coat coat) {
      coats.add(entry);
      coatsOf.computeIfAbsent(coat.part(), path -> new ArrayList<>()).add(entry);
    } else if (body instanceof Observation seen) {
      observationsOf.computeIfAbsent(seen.part(), path -> new ArrayList<>()).add(entry);
    }
  }

  List<Entry> entries() {
    return entries;
  }

  Pages with(List<Entry> written) {
    List<Entry> all = new ArrayList<>(entries);
    all.addAll(written);
    return new Pages(all);
  }

  Optional<Entry> entry(String id) {
    return Optional.ofNullable(byId.get(id));
  }

  Optional<Entry> struckBy(String id) {
    return Optional.ofNullable(strikeOf.get(id));
  }

  List<Piece> pieces() {
    return pieces.values().stream().map(entry -> (Piece) entry.body()).toList();
  }

  List<Part> parts(String piece) {
    return parts.values().stream()
        .map(entry -> (Part) entry.body())
        .filter(part -> part.path().piece().equals(piece))
        .toList();
  }

  Optional<Part> part(PartPath path) {
    Entry own = parts.get(path);
    Entry entry = own != null ? own : parts.get(path.whole());
    return Optional.ofNullable(entry).map(found -> (Part) found.body());
  }

  /** Newest filling of every jar, jars in the order they were first entered. */
  List<Entry> jars() {
    Map<String, Entry> newest = new LinkedHashMap<>();
    for (Entry filling : fillings) {
      newest.put(((Jar) filling.body()).name(), filling);
    }
    return List.copyOf(newest.values());
  }

  /** Every standing filling of a jar, in the order written. */
  List<Entry> fillings(String jar) {
    return fillings.stream().filter(entry -> ((Jar) entry.body()).name().equals(jar)).toList();
  }

  List<Entry> coats() {
    return List.copyOf(coats);
  }

  List<Entry> coats(PartPath path) {
    return List.copyOf(coatsOf.getOrDefault(path, List.of()));
  }

  List<Entry> observations(PartPath path) {
    return List.copyOf(observationsOf.getOrDefault(path, List.of()));
  }

  /** Ids must be new and each strike must name an earlier line, else the ledger is not one. */
  static void checkWhole(List<Entry> entries) {
    Set<String> seen = new HashSet<>();
    for (Entry entry : entries) {
      if (entry.body() instanceof Strike strike && !seen.contains(strike.entry())) {
        throw new IllegalStateException(
            "entry " + entry.id() + " strikes " + strike.entry() + ", which no earlier line holds");
      }
      if (!seen.add(entry.id())) {
        throw new IllegalStateException("entry " + entry.id() + " stands twice in the ledger");
      }
    }
  }

  static long number(Entry entry) {
    return Long.parseLong(entry.id().substring(1));
  }

  private static Coat coatOf(Entry entry) {
    return (Coat) entry.body();
  }
}
