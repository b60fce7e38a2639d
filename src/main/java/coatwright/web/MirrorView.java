package coatwright.web;

import java.time.Instant;
import java.util.Optional;

/**
 * How a mirror of the database does.
 *
 * @param fine false when it needs a person
 * @param says all of it in one line
 * @param sent points its server has taken
 * @param waiting readings, entries and dates that are still to be sent
 * @param parked points its server refused for good
 * @param lastSuccess when its server last took something, in this run
 * @param behindSince when it was last up to date, while it is not
 */
public record MirrorView(
    String name,
    boolean fine,
    String says,
    long sent,
    long waiting,
    long parked,
    Optional<Instant> lastSuccess,
    Optional<Instant> behindSince) {}
