/**
 * Cellar. The film: what a brushed coat does from the wet edge to full hardness, as a function of
 * its recipe, the air and the wood; and the ensemble that turns one answer into a range. Opens
 * doors to air, solvent, wood and mix.
 */
@NullMarked
package coatwright.film;

import org.jspecify.annotations.NullMarked;
