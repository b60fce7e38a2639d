package coatwright.sensors.serial;

import java.time.Duration;

/** One question asked again and again over a shared line, and who wants its answer. */
public interface Poll {
  /** How often. */
  Duration every();

  /** The bytes that ask. */
  byte[] request();

  /** What the bytes that have come so far are, our own echo already taken off. */
  Verdict judge(byte[] answer);

  /** The whole answer came. Called on the line's own thread. */
  void heard(byte[] answer);

  /**
   * No answer that can be used, after all tries.
   *
   * @param answer what came of the last one, perhaps nothing
   */
  void unheard(byte[] answer, String why);

  /** What an answer is worth. */
  sealed interface Verdict {
    /** Its end has not come yet. */
    record Unfinished(String why) implements Verdict {}

    /** It is whole and right. */
    record Right() implements Verdict {}

    /**
     * It is whole and no answer to use.
     *
     * @param askAgain whether another try may bring a better one
     */
    record Wrong(String why, boolean askAgain) implements Verdict {}
  }
}
