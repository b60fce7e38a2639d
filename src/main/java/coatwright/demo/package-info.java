/**
 * Hall. The invented shop: an air, sensors that report it, and a journal, all made up from a fixed
 * seed and walked through the same rooms as a real shop's. Nothing in here is measured, and no
 * person, maker or place is meant; every page of it says so.
 *
 * <p>Start at {@link coatwright.demo.InventedShop}.
 */
@NullMarked
package coatwright.demo;

import org.jspecify.annotations.NullMarked;
