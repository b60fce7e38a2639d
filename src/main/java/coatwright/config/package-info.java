/**
 * Hall. The settings a person writes, read into each room's own record: {@code coatwright.yaml},
 * the sensors' files in {@code sources/} and the finishes' in {@code finishes/}.
 *
 * <p>Nothing is silently improved: a key nobody knows, a value without its unit, a room that is not
 * there are faults, and all faults of all files are told together, each with its file and line.
 *
 * <p>Start at {@link coatwright.config.SettingsFolder}.
 */
@NullMarked
package coatwright.config;

import org.jspecify.annotations.NullMarked;
