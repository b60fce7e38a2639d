/**
 * Quantities: how a number with its unit is read from a person, checked, and shown again.
 *
 * <p>Everything inside the house is SI or the unit named in the component ({@code airTempC}, {@code
 * rhPct}, {@code wetFilmUm}). This room is the door between those numbers and the shop's words:
 * "2lb", "3mil", "8floz". A quantity typed without its unit is refused, never guessed.
 *
 * <p>Start at {@link coatwright.quantity.Quantities} for reading, {@link coatwright.quantity.Show}
 * for printing, {@link coatwright.quantity.OutOfRange} for the limits of a formula. Opens no door;
 * open to every room.
 */
@NullMarked
package coatwright.quantity;

import org.jspecify.annotations.NullMarked;
