package coatwright.watch;

import java.time.Instant;
import java.util.Optional;

/**
 * Something said once: it begins, is told, and ends.
 *
 * @param kind {@code clouding}, {@code slow-cure}, {@code wood-near-dew-point}, {@code sensor},
 *     {@code clock}, {@code rags}
 * @param message one sentence: what, which part or room, by when, what to do
 */
public record Warning(
    String id,
    String kind,
    Instant from,
    Optional<Instant> to,
    Optional<String> room,
    Optional<String> part,
    String message) {}
