package coatwright.sensors.proposal;

import java.util.List;

/**
 * What could be made of what was heard.
 *
 * @param yaml settings ready to be kept, one document a source; empty when nothing could be made
 * @param sources how many sources it holds
 * @param unsure what a person has to look at, one sentence each
 * @param trials what the proposal reads of what was heard
 * @param remarks why the rest was left out, or nothing could be made, each with its remedy
 */
public record Proposal(
    String yaml, int sources, List<String> unsure, List<Trial> trials, List<String> remarks) {
  public Proposal {
    unsure = List.copyOf(unsure);
    trials = List.copyOf(trials);
    remarks = List.copyOf(remarks);
  }

  /**
   * One payload and what the proposal makes of it.
   *
   * @param text the payload, for reading
   * @param verdict {@code accepted}, {@code heldBack} or {@code refused}
   * @param says the values, and the reason where there is one
   */
  public record Trial(String source, String channel, String text, String verdict, String says) {}

  /** True when it holds a source that can be kept. */
  public boolean isUsable() {
    return sources > 0;
  }
}
