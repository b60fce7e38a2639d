package coatwright.replay;

import coatwright.climate.Role;
import coatwright.climate.SourceState;
import coatwright.climate.SourceStatus;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The state of the sensor that was recorded: the rule that holds live, on the record's clock. */
final class RecordedSource {
  private final String name;
  private final String room;
  private final Role role;
  private final Duration every;
  private @Nullable Instant believed;
  private int badInARow;
  private long accepted;
  private long refused;

  RecordedSource(String name, String room, Role role, Duration every) {
    this.name = name;
    this.room = room;
    this.role = role;
    this.every = every;
  }

  void heard(Instant at, boolean wasBelieved) {
    if (wasBelieved) {
      believed = at;
      badInARow = 0;
      accepted++;
    } else {
      badInARow++;
      refused++;
    }
  }

  SourceStatus status(Instant now) {
    return new SourceStatus(
        name,
        "recorded",
        Optional.of(room),
        role,
        SourceState.of(age(now), every, badInARow, false),
        every,
        Optional.ofNullable(believed),
        accepted,
        0,
        refused,
        Optional.empty(),
        List.of());
  }

  private Optional<Duration> age(Instant now) {
    return Optional.ofNullable(believed).map(last -> Duration.between(last, now));
  }
}
