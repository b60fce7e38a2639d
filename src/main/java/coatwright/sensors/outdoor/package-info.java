/**
 * An outdoor forecast of somebody else's, fetched from a file, an address or a topic and read by a
 * mapping of the shop's own: which words hold the time, the temperature and the dew point or
 * humidity. Strict: what is not understood whole is refused with the reason, and the last one that
 * was understood holds until it is stale.
 */
@NullMarked
package coatwright.sensors.outdoor;

import org.jspecify.annotations.NullMarked;
