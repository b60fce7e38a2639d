/**
 * Door. The commands: what a person types, and what is printed back, as words or as the contract's
 * JSON.
 *
 * <p>Nothing is judged here. {@code air}, {@code outlook --finish}, {@code replay}, the arithmetic
 * of {@code jar} and {@code listen --from} ask the rooms directly through {@link
 * coatwright.cli.Hall}; everything about the running shop is asked of the daemon over HTTP, so that
 * the command, the page and a notice say the same.
 *
 * <p>Start at {@link coatwright.cli.CommandLineDoor}.
 */
@NullMarked
package coatwright.cli;

import org.jspecify.annotations.NullMarked;
