/**
 * Spirit and the other liquids of the shop: how hard they evaporate, how fast they diffuse through
 * air, how spirit and water hold each other back, and how cold an evaporating surface gets.
 *
 * <p>Pure functions and records. One formula, one source. Start at {@link
 * coatwright.solvent.Solvent}. Opens doors to {@link coatwright.air} and {@link
 * coatwright.quantity}.
 */
@NullMarked
package coatwright.solvent;

import org.jspecify.annotations.NullMarked;
