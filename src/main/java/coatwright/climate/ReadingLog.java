package coatwright.climate;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Port: where readings are kept. The store implements it; {@code append} returns at once and is
 * durable within 1 s.
 */
public interface ReadingLog {
  /** Takes a reading; it is committed at most a second later. */
  void append(Reading reading);

  /** Keeps a payload's text: every refused or held-back one, and the last 1,000 of each source. */
  void keep(RawText raw);

  /** Readings of a room measured in [from, to), oldest first. */
  List<Reading> readings(String room, Instant from, Instant to);

  /**
   * Roll-ups of a room over [from, to), one row an interval that holds any reading; gaps have no
   * row.
   */
  List<RollUp> rollUps(String room, Instant from, Instant to, Duration every);

  /** Readings of a source measured in [from, to), of all its sensors and places, oldest first. */
  List<Reading> readingsOf(String source, Instant from, Instant to);

  /** When the oldest reading of a source was measured. */
  Optional<Instant> heardSince(String source);

  /** The newest raw texts of a source, newest first. */
  List<RawText> raw(String source, int atMost);

  /** Waits until all that was appended is durable. */
  void flush();
}
