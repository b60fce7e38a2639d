package coatwright.journal;

import java.util.ArrayList;
import java.util.List;

/**
 * A ledger that forgets: for replaying a described day, and for trying things out. Nothing of it
 * outlives the program.
 */
public final class MemoryLedger implements Ledger {
  private final List<Entry> entries = new ArrayList<>();

  @Override
  public synchronized List<Entry> append(List<Line> lines) {
    List<Entry> written = new ArrayList<>();
    for (Line line : lines) {
      String id = "e" + (entries.size() + 1);
      Entry entry = new Entry(id, line.at(), line.writtenAt(), line.who(), line.body());
      entries.add(entry);
      written.add(entry);
    }
    return List.copyOf(written);
  }

  @Override
  public synchronized List<Entry> entries() {
    return List.copyOf(entries);
  }
}
