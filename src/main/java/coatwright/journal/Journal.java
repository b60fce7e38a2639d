package coatwright.journal;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The journal as it stands: the ledger's entries with the struck ones set aside. Safe for many
 * readers.
 */
public interface Journal {
  /** Every entry, struck ones too, oldest first. */
  List<Entry> entries();

  /** The entry of that id, struck or not. */
  Optional<Entry> entry(String id);

  /** The strike that set this entry aside, if any. */
  Optional<Entry> struckBy(String id);

  /** Pieces that stand. */
  List<Piece> pieces();

  /** Parts of a piece that stand, in the order they were entered. */
  List<Part> parts(String piece);

  /** The part at that path: the face's own entry if there is one, else the part's. */
  Optional<Part> part(PartPath path);

  /** Entries (body {@link Jar}) of the newest filling of every jar. */
  List<Entry> jars();

  /** Every filling of a jar that stands (entries with body {@link Jar}), in the order written. */
  default List<Entry> fillings(String jar) {
    return entries().stream()
        .filter(entry -> entry.body() instanceof Jar filled && filled.name().equals(jar))
        .filter(entry -> struckBy(entry.id()).isEmpty())
        .toList();
  }

  /**
   * The filling a coat was laid from: the one it names, or, where that was struck out as wrong, the
   * filling of the same jar written next after it.
   */
  default Optional<Entry> filling(Coat coat) {
    Optional<Entry> named = entry(coat.jarEntry());
    if (named.isPresent() && struckBy(coat.jarEntry()).isPresent()) {
      long number = Pages.number(named.get());
      Optional<Entry> corrected =
          fillings(coat.jar()).stream().filter(entry -> Pages.number(entry) > number).findFirst();
      return corrected.or(() -> named);
    }
    return named;
  }

  /**
   * Entries (body {@link Coat}) on that part or face that stand, oldest start first. A part's faces
   * are apart.
   */
  List<Entry> coats(PartPath path);

  /** Entries (body {@link Coat}) that stand, of every part, oldest start first. */
  List<Entry> coats();

  /** Entries (body {@link Observation}) on that part or face that stand, oldest first. */
  List<Entry> observations(PartPath path);

  /** Writes lines through the ledger; returns once they are durable, then tells listeners. */
  List<Entry> write(List<Ledger.Line> lines);

  /** Called after each durable write, on the writing thread. */
  void onEntry(Consumer<Entry> listener);
}
