package coatwright.journal;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What was seen or tested on a part, or on one coat of it.
 *
 * @param what the thing seen or the test made
 * @param grade clouding 0 (clear) to 5 (white), for {@link What#CLOUDED}
 * @param passed outcome of a test, for the tests and {@link What#RUBBED_OUT}
 * @param residuePct for {@link What#WEIGHED}: what of the film's mass is still solvent, per cent
 * @param storedTempC for {@link What#CARRIED_IN}: how warm the wood was where it was stored, °C
 */
public record Observation(
    PartPath part,
    Optional<String> coat,
    What what,
    OptionalInt grade,
    Optional<Boolean> passed,
    Optional<String> text,
    OptionalDouble residuePct,
    OptionalDouble storedTempC)
    implements EntryBody {

  /** An observation that weighs nothing. */
  public Observation(
      PartPath part,
      Optional<String> coat,
      What what,
      OptionalInt grade,
      Optional<Boolean> passed,
      Optional<String> text) {
    this(part, coat, what, grade, passed, text, OptionalDouble.empty());
  }

  /** An observation of a part that was not carried in. */
  public Observation(
      PartPath part,
      Optional<String> coat,
      What what,
      OptionalInt grade,
      Optional<Boolean> passed,
      Optional<String> text,
      OptionalDouble residuePct) {
    this(part, coat, what, grade, passed, text, residuePct, OptionalDouble.empty());
  }

  /** The kinds of observation. */
  public enum What {
    CLOUDED,
    CLEARED,
    TACKY,
    TOUCH,
    THUMBNAIL,
    POWDER,
    SMELL,
    PRINT,
    RUBBED_OUT,
    WEIGHED,
    CARRIED_IN;

    /** The word of the command line: {@code clouded}, {@code rubbed-out}. */
    @Override
    public String toString() {
      return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
  }

  @Override
  public String kind() {
    return "note";
  }
}
