/**
 * Hall. A recorded stretch of air run again through the whole house, with its own clock: screen,
 * climate, journal, outlook, watch, review. And the case someone describes in words. Opens every
 * door, as the hall does, and wires the rooms over memory instead of a store.
 *
 * <p>Start at {@link coatwright.replay.Replay}.
 */
@NullMarked
package coatwright.replay;

import org.jspecify.annotations.NullMarked;
