/**
 * First floor. The case of a clouded or soft coat: the air around it, what the film model saw, and
 * what would have changed it. Opens doors to outlook, climate and journal.
 */
@NullMarked
package coatwright.review;

import org.jspecify.annotations.NullMarked;
