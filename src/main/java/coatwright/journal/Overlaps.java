package coatwright.journal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Coats that cannot both be as written: two on the same surface at the same time. They are kept,
 * for either may be the true one, and shown so that a person strikes the wrong one.
 */
public final class Overlaps {
  private Overlaps() {}

  /** Standing coats on the same part or face whose time overlaps this coat's, oldest first. */
  public static List<Entry> of(Journal journal, Entry coatEntry) {
    Coat coat = (Coat) coatEntry.body();
    List<Entry> overlapping = new ArrayList<>();
    for (Entry other : journal.coats()) {
      if (!other.id().equals(coatEntry.id()) && overlap(coat, (Coat) other.body())) {
        overlapping.add(other);
      }
    }
    return overlapping;
  }

  /** One sentence about the overlaps of a coat, if there are any. */
  public static Optional<String> sentence(Journal journal, Entry coatEntry) {
    List<String> ids = of(journal, coatEntry).stream().map(Entry::id).toList();
    return ids.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "coat %s overlaps %s on the same surface; strike the one that is wrong"
                .formatted(coatEntry.id(), String.join(", ", ids)));
  }

  private static boolean overlap(Coat a, Coat b) {
    boolean sameSurface =
        a.part().equals(b.part())
            || (a.part().whole().equals(b.part().whole())
                && (a.part().face().isEmpty() || b.part().face().isEmpty()));
    if (!sameSurface) {
      return false;
    }
    Instant endA = a.end().orElse(a.start());
    Instant endB = b.end().orElse(b.start());
    return a.start().equals(b.start()) || (a.start().isBefore(endB) && b.start().isBefore(endA));
  }
}
