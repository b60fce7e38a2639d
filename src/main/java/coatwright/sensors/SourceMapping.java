package coatwright.sensors;

import coatwright.climate.Role;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All the settings say about one source: how its payloads come, what they mean, and where the
 * sensor stands. Nothing is guessed: a reading exists only if a mapping names the quantity, the
 * place and the unit.
 *
 * @param source own short name, unique in the house
 * @param transport absent only for a mapping used to read recordings
 * @param every expected interval
 * @param everyGiven false when {@code every} is only the usual minute
 * @param limits one entry a quantity
 * @param resolution smallest step of the sensor, where it is coarse
 * @param corrections oldest first
 */
public record SourceMapping(
    String source,
    Optional<Transport> transport,
    Placing placing,
    PayloadRules payload,
    Duration every,
    boolean everyGiven,
    Map<Quantity, Limits> limits,
    Map<Quantity, Double> resolution,
    List<Correction> corrections) {
  public SourceMapping {
    limits = Map.copyOf(limits);
    resolution = Map.copyOf(resolution);
    corrections = List.copyOf(corrections);
  }

  /**
   * Where the sensor stands and what it is.
   *
   * @param room empty only outside, or in a mapping used to read recordings
   * @param part the part a piece probe is fixed to, as {@code piece/part}
   */
  public record Placing(Role role, Optional<String> room, Optional<String> part, Chip chip) {}

  /** The word of its transport, {@code recorded} when it has none. */
  public String transportWord() {
    return transport.map(Transport::word).orElse("recorded");
  }

  /** The same source with its payloads taken apart otherwise. */
  SourceMapping withPayload(PayloadRules other) {
    return new SourceMapping(
        source, transport, placing, other, every, everyGiven, limits, resolution, corrections);
  }

  /** Whether its payloads say themselves when they were measured, and are believed in it. */
  public boolean timedByItsPayload() {
    return payload.time().map(TimeRule::trustPayload).orElse(false);
  }

  /** Whether several sensors share a topic, told apart by what the payload says. */
  boolean manyOnOneTopic() {
    return !payload.sensorAt().isEmpty();
  }
}
