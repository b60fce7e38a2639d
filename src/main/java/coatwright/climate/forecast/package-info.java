/**
 * What a room's own history says of its next three days: hourly means of temperature and vapour,
 * one recursive ridge regression for every hour ahead, and an ensemble made of the errors its own
 * earlier forecasts turned out to have. Pure: it reads no clock, no sensor and no file, and is told
 * one hour after the other.
 */
@NullMarked
package coatwright.climate.forecast;

import org.jspecify.annotations.NullMarked;
