/**
 * First floor. What it means: a coat, or a coat about to be laid, and the air through time become
 * clouding, drying, open time and milestones with ranges. Opens doors to film, climate and journal.
 */
@NullMarked
package coatwright.outlook;

import org.jspecify.annotations.NullMarked;
