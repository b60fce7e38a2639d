/**
 * Wood as the air moves it: the moisture it settles at, how it takes up heat, and how far its
 * temperature lags the room's.
 *
 * <p>Pure functions of published equations, chiefly the Wood Handbook (Forest Products Laboratory,
 * FPL-GTR-190). The lag matters most: a board still cold from the night meets the morning's air
 * below its dew point, and that, not the air, clouds the film.
 *
 * <p>Start at {@link coatwright.wood.EquilibriumMoisture} and {@link coatwright.wood.BoardLag}.
 * Opens two doors: {@link coatwright.air} and {@link coatwright.quantity}.
 */
@NullMarked
package coatwright.wood;

import org.jspecify.annotations.NullMarked;
