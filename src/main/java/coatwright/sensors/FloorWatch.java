package coatwright.sensors;

import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Looks whether one sensor's humidity ends at the same lowest value again and again: an element
 * that sticks at one side. Over the last seven days more than a fifth of the samples at the very
 * minimum; the share is ours. Told only where the humidity moved by ten points meanwhile, because a
 * calm room repeats itself too.
 */
final class FloorWatch {
  private static final int DAYS = 7;
  private static final long DAY_S = 86_400;
  private static final int LEAST_DAYS = 3;
  private static final long LEAST_SAMPLES = 300;
  private static final double MOST_SHARE = 0.20;
  private static final double LEAST_SPAN_PCT = 10;

  /** One day's lowest, how often it was hit, and of how many. */
  private static final class Day {
    private final long number;
    private double lowest = Double.POSITIVE_INFINITY;
    private double highest = Double.NEGATIVE_INFINITY;
    private long hits;
    private long samples;

    Day(long number) {
      this.number = number;
    }

    void add(double rh) {
      if (rh < lowest) {
        lowest = rh;
        hits = 0;
      }
      hits += Double.compare(rh, lowest) == 0 ? 1 : 0;
      highest = Math.max(highest, rh);
      samples++;
    }
  }

  private final Deque<Day> days = new ArrayDeque<>();

  /** Takes one in; true when it stands at a floor. */
  boolean take(double rh, Instant at) {
    long number = Math.floorDiv(at.getEpochSecond(), DAY_S);
    if (days.isEmpty() || days.getLast().number < number) {
      days.addLast(new Day(number));
    }
    days.getLast().add(rh);
    while (days.getFirst().number <= days.getLast().number - DAYS) {
      days.removeFirst();
    }
    return isFloor(rh);
  }

  private boolean isFloor(double rh) {
    double lowest = days.stream().mapToDouble(day -> day.lowest).min().orElse(rh);
    double highest = days.stream().mapToDouble(day -> day.highest).max().orElse(rh);
    long samples = days.stream().mapToLong(day -> day.samples).sum();
    long hits =
        days.stream()
            .filter(day -> Double.compare(day.lowest, lowest) == 0)
            .mapToLong(day -> day.hits)
            .sum();
    return Double.compare(rh, lowest) == 0
        && days.size() >= LEAST_DAYS
        && samples >= LEAST_SAMPLES
        && highest - lowest >= LEAST_SPAN_PCT
        && hits > MOST_SHARE * samples;
  }
}
