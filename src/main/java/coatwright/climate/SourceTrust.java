package coatwright.climate;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * How far a source may be believed, and what its next check is.
 *
 * @param chip the type of its element
 * @param temperatureErrorK standard uncertainty now, K
 * @param rhErrorPct standard uncertainty now, points of RH, grown since the last check
 * @param lastCheckAt its last check against a salt, or the date of its last correction
 * @param vapourHours hours of finishing work in its room since then, or since it was first heard
 * @param nextCheckDue when it asks for a check against a salt; empty for what reads no humidity
 * @param checkDue that time has come
 * @param inDoubt what it says begins warnings and ends none
 * @param notes what a person should know of it, a sentence each: doubts first
 */
public record SourceTrust(
    String chip,
    double temperatureErrorK,
    double rhErrorPct,
    Optional<Instant> lastCheckAt,
    double vapourHours,
    Optional<Instant> nextCheckDue,
    boolean checkDue,
    boolean inDoubt,
    List<String> notes) {
  public SourceTrust {
    notes = List.copyOf(notes);
  }
}
