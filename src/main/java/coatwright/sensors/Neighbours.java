package coatwright.sensors;

import coatwright.air.SaturationPressure;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;

/** What the sensors of each room last said, so that one can be judged beside the others. */
final class Neighbours {
  private static final Duration TOO_OLD = Duration.ofMinutes(30);
  private static final Duration TRAIL = Duration.ofHours(25);
  private static final Duration BETWEEN_MARKS = Duration.ofMinutes(5);
  private static final double MOVED_K = 1;
  private static final double MOVED_PCT = 3;

  /** How a neighbour is to be weighed. */
  enum Standing {
    USUAL,
    /** A reference instrument: where two differ, the other is at fault. */
    REFERENCE,
    /** In doubt itself, and no evidence against another. */
    DOUBTFUL
  }

  /**
   * What another sensor of the room says.
   *
   * @param t absent when only its humidity is known
   * @param rhErrorPct standard uncertainty in points of RH, its temperature's part included
   */
  record Neighbour(OptionalDouble t, double rh, Instant at, double rhErrorPct, Standing standing) {
    /** One of the middle class. */
    Neighbour(OptionalDouble t, double rh, Instant at) {
      this(t, rh, at, Chip.UNKNOWN.rhErrorPct(), Standing.USUAL);
    }

    /** The humidity this neighbour's vapour would make at another temperature, %. */
    double rhAt(double otherT) {
      return t.isEmpty()
          ? rh
          : rh
              * SaturationPressure.overWaterPa(t.getAsDouble())
              / SaturationPressure.overWaterPa(otherT);
    }
  }

  /** One sensor's trail: its newest word, and a mark every few minutes of the last day. */
  private static final class Trail {
    private final Deque<Neighbour> marks = new ArrayDeque<>();
    private Neighbour newest;

    Trail(Neighbour first) {
      newest = first;
      marks.addLast(first);
    }

    synchronized void add(Neighbour next) {
      newest = next;
      if (!marks.getLast().at().plus(BETWEEN_MARKS).isAfter(next.at())) {
        marks.addLast(next);
      }
      while (marks.getFirst().at().isBefore(next.at().minus(TRAIL))) {
        marks.removeFirst();
      }
    }

    synchronized Neighbour newest() {
      return newest;
    }

    /** Empty when it was not heard over the whole stretch. */
    synchronized Optional<Boolean> movedSince(Instant since) {
      if (marks.getFirst().at().isAfter(since.plus(TOO_OLD))) {
        return Optional.empty();
      }
      List<Neighbour> over = new ArrayList<>(marks);
      over.removeIf(mark -> mark.at().isBefore(since));
      over.add(newest);
      double moved = spread(over.stream().flatMapToDouble(mark -> mark.t().stream()).toArray());
      double movedPct = spread(over.stream().mapToDouble(Neighbour::rh).toArray());
      return Optional.of(moved > MOVED_K || movedPct > MOVED_PCT);
    }

    private static double spread(double[] values) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (double value : values) {
        low = Math.min(low, value);
        high = Math.max(high, value);
      }
      return values.length == 0 ? 0 : high - low;
    }
  }

  private final Map<String, Map<String, Trail>> rooms = new ConcurrentHashMap<>();

  void note(String room, String who, Neighbour neighbour) {
    rooms
        .computeIfAbsent(room, each -> new ConcurrentHashMap<>())
        .compute(
            who,
            (name, trail) -> {
              if (trail == null) {
                return new Trail(neighbour);
              }
              trail.add(neighbour);
              return trail;
            });
  }

  /**
   * The sensors of the room's other sources that spoke lately. Those of one source are left out:
   * they may be radios that only share a receiver, and no evidence against each other.
   */
  List<Neighbour> of(String room, String source, Instant at) {
    List<Neighbour> others = new ArrayList<>();
    rooms
        .getOrDefault(room, Map.of())
        .forEach(
            (who, trail) -> {
              Neighbour neighbour = trail.newest();
              boolean fresh = Duration.between(neighbour.at(), at).abs().compareTo(TOO_OLD) <= 0;
              if (fresh && !who.startsWith(source + "/")) {
                others.add(neighbour);
              }
            });
    return others;
  }

  /**
   * Whether another source's sensor of the room moved by a kelvin or three points since then; empty
   * where none was heard over the whole stretch.
   */
  Optional<Boolean> movedSince(String room, String source, Instant since) {
    Optional<Boolean> moved = Optional.empty();
    for (Map.Entry<String, Trail> other : rooms.getOrDefault(room, Map.of()).entrySet()) {
      if (!other.getKey().startsWith(source + "/")) {
        Optional<Boolean> one = other.getValue().movedSince(since);
        if (one.isPresent() && (one.get() || moved.isEmpty())) {
          moved = one;
        }
      }
    }
    return moved;
  }
}
