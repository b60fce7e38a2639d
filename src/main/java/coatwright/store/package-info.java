/**
 * Door. Keeps what happened in one SQLite file: the journal durable before it is acknowledged,
 * readings committed at most a second after they came, predictions that moved, warnings. Implements
 * the ports of the ground and first floors; start at {@link coatwright.store.SqliteStore}.
 *
 * <p>Forward-only migrations, after a backup, run by themselves when the file is opened. Opens
 * doors to climate, journal, outlook and watch.
 */
@NullMarked
package coatwright.store;

import org.jspecify.annotations.NullMarked;
