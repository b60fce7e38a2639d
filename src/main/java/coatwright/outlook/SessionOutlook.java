package coatwright.outlook;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The one line at the bench: the air for this coat, now.
 *
 * @param open true while a session is open (a coat within the last hours); else the shop's usual
 *     finish is spoken of
 * @param finish the finish's name
 * @param finishTitle its name for people
 * @param part the part last coated or next
 * @param verb brush, pad, wipe or spray
 * @param line the sentence, such as {@code Hold off: the film would cloud}
 * @param nextBetter when held off, the start of the next better hour expected, where one can be
 *     told
 * @param nextBetterShare share of the courses the air may take in which no clouding is expected
 *     then
 * @param airAgeSeconds age of the newest reading that went in
 */
public record SessionOutlook(
    String room,
    boolean open,
    String finish,
    String finishTitle,
    Optional<String> jar,
    Optional<String> part,
    String verb,
    String line,
    Optional<Instant> nextBetter,
    OptionalDouble nextBetterShare,
    OptionalDouble airAgeSeconds,
    Optional<String> woodFrom,
    Outlook outlook) {}
