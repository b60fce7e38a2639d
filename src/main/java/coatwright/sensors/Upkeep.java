package coatwright.sensors;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Port: what the shop's books say of a sensor's upkeep. The hall answers it from the journal and
 * the store. Safe for several threads.
 */
public interface Upkeep {
  /** Of a shop without books. */
  Upkeep NONE =
      new Upkeep() {
        @Override
        public List<Check> checks(String source, String sensor) {
          return List.of();
        }

        @Override
        public Optional<Instant> boxedSince(String source, String sensor, Instant at) {
          return Optional.empty();
        }

        @Override
        public Optional<Instant> heardSince(String source) {
          return Optional.empty();
        }

        @Override
        public Duration inVapour(String room, Instant from, Instant to) {
          return Duration.ZERO;
        }

        @Override
        public Optional<Instant> cloudedAfter(String room, Instant from) {
          return Optional.empty();
        }
      };

  /**
   * A check of a sensor that stands and was passed.
   *
   * @param correction what it found; gain 1 and offset 0 where nothing was off
   */
  record Check(Instant at, Correction correction) {}

  /** Checks of a sensor's humidity, oldest first. */
  List<Check> checks(String source, String sensor);

  /** Since when the sensor lies in a box with a salt, where it does at that instant. */
  Optional<Instant> boxedSince(String source, String sensor, Instant at);

  /** When the source was first heard; empty where that is not known. */
  Optional<Instant> heardSince(String source);

  /** How long finishing was done in that room over [from, to), drying of the film included. */
  Duration inVapour(String room, Instant from, Instant to);

  /** When a coat laid in that room was first seen to have clouded after an instant. */
  Optional<Instant> cloudedAfter(String room, Instant from);
}
