/**
 * The film: what a coat laid in this air, on this wood, becomes in the next minutes and days.
 *
 * <p>One face of a part is a stack of coats, cut into thin cells of dry resin. Spirit, water and,
 * where it was added, a slow solvent diffuse through the stack and leave at the surface; the film
 * cools, the wood warms it, damp air condenses into it. From that one calculation come the clouding
 * (water over the water at which the resin gives way), the open time, and the dates for recoating
 * and rubbing out.
 *
 * <p>Start at {@link coatwright.film.FilmSimulation}: a {@link coatwright.film.FilmJob} goes in, a
 * {@link coatwright.film.FilmRun} comes out. The equations, with their sources and what they get
 * wrong, are in {@code docs/physics.md}. Opens doors to {@link coatwright.air}, {@link
 * coatwright.solvent}, {@link coatwright.mix} and {@link coatwright.quantity}.
 */
@NullMarked
package coatwright.film;

import org.jspecify.annotations.NullMarked;
