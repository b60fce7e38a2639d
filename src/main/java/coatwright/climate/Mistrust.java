package coatwright.climate;

import java.util.Arrays;
import java.util.Optional;

/**
 * Why a reading that passed the screen is still in doubt. One in doubt may begin a warning; it
 * never ends one, and no coat is allowed on the strength of it.
 */
public enum Mistrust {
  STUCK(
      "stuck", "it has said the same for hours while another sensor of the room moved; restart it"),
  RECOVERING("recovering", "it was wet and has not been dry long enough since"),
  DRIFTING(
      "drifting",
      "its vapour stands apart from the room's other sensors for a day; test it with a salt"),
  AT_FLOOR("floor", "its humidity keeps ending at the same lowest value; test it with a salt"),
  CHECK_OVERDUE("check_overdue", "its salt check is long overdue; see coatwright calibrate");

  private final String word;
  private final String sentence;

  Mistrust(String word, String sentence) {
    this.word = word;
    this.sentence = sentence;
  }

  /** What is wrong and what to do. */
  public String sentence() {
    return sentence;
  }

  /** The first of these among a reading's flags. */
  public static Optional<Mistrust> among(Iterable<String> flags) {
    for (String flag : flags) {
      Optional<Mistrust> found =
          Arrays.stream(values()).filter(each -> each.word.equals(flag)).findFirst();
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  /** The flag a reading carries. */
  @Override
  public String toString() {
    return word;
  }
}
