/**
 * Mixing: what is in the jar, what it takes to make it so, and what it puts into the room's air.
 *
 * <p>A cut is flakes against <em>spirit</em>, not against the mixture; nearly every wrong jar comes
 * from mixing the two up. {@link coatwright.mix.Cut} holds that one number, {@link
 * coatwright.mix.Solution} the flakes and the spirit behind it with the swell of volume, {@link
 * coatwright.mix.FilmBuild} what a coat of it leaves. The other classes answer one question each:
 * the dried sample, the flow cup, the alcoholometer, the dose, the shelf, the vapour.
 *
 * <p>Volumes of resin and spirit are taken to add up (ideal mixing): nobody has published how far
 * they fall short. Volumes of spirit and water do shrink, and that is reckoned with. A cut told by
 * hydrometer or refractometer is not here: no published table of shellac solutions is known.
 *
 * <p>Opens doors to {@link coatwright.solvent} and {@link coatwright.quantity}.
 */
@NullMarked
package coatwright.mix;

import org.jspecify.annotations.NullMarked;
