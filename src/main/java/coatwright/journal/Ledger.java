package coatwright.journal;

import java.util.List;

/**
 * Port: where entries are kept. {@code append} returns only when the entries survive a power cut.
 */
public interface Ledger {
  /** A line about to be written: everything but its number. */
  record Line(
      java.time.Instant at,
      java.time.Instant writtenAt,
      java.util.Optional<String> who,
      EntryBody body) {}

  /** Writes all lines or none, durably, and returns them numbered. */
  List<Entry> append(List<Line> lines);

  /** Every entry ever written, oldest first. */
  List<Entry> entries();
}
