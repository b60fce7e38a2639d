package coatwright.store.influx;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalInt;

/** What became of lines sent to a server. */
sealed interface Answer {
  /** It has them. */
  record Stored() implements Answer {}

  /**
   * It refused at least one of them for what it is.
   *
   * @param dropped how many it left out, where it says so
   */
  record Refused(String reason, OptionalInt dropped) implements Answer {}

  /** They were too many for one request. */
  record TooLarge(String reason) implements Answer {}

  /**
   * It cannot take them now.
   *
   * @param reason a sentence with the remedy
   * @param asksFor how long it asks to be left alone
   */
  record Away(String reason, Optional<Duration> asksFor) implements Answer {}
}
