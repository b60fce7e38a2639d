package coatwright.sensors;

import coatwright.air.SaturationPressure;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;

/** What the sensors of each room last said, so that one can be judged beside the others. */
final class Neighbours {
  private static final Duration TOO_OLD = Duration.ofMinutes(30);

  /**
   * What another sensor of the room says.
   *
   * @param t absent when only its humidity is known
   */
  record Neighbour(OptionalDouble t, double rh, Instant at) {
    /** The humidity this neighbour's vapour would make at another temperature, %. */
    double rhAt(double otherT) {
      return t.isEmpty()
          ? rh
          : rh
              * SaturationPressure.overWaterPa(t.getAsDouble())
              / SaturationPressure.overWaterPa(otherT);
    }
  }

  private final Map<String, Map<String, Neighbour>> rooms = new ConcurrentHashMap<>();

  void note(String room, String who, Neighbour neighbour) {
    rooms.computeIfAbsent(room, each -> new ConcurrentHashMap<>()).put(who, neighbour);
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
            (who, neighbour) -> {
              boolean fresh = Duration.between(neighbour.at(), at).abs().compareTo(TOO_OLD) <= 0;
              if (fresh && !who.startsWith(source + "/")) {
                others.add(neighbour);
              }
            });
    return others;
  }
}
