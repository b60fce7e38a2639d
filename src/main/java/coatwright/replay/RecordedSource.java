package coatwright.replay;

import coatwright.climate.Role;
import coatwright.climate.SourceState;
import coatwright.climate.SourceStatus;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The state of the sensor that was recorded, by the age of its last believed reading: current up to
 * two and a half intervals, late up to six or a quarter of an hour, lost after six hours, stale
 * between; refused when it is no longer current and the last three lines were not believed. The
 * same rules as live, on the record's clock.
 */
final class RecordedSource {
  private static final double CURRENT_INTERVALS = 2.5;
  private static final int LATE_INTERVALS = 6;
  private static final int REFUSED_IN_A_ROW = 3;
  private static final Duration LATE_AT_LEAST = Duration.ofMinutes(15);
  private static final Duration LOST_AFTER = Duration.ofHours(6);

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
        state(now),
        every,
        Optional.ofNullable(believed),
        accepted,
        0,
        refused,
        Optional.empty(),
        List.of());
  }

  private SourceState state(Instant now) {
    Instant last = believed;
    Optional<Duration> age =
        last == null ? Optional.empty() : Optional.of(Duration.between(last, now));
    boolean fresh = age.isPresent() && age.get().toMillis() <= CURRENT_INTERVALS * every.toMillis();
    if (!fresh && badInARow >= REFUSED_IN_A_ROW) {
      return SourceState.REFUSED;
    }
    if (age.isEmpty()) {
      return SourceState.WAITING;
    }
    if (fresh) {
      return SourceState.CURRENT;
    }
    Duration lateUntil = every.multipliedBy(LATE_INTERVALS);
    if (lateUntil.compareTo(LATE_AT_LEAST) < 0) {
      lateUntil = LATE_AT_LEAST;
    }
    if (age.get().compareTo(lateUntil) <= 0) {
      return SourceState.LATE;
    }
    return age.get().compareTo(LOST_AFTER) > 0 ? SourceState.LOST : SourceState.STALE;
  }
}
