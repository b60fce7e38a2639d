package coatwright.climate;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A reading log that forgets: for replaying a recorded stretch, and for trying things out. Nothing
 * of it outlives the program.
 */
public final class MemoryReadingLog implements ReadingLog {
  private static final int KEPT_RAW = 1000;

  private final List<Reading> readings = new ArrayList<>();
  private final Map<String, Deque<RawText>> raw = new HashMap<>();

  @Override
  public synchronized void append(Reading reading) {
    readings.add(reading);
  }

  @Override
  public synchronized void keep(RawText text) {
    Deque<RawText> kept = raw.computeIfAbsent(text.source(), source -> new ArrayDeque<>());
    kept.addFirst(text);
    if (kept.size() > KEPT_RAW) {
      kept.removeLast();
    }
  }

  @Override
  public synchronized List<Reading> readings(String room, Instant from, Instant to) {
    return readings.stream()
        .filter(reading -> reading.room().filter(room::equals).isPresent())
        .filter(reading -> !reading.at().isBefore(from) && reading.at().isBefore(to))
        .sorted(Comparator.comparing(Reading::at))
        .toList();
  }

  @Override
  public synchronized List<Reading> readingsOf(String source, Instant from, Instant to) {
    return readings.stream()
        .filter(reading -> reading.source().equals(source))
        .filter(reading -> !reading.at().isBefore(from) && reading.at().isBefore(to))
        .sorted(Comparator.comparing(Reading::at))
        .toList();
  }

  @Override
  public synchronized Optional<Instant> heardSince(String source) {
    return readings.stream()
        .filter(reading -> reading.source().equals(source))
        .map(Reading::at)
        .min(Comparator.naturalOrder());
  }

  @Override
  public List<RollUp> rollUps(String room, Instant from, Instant to, Duration every) {
    return RollUp.of(readings(room, from, to), every);
  }

  @Override
  public synchronized List<RawText> raw(String source, int atMost) {
    Iterator<RawText> newestFirst = raw.getOrDefault(source, new ArrayDeque<>()).iterator();
    List<RawText> found = new ArrayList<>();
    while (found.size() < atMost && newestFirst.hasNext()) {
      found.add(newestFirst.next());
    }
    return found;
  }

  @Override
  public void flush() {
    // Memory is as durable as it gets here.
  }
}
