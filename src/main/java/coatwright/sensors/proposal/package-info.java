/**
 * Set-up aid: from payloads overheard to a mapping a person can accept. It proposes and never
 * decides: every doubt stands beside its line, and nothing is used until somebody keeps the file.
 *
 * <p>Start at {@link coatwright.sensors.proposal.Proposer}.
 */
@NullMarked
package coatwright.sensors.proposal;

import org.jspecify.annotations.NullMarked;
