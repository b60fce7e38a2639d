package coatwright.journal;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;

/**
 * The journal over a ledger. Readers see whole pages, from before a write or after it, never
 * between; writers take turns.
 */
public final class LiveJournal implements Journal {
  private final Ledger ledger;
  private final List<Consumer<Entry>> listeners = new CopyOnWriteArrayList<>();
  private final Object pen = new Object();
  private volatile Pages pages;

  /**
   * Reads the ledger through once.
   *
   * @throws IllegalStateException if the ledger's lines contradict each other
   */
  public LiveJournal(Ledger ledger) {
    this.ledger = ledger;
    List<Entry> entries = ledger.entries();
    Pages.checkWhole(entries);
    this.pages = new Pages(entries);
  }

  @Override
  public List<Entry> entries() {
    return pages.entries();
  }

  @Override
  public Optional<Entry> entry(String id) {
    return pages.entry(id);
  }

  @Override
  public Optional<Entry> struckBy(String id) {
    return pages.struckBy(id);
  }

  @Override
  public List<Piece> pieces() {
    return pages.pieces();
  }

  @Override
  public List<Part> parts(String piece) {
    return pages.parts(piece);
  }

  @Override
  public Optional<Part> part(PartPath path) {
    return pages.part(path);
  }

  @Override
  public List<Entry> jars() {
    return pages.jars();
  }

  @Override
  public List<Entry> fillings(String jar) {
    return pages.fillings(jar);
  }

  @Override
  public List<Entry> coats(PartPath path) {
    return pages.coats(path);
  }

  @Override
  public List<Entry> coats() {
    return pages.coats();
  }

  @Override
  public List<Entry> observations(PartPath path) {
    return pages.observations(path);
  }

  @Override
  public List<Entry> write(List<Ledger.Line> lines) {
    List<Entry> written;
    synchronized (pen) {
      written = ledger.append(lines);
      pages = pages.with(written);
    }
    for (Entry entry : written) {
      for (Consumer<Entry> listener : listeners) {
        listener.accept(entry);
      }
    }
    return written;
  }

  @Override
  public void onEntry(Consumer<Entry> listener) {
    listeners.add(listener);
  }
}
