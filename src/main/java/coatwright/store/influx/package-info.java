/**
 * Door. Mirrors readings, coats and outlooks into a time-series database that takes line protocol
 * over {@code /api/v2/write}. The file stays the record; a mirror may be away for days without
 * being missed. Start at {@link coatwright.store.influx.Mirrors}.
 *
 * <p>A mirror has a thread of its own, which reads what it has not sent from {@link
 * coatwright.store.Outbox}, sends it in batches and goes on only when the server has said that it
 * has them. Nothing here is loaded where no mirror is set up. Opens doors to climate, journal and
 * outlook.
 */
@NullMarked
package coatwright.store.influx;

import org.jspecify.annotations.NullMarked;
