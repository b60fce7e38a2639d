package coatwright.climate;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * The state of one source as a person reads it.
 *
 * @param source its short name
 * @param transport {@code mqtt}, {@code serial} or {@code simulated}
 * @param every expected interval
 * @param lastReadingAt when it last gave a believed reading
 * @param trouble one sentence saying what is wrong and what to do, when something is
 * @param lastRefused its last refused or held-back inputs (20 at most), newest first
 * @param trust how far it may be believed; empty for a recording
 */
public record SourceStatus(
    String source,
    String transport,
    Optional<String> room,
    Role role,
    SourceState state,
    Duration every,
    Optional<Instant> lastReadingAt,
    long accepted,
    long heldBack,
    long refused,
    Optional<String> trouble,
    List<RawText> lastRefused,
    Optional<SourceTrust> trust) {
  /** A source of which no more is known. */
  public SourceStatus(
      String source,
      String transport,
      Optional<String> room,
      Role role,
      SourceState state,
      Duration every,
      Optional<Instant> lastReadingAt,
      long accepted,
      long heldBack,
      long refused,
      Optional<String> trouble,
      List<RawText> lastRefused) {
    this(
        source,
        transport,
        room,
        role,
        state,
        every,
        lastReadingAt,
        accepted,
        heldBack,
        refused,
        trouble,
        lastRefused,
        Optional.empty());
  }
}
