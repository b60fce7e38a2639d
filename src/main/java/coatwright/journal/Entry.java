package coatwright.journal;

import java.time.Instant;
import java.util.Optional;

/**
 * One line of the journal.
 *
 * @param id {@code e} and the line's number in the ledger; a coat is named by the entry that wrote
 *     it
 * @param at when it happened
 * @param writtenAt when it was written down
 * @param who who wrote it, where known
 */
public record Entry(
    String id, Instant at, Instant writtenAt, Optional<String> who, EntryBody body) {}
