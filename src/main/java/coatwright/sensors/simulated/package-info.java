/**
 * Sensors that do not exist, for the demo: payloads made by a function of time, published over a
 * real in-process broker so that they walk the same way as real ones.
 */
@NullMarked
package coatwright.sensors.simulated;

import org.jspecify.annotations.NullMarked;
