/**
 * The serial link: one thread a port, which turns bytes into whole lines and survives the adapter
 * being unplugged and coming back under another number. Knows nothing of readings.
 */
@NullMarked
package coatwright.sensors.serial;

import org.jspecify.annotations.NullMarked;
