/**
 * Beside the doors. One JSON mapper, so that every door writes a record the same way: the key is
 * the record component, letter for letter; absent is left out.
 */
@NullMarked
package coatwright.json;

import org.jspecify.annotations.NullMarked;
