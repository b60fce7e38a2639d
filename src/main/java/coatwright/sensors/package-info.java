/**
 * Door. From a sensor's bytes to a reading the house can believe.
 *
 * <p>A payload comes in by a link ({@code mqtt}, {@code serial}), is kept as text, mapped to
 * quantities by what the settings say and nothing else ({@link coatwright.sensors.SourceMapping}),
 * judged by a screen that knows what the sensor said before and what its neighbours say, corrected
 * by its dated calibration, and handed on as a {@link coatwright.climate.Reading}. What is not
 * believed is held back or refused with a reason a person can act on; it is never deleted.
 *
 * <p>Start at {@link coatwright.sensors.Sensors} for the running house, at {@link
 * coatwright.sensors.Intake} for one source's path. Opens doors to: quantity, air, climate.
 */
@NullMarked
package coatwright.sensors;

import org.jspecify.annotations.NullMarked;
