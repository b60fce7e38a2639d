package coatwright.review;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Why a coat clouded, or stayed soft: a sentence first, then the air, what the model saw, and what
 * would have changed it. Component names are the JSON keys of the contract.
 */
public record Why(
    String coat,
    String part,
    String sentence,
    AirAtFault airAtFault,
    List<Air> air,
    List<Gap> gaps,
    Optional<Saw> model,
    List<Counterfactual> counterfactuals,
    List<String> jar,
    List<String> cautions) {
  /** What changes less than one part in a hundred is told as no help; the figure is ours. */
  static final double HELPS = 0.99;

  /** Whether the air was the cause. */
  public enum AirAtFault {
    YES("yes"),
    PARTLY("partly"),
    NO("no"),
    CANT_TELL("can't tell");

    private final String word;

    AirAtFault(String word) {
      this.word = word;
    }

    @Override
    public String toString() {
      return word;
    }
  }

  /** One minute of the air around the coat. */
  public record Air(
      Instant at, double airTempC, double rhPct, double dewPointC, OptionalDouble woodTempC) {}

  /** A stretch without readings inside the time shown. */
  public record Gap(Instant from, Instant to) {}

  /**
   * What the film model saw.
   *
   * @param waterPeakPct most water in a film of spirit or lacquer, and what its resin or its blend
   *     bears beside it; a finish that cures holds none to speak of
   */
  public record Saw(
      String name,
      String version,
      String level,
      OptionalDouble waterPeakPct,
      OptionalDouble waterLimitPct,
      double filmLowC,
      double dewPointC,
      double spreadAtWoodK,
      OptionalDouble bloomSeconds) {}

  /**
   * One thing changed, the rest left as it was, and the film run again.
   *
   * @param change what was changed, in words
   * @param was the value as it was, with its unit
   * @param would the value it was changed to, with its unit
   * @param level clouding level of the changed run
   * @param helps whether it would have left the film with less water or, where the change is told
   *     of the day it gets ready, ready sooner
   */
  public record Counterfactual(
      String change,
      String was,
      String would,
      String level,
      OptionalDouble waterPeakPct,
      OptionalDouble waterLimitPct,
      boolean helps) {}
}
