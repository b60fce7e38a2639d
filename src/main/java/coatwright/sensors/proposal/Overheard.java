package coatwright.sensors.proposal;

/**
 * A payload as it was heard.
 *
 * @param channel topic or device; empty when it came from a file that names none
 * @param octets its bytes, one character (0 to 255) each
 */
public record Overheard(String channel, String octets) {}
