/**
 * Ground floor. What the finisher did and saw: pieces, parts, faces, jars, coats and observations.
 * Append-only; a correction is a new entry that strikes out the old one. Opens doors to air and
 * mix.
 */
@NullMarked
package coatwright.journal;

import org.jspecify.annotations.NullMarked;
