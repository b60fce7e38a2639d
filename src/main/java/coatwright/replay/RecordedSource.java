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
 * between; refused when nothing it said in six intervals was believed. The same rules as live.
 */
final class RecordedSource {
  private static final double CURRENT_INTERVALS = 2.5;
  private static final int LATE_INTERVALS = 6;
  private static final Duration LATE_AT_LEAST = Duration.ofMinutes(15);
  private static final Duration LOST_AFTER = Duration.ofHours(6);

  private final String name;
  private final String room;
  private final Role role;
  private final Duration every;
  private @Nullable Instant believed;
  private @Nullable Instant disbelieved;
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
      accepted++;
    } else {
      disbelieved = at;
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
    if (last == null) {
      return disbelieved == null ? SourceState.WAITING : SourceState.REFUSED;
    }
    Duration age = Duration.between(last, now);
    Duration lateUntil = every.multipliedBy(LATE_INTERVALS);
    if (lateUntil.compareTo(LATE_AT_LEAST) < 0) {
      lateUntil = LATE_AT_LEAST;
    }
    if (age.toMillis() <= CURRENT_INTERVALS * every.toMillis()) {
      return SourceState.CURRENT;
    }
    if (age.compareTo(lateUntil) <= 0) {
      return SourceState.LATE;
    }
    if (disbelieved != null && Duration.between(disbelieved, now).compareTo(lateUntil) <= 0) {
      return SourceState.REFUSED;
    }
    return age.compareTo(LOST_AFTER) > 0 ? SourceState.LOST : SourceState.STALE;
  }
}
