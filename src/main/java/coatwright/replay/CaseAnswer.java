package coatwright.replay;

import coatwright.outlook.Outlook;
import coatwright.review.Why.AirAtFault;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.Optional;

/**
 * What can be said of a case someone describes. Component names are the JSON keys of the contract.
 *
 * @param summary what would have been said before the brush: the outlook's own words
 * @param clouding where the description fixes an air; from the model of the shop's nearest finish,
 *     else from the dew point alone
 * @param drying from the same model
 * @param causes likeliest first; their probabilities sum to 1
 * @param advice what to do, a sentence each
 * @param questions what would settle it, a sentence each
 */
public record CaseAnswer(
    Outlook.Summary summary,
    Optional<Outlook.Clouding> clouding,
    Optional<Outlook.Drying> drying,
    List<Cause> causes,
    AirAtFault airAtFault,
    List<String> advice,
    List<String> questions) {
  public CaseAnswer {
    causes = List.copyOf(causes);
    advice = List.copyOf(advice);
    questions = List.copyOf(questions);
  }

  /**
   * A cause weighed.
   *
   * @param probability 0 to 1; weights are ours, an ordering more than a measurement
   * @param forIt what in the description speaks for it
   */
  public record Cause(
      String cause,
      double probability,
      @JsonProperty("for") List<String> forIt,
      List<String> against) {
    public Cause {
      forIt = List.copyOf(forIt);
      against = List.copyOf(against);
    }
  }
}
