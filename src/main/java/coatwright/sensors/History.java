package coatwright.sensors;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one sensor said before: enough to judge the next value, and no more. Belongs to the thread
 * that reads payloads.
 */
final class History {
  private static final int RECENT = 8;

  /** From here up an element may be saturated rather than measuring, % RH. */
  static final double CEILING_PCT = 99.5;

  /** A value and when it was measured. */
  record Point(double value, Instant at) {}

  /**
   * A run of equal values, and how far temperature moved meanwhile; the ends stand the wrong way
   * round, infinite, while no temperature has come.
   */
  record Run(double value, Instant since, double coldest, double warmest) {
    static Run begun(double value, Instant since) {
      return new Run(value, since, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);
    }

    Run with(double temperature) {
      return new Run(value, since, Math.min(coldest, temperature), Math.max(warmest, temperature));
    }

    Duration lasting(Instant now) {
      return Duration.between(since, now);
    }
  }

  /**
   * A pair as it was sent, believed or not.
   *
   * @param jumped it was held back because it was a step
   */
  record Pair(double t, double rh, Instant at, boolean jumped) {
    static Pair of(Sample sample) {
      return new Pair(
          sample.value(Quantity.AIR_TEMPERATURE).orElse(0),
          sample.value(Quantity.RELATIVE_HUMIDITY).orElse(0),
          sample.at,
          sample.hasJumped());
    }
  }

  private final Map<Quantity, Point> believed = new EnumMap<>(Quantity.class);
  private final Map<Quantity, Point> seen = new EnumMap<>(Quantity.class);
  private final Map<Quantity, Sample> steps = new EnumMap<>(Quantity.class);
  private final Map<Quantity, Run> runs = new EnumMap<>(Quantity.class);
  private final Deque<Pair> pairs = new ArrayDeque<>();
  private Optional<Instant> newest = Optional.empty();
  private Optional<String> sequence = Optional.empty();
  private Optional<Instant> highSince = Optional.empty();
  private Optional<Instant> wetSince = Optional.empty();
  private Optional<Instant> wetUntil = Optional.empty();
  private Optional<Instant> agreesSince = Optional.empty();
  private OptionalDouble coldestWhileHigh = OptionalDouble.empty();
  private Optional<Instant> tellsNewSince = Optional.empty();
  private Optional<String> ownMark = Optional.empty();
  private final Drift drift = new Drift();
  private final FloorWatch floor = new FloorWatch();
  private final WarmUp warmUp = new WarmUp();

  Optional<Point> believed(Quantity quantity) {
    return Optional.ofNullable(believed.get(quantity));
  }

  Optional<Point> seen(Quantity quantity) {
    return Optional.ofNullable(seen.get(quantity));
  }

  /** The sample that jumped in that quantity just before, and waits for the next to agree. */
  Optional<Sample> waiting(Quantity quantity) {
    return Optional.ofNullable(steps.get(quantity));
  }

  void await(Quantity quantity, Sample step) {
    steps.put(quantity, step);
  }

  void settle(Quantity quantity) {
    steps.remove(quantity);
  }

  Optional<Run> run(Quantity quantity) {
    return Optional.ofNullable(runs.get(quantity));
  }

  /** The last pairs sent, newest first. */
  Deque<Pair> pairs() {
    return pairs;
  }

  /** Measured time of the newest reading believed. */
  Optional<Instant> newest() {
    return newest;
  }

  /** True when these very values are already believed. */
  boolean believedSame(Sample sample) {
    return sample.values().entrySet().stream()
        .allMatch(
            value ->
                believed(value.getKey())
                    .map(point -> Double.compare(point.value(), value.getValue()) == 0)
                    .orElse(false));
  }

  Optional<String> sequence() {
    return sequence;
  }

  void sequence(Optional<String> latest) {
    if (latest.isPresent()) {
      sequence = latest;
    }
  }

  /** Since when humidity has stood at its upper end. */
  Optional<Instant> highSince() {
    return highSince;
  }

  /** Since when it has been so humid that the element may be wet. */
  Optional<Instant> wetSince() {
    return wetSince;
  }

  void wetSince(Optional<Instant> since) {
    wetSince = since;
  }

  /** Until when a sensor that was wet may not clear a warning. */
  Optional<Instant> wetUntil() {
    return wetUntil;
  }

  void wetUntil(Optional<Instant> until) {
    wetUntil = until;
  }

  /** Since when it has agreed with another sensor of the room after it was wet. */
  Optional<Instant> agreesSince() {
    return agreesSince;
  }

  void agreesSince(Optional<Instant> since) {
    agreesSince = since;
  }

  /** The coldest it measured while humidity has stood at its upper end. */
  OptionalDouble coldestWhileHigh() {
    return coldestWhileHigh;
  }

  Drift drift() {
    return drift;
  }

  FloorWatch floor() {
    return floor;
  }

  WarmUp warmUp() {
    return warmUp;
  }

  /**
   * How long the sender's own mark (its counter, or its own time) has stood still.
   *
   * @param mark what it says now
   */
  Duration standsStill(String mark, Instant arrivedAt) {
    if (!ownMark.equals(Optional.of(mark)) || tellsNewSince.isEmpty()) {
      ownMark = Optional.of(mark);
      tellsNewSince = Optional.of(arrivedAt);
    }
    return Duration.between(tellsNewSince.get(), arrivedAt);
  }

  /** Notes that a reading of that time is already kept. */
  void newest(Instant at) {
    newest = Optional.of(at);
  }

  /**
   * Notes what was sent, after the limits and the step rules have spoken: a temperature they hold
   * back is no sign that the air's temperature moved.
   */
  void saw(Sample sample) {
    if (sample.has(Quantity.RELATIVE_HUMIDITY)) {
      boolean high = sample.value(Quantity.RELATIVE_HUMIDITY).orElse(0) >= CEILING_PCT;
      highSince = high ? Optional.of(highSince.orElse(sample.at)) : Optional.empty();
    }
    if (highSince.isEmpty()) {
      coldestWhileHigh = OptionalDouble.empty();
    }
    OptionalDouble t =
        sample.isHeld() ? OptionalDouble.empty() : sample.value(Quantity.AIR_TEMPERATURE);
    if (highSince.isPresent() && t.isPresent()) {
      coldestWhileHigh =
          OptionalDouble.of(Math.min(coldestWhileHigh.orElse(t.getAsDouble()), t.getAsDouble()));
    }
    sample
        .values()
        .forEach(
            (quantity, value) -> {
              Run run =
                  run(quantity)
                      .filter(before -> Double.compare(before.value(), value) == 0)
                      .orElseGet(() -> Run.begun(value, sample.at));
              runs.put(quantity, t.isPresent() ? run.with(t.getAsDouble()) : run);
            });
  }

  /** Notes what it was, after it was judged. */
  void keep(Sample sample, boolean accepted) {
    sample.values().forEach((q, value) -> seen.put(q, new Point(value, sample.at)));
    sequence(sample.sequence);
    if (sample.has(Quantity.AIR_TEMPERATURE) && sample.has(Quantity.RELATIVE_HUMIDITY)) {
      pairs.addFirst(Pair.of(sample));
      while (pairs.size() > RECENT) {
        pairs.removeLast();
      }
    }
    boolean inOrder = newest.map(latest -> !sample.at.isBefore(latest)).orElse(true);
    if (accepted && inOrder) {
      sample.values().forEach((q, value) -> believed.put(q, new Point(value, sample.at)));
      if (sample.hasReading()) {
        newest = Optional.of(sample.at);
      }
    }
  }
}
