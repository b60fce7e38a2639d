package coatwright.outlook;

import java.time.Instant;
import java.util.Optional;

/**
 * One milestone of one part as it stands now.
 *
 * @param until late end of the recoat window, where the finish has one
 * @param was the median before it last moved by more than its own tolerance
 * @param reason why it moved
 * @param test the bench test to make, and when
 * @param reached false: will not get there within the horizon in this air, or nobody can tell
 * @param cantTell nothing could be computed, for the reason told
 */
public record Due(
    String part,
    String milestone,
    Optional<Instant> p10,
    Optional<Instant> p50,
    Optional<Instant> p90,
    Optional<Instant> until,
    Optional<Instant> was,
    Optional<String> reason,
    Optional<String> test,
    boolean reached,
    boolean estimate,
    boolean cantTell) {
  /** What could be computed. */
  public Due(
      String part,
      String milestone,
      Optional<Instant> p10,
      Optional<Instant> p50,
      Optional<Instant> p90,
      Optional<Instant> until,
      Optional<Instant> was,
      Optional<String> reason,
      Optional<String> test,
      boolean reached,
      boolean estimate) {
    this(part, milestone, p10, p50, p90, until, was, reason, test, reached, estimate, false);
  }
}
