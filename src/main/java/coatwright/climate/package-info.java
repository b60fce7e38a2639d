/**
 * Ground floor. The air that really was: readings that passed the screen, per-room series with gaps
 * kept as gaps, roll-ups, and what a room's own recent days say about the coming hours. Opens one
 * door: air.
 */
@NullMarked
package coatwright.climate;

import org.jspecify.annotations.NullMarked;
