package coatwright.soak;

import coatwright.climate.Reading;
import coatwright.store.SqliteStore;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;

/** What was sent and when, to be held against what was kept. Each temperature is sent only once. */
final class Ledger {
  /**
   * Around a fault, what may be lost with a broker or a line that dies, or while all connect anew.
   */
  private static final Duration BEFORE = Duration.ofSeconds(3);

  private static final Duration AFTER = Duration.ofSeconds(45);

  /** One way of sending. */
  record Way(long sent, long kept, long doubled, long excused, long lost) {}

  /** Both of them. */
  record Outcome(Way mqtt, Way serial) {
    boolean fine() {
      return mqtt.lost() + mqtt.doubled() + serial.lost() + serial.doubled() == 0;
    }
  }

  private record Trouble(Instant from, Instant to) {}

  private final Map<Long, Instant> mqtt = new ConcurrentHashMap<>();
  private final Map<Long, Instant> serial = new ConcurrentHashMap<>();
  private final List<Trouble> troubles = new CopyOnWriteArrayList<>();

  /** The broker has said that it has it. */
  void acknowledged(long microC, Instant at) {
    mqtt.put(microC, at);
  }

  /** It was written to the line. */
  void printed(long microC, Instant at) {
    serial.put(microC, at);
  }

  void troubled(Instant from, Instant to) {
    troubles.add(new Trouble(from, to));
  }

  Outcome compare(Path data) {
    Map<Long, Integer> wall = new HashMap<>();
    Map<Long, Integer> bench = new HashMap<>();
    try (SqliteStore store = SqliteStore.openToRead(data)) {
      for (Reading reading :
          store.readings().readings("finishing room", Instant.EPOCH, Instant.MAX)) {
        long microC = Math.round(reading.temperatureC().orElseThrow() * 1e6);
        (reading.source().equals("wall") ? wall : bench).merge(microC, 1, Integer::sum);
      }
    }
    return new Outcome(way("mqtt", mqtt, wall), way("serial", serial, bench));
  }

  private Way way(String name, Map<Long, Instant> sent, Map<Long, Integer> kept) {
    long excused = 0;
    List<Instant> lost = new ArrayList<>();
    for (Map.Entry<Long, Instant> one : sent.entrySet()) {
      if (kept.containsKey(one.getKey())) {
        continue;
      }
      if (isExcused(one.getValue())) {
        excused++;
      } else {
        lost.add(one.getValue());
      }
    }
    lost.stream().sorted().limit(10).forEach(at -> System.out.println(name + " lost at " + at));
    long doubled = kept.values().stream().filter(times -> times > 1).count();
    return new Way(
        sent.size(),
        kept.values().stream().mapToLong(Integer::longValue).sum(),
        doubled,
        excused,
        lost.size());
  }

  private boolean isExcused(Instant at) {
    return troubles.stream()
        .anyMatch(
            trouble ->
                at.isAfter(trouble.from().minus(BEFORE)) && at.isBefore(trouble.to().plus(AFTER)));
  }
}
