package coatwright.store.influx;

import java.time.Duration;

/**
 * How often a mirror does what.
 *
 * @param look the pause before it looks for more when it has sent all
 * @param firstRetry the pause after a first failure
 * @param longestRetry the longest pause between two tries
 * @param settle how long a server may take until it counts what it has taken
 * @param counting the pause between two counts
 * @param mostWaiting readings that may wait one by one; beyond, it goes through the history again
 */
record Pace(
    Duration look,
    Duration firstRetry,
    Duration longestRetry,
    Duration settle,
    Duration counting,
    long mostWaiting) {
  /** Two million keys are some forty megabytes: a year of four sensors at a minute each. */
  static final Pace USUAL =
      new Pace(
          Duration.ofSeconds(1),
          Duration.ofSeconds(1),
          Duration.ofSeconds(60),
          Duration.ofSeconds(60),
          Duration.ofMinutes(10),
          2_000_000);
}
