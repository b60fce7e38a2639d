package coatwright.review;

import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Journal;
import coatwright.journal.Observation;
import coatwright.journal.Observation.What;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What was noted of one coat. A note that names a coat is of that coat. Of a note on the part
 * alone, clouding belongs to the coat that was newest when it was seen, and so does softness.
 */
final class CoatNotes {
  private static final Set<What> TESTS =
      Set.of(What.TOUCH, What.THUMBNAIL, What.POWDER, What.PRINT);

  private final List<Noted> notes;

  private CoatNotes(List<Noted> notes) {
    this.notes = List.copyOf(notes);
  }

  /** A note and when it was seen. */
  record Noted(Instant at, Observation seen) {}

  static CoatNotes of(Journal journal, Entry coatEntry) {
    Coat coat = (Coat) coatEntry.body();
    Optional<Instant> next =
        journal.coats(coat.part()).stream()
            .map(e -> ((Coat) e.body()).start())
            .filter(start -> start.isAfter(coat.start()))
            .findFirst();
    List<Entry> entries = new ArrayList<>(journal.observations(coat.part()));
    if (coat.part().face().isPresent()) {
      entries.addAll(journal.observations(coat.part().whole()));
    }
    List<Noted> notes = new ArrayList<>();
    for (Entry entry : entries) {
      if (entry.body() instanceof Observation seen
          && isOf(seen, entry.at(), coatEntry.id(), coat.start(), next)) {
        notes.add(new Noted(entry.at(), seen));
      }
    }
    return new CoatNotes(notes);
  }

  private static boolean isOf(
      Observation seen, Instant at, String coatId, Instant laid, Optional<Instant> next) {
    if (seen.coat().isPresent()) {
      return seen.coat().get().equals(coatId);
    }
    return !at.isBefore(laid) && next.map(at::isBefore).orElse(true);
  }

  /** The worst clouding noted above 0. */
  Optional<Noted> clouded() {
    return notes.stream()
        .filter(n -> n.seen().what() == What.CLOUDED && n.seen().grade().orElse(1) > 0)
        .reduce((a, b) -> b.seen().grade().orElse(1) > a.seen().grade().orElse(1) ? b : a);
  }

  Optional<Noted> cleared() {
    return notes.stream().filter(n -> n.seen().what() == What.CLEARED).findFirst();
  }

  /** The newest sign that it was still soft: tacky, a test failed, or not fine when rubbed out. */
  Optional<Noted> soft() {
    return notes.stream().filter(CoatNotes::isSoft).reduce((a, b) -> b);
  }

  private static boolean isSoft(Noted n) {
    What what = n.seen().what();
    boolean failed = n.seen().passed().isPresent() && !n.seen().passed().get();
    return what == What.TACKY
        || (failed && (TESTS.contains(what) || what == What.RUBBED_OUT || what == What.SMELL));
  }

  boolean hasFault() {
    return clouded().isPresent() || soft().isPresent();
  }

  /** The tests made, in words, newest last. */
  List<String> tests() {
    return notes.stream()
        .filter(n -> TESTS.contains(n.seen().what()) && n.seen().passed().isPresent())
        .map(n -> n.seen().what() + (n.seen().passed().get() ? " passed" : " failed"))
        .toList();
  }
}
