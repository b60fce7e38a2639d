package coatwright.climate;

import java.time.Instant;
import java.util.Optional;

/**
 * The text a source sent, as it came, and what became of it.
 *
 * @param source the mapping's short name
 * @param channel topic or device it came by
 * @param arrivedAt when it came
 * @param text the payload as text (bytes outside the charset shown escaped)
 * @param verdict {@code accepted}, {@code heldBack} or {@code refused}
 * @param reason why it was held back or refused
 */
public record RawText(
    String source,
    String channel,
    Instant arrivedAt,
    String text,
    String verdict,
    Optional<String> reason) {}
