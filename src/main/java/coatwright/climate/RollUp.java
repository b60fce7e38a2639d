package coatwright.climate;

import java.time.Instant;

/**
 * Sum, count, least and greatest of one quantity over one interval; means are computed, never
 * stored.
 */
public record RollUp(
    Instant from, String quantity, double sum, long count, double min, double max) {
  /** Arithmetic mean over the interval. */
  public double mean() {
    return sum / count;
  }
}
