package coatwright.store.influx;

import coatwright.climate.Reading;
import coatwright.climate.Role;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Readings with a flag. */
final class Flagged {
  private Flagged() {}

  static Reading reading(String source, Instant at, String flag) {
    return new Reading(
        source,
        source,
        Role.ROOM,
        Optional.of(Fixtures.ROOM),
        Optional.empty(),
        at,
        OptionalDouble.of(20),
        OptionalDouble.of(50),
        OptionalDouble.empty(),
        0.3,
        2,
        flag.isEmpty() ? List.of() : List.of(flag));
  }
}
