package coatwright.climate;

import java.time.Duration;
import java.util.Locale;
import java.util.Optional;

/**
 * How fresh a source is, by the age of its last believed reading: current up to two and a half
 * intervals, late up to six or a quarter of an hour, lost after six hours, stale between. {@code
 * REFUSED}: it speaks, but nothing it says can be believed. The figures are ours.
 */
public enum SourceState {
  WAITING,
  CURRENT,
  LATE,
  STALE,
  LOST,
  REFUSED;

  private static final double CURRENT_INTERVALS = 2.5;
  private static final int LATE_INTERVALS = 6;
  private static final Duration LATE_AT_LEAST = Duration.ofMinutes(15);
  private static final Duration LOST_AFTER = Duration.ofHours(6);
  private static final int REFUSED_IN_A_ROW = 3;

  /**
   * The state of a source.
   *
   * @param age of its last believed reading; empty before the first
   * @param every its expected interval
   * @param notBelieved how many of its inputs in a row, up to the last, were not believed
   * @param saysGone it said itself that it is no longer there
   */
  public static SourceState of(
      Optional<Duration> age, Duration every, int notBelieved, boolean saysGone) {
    boolean fresh = age.isPresent() && age.get().toMillis() <= CURRENT_INTERVALS * every.toMillis();
    if (!fresh && notBelieved >= REFUSED_IN_A_ROW) {
      return REFUSED;
    }
    if (age.isEmpty()) {
      return WAITING;
    }
    if (fresh && !saysGone) {
      return CURRENT;
    }
    Duration late = every.multipliedBy(LATE_INTERVALS);
    if (late.compareTo(LATE_AT_LEAST) < 0) {
      late = LATE_AT_LEAST;
    }
    if (age.get().compareTo(late) <= 0) {
      return LATE;
    }
    return age.get().compareTo(LOST_AFTER) <= 0 ? STALE : LOST;
  }

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
