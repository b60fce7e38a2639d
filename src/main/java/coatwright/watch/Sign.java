package coatwright.watch;

import java.time.Duration;
import java.util.Optional;

/**
 * What one look found about one thing that may be warned of.
 *
 * @param key names the thing, the same at every look: {@code clouding/bench}, {@code sensor/wall}
 * @param kind the warning's kind
 * @param grave rises when the warning needs graver words, as when a stale sensor is lost
 * @param message what would be said if it began now
 * @param holdOn how long it must have been so before it is said
 * @param holdClear how long it must have been over before that is said
 */
record Sign(
    String key,
    String kind,
    Optional<String> room,
    Optional<String> part,
    Verdict verdict,
    int grave,
    String message,
    Duration holdOn,
    Duration holdClear) {

  /** Where a look stands between the limit that begins a warning and the one that ends it. */
  enum Verdict {
    /** Past the limit that begins it. */
    ON,
    /** Between the two limits: what is said stays said, what is not is not begun. */
    BETWEEN,
    /** Past the limit that ends it. */
    CLEAR,
    /** Nothing to judge by: begins nothing and ends nothing. */
    UNKNOWN
  }
}
