/**
 * First floor. Judges outlooks, air and sources, and says a thing once: warnings that begin, are
 * told, and end. Opens doors to outlook, climate, journal, mix and film.
 */
@NullMarked
package coatwright.watch;

import org.jspecify.annotations.NullMarked;
