/**
 * Moist air: how much water the shop's air carries, and how cold a surface must be to take it.
 *
 * <p>Pure functions and records that check themselves. Nothing here reads a clock, a sensor or a
 * file. One question has one formula and one published source, named in its Javadoc and again in
 * its test. Air temperatures hold from -40 °C to 60 °C.
 *
 * <p>One convention decides everything below freezing: <b>relative humidity is over liquid water at
 * all temperatures</b>, as capacitive sensors and weather reports mean it. Ice is used only for the
 * frost point and for a frozen wet bulb.
 *
 * <p>Start at {@link coatwright.air.MoistAir}. Opens one door: {@link coatwright.quantity}.
 */
@NullMarked
package coatwright.air;

import org.jspecify.annotations.NullMarked;
