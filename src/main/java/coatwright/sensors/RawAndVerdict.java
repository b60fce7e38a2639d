package coatwright.sensors;

import java.time.Instant;

/**
 * A payload's text beside what it was read as, for {@code listen}.
 *
 * @param channel topic or device it came by
 * @param text bytes outside the charset are shown escaped
 */
public record RawAndVerdict(
    String source, String channel, Instant arrivedAt, String text, MappedPayload verdict) {}
