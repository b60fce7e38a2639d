/**
 * The hall: wiring, start and stop. Every other package is a room; see {@code docs/design.md} for
 * which room may open a door to which.
 */
@NullMarked
package coatwright;

import org.jspecify.annotations.NullMarked;
