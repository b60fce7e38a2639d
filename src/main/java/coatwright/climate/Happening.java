package coatwright.climate;

import java.time.Instant;

/**
 * Something that befell the house itself, which a person who was away should know.
 *
 * @param kind {@code away} (the program did not run), {@code clock} (it was set, or is not to be
 *     trusted), {@code slept} (the machine did)
 * @param says one sentence
 */
public record Happening(Instant at, String kind, String says) {}
