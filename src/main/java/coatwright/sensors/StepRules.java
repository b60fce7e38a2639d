package coatwright.sensors;

import coatwright.air.SaturationPressure;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * How fast air can change. Humidity is judged by the vapour it stands for first: where temperature
 * alone moved it, nothing is wrong. One sample that jumps is held back; the next that is no step
 * from it bears both out, and one that is back where the air was makes it a spike. The longer the
 * silence before, the more is allowed, until only the plausible range is left to judge by.
 *
 * <p>Some elements carry a heater and pulse it: for seconds the temperature jumps up and the
 * humidity down at one vapour pressure. No room's air warms so fast, so such a rise is a step too.
 *
 * <p>Figures: well-mixed air of a 40 m³ shop with the door open or a kettle on changes by at most
 * some 5 points of RH and 2 to 4 K a minute; the step sizes are common practice, no source.
 */
final class StepRules {
  private static final double T_STEP_K = 5;
  private static final double T_PER_MIN = 2;
  private static final double RH_STEP_PCT = 15;
  private static final double RH_PER_MIN = 5;
  private static final double T_FAST_K = 1;
  private static final double RH_FAST_PCT = 3;
  private static final double SAME_VAPOUR = 0.10;
  private static final double PULSE_K = 1.5;
  private static final double PULSE_PER_MIN = 6;
  private static final double UNIT_GUESS_K = 2;
  private static final double TENTH_GUESS = 0.2;

  private static final double SAME_T_K = 0.5;
  private static final double SAME_RH_PCT = 1.5;
  private static final double OTHER_T_K = 3;
  private static final double OTHER_RH_PCT = 10;

  private StepRules() {}

  /** What a sensor stood at: the last it was believed in, or the jump before. */
  private interface Level extends Function<Quantity, Optional<History.Point>> {}

  static void judge(Sample sample, History history) {
    alternation(sample, history);
    List<Quantity> stepped = new ArrayList<>();
    for (Quantity quantity : sample.values().keySet()) {
      if (quantity.ofBattery()) {
        continue;
      }
      if (isStep(sample, quantity, history::believed)) {
        stepped.add(quantity);
      } else {
        history.settle(quantity);
        fast(sample, history, quantity);
      }
    }
    if (!stepped.isEmpty()) {
      borneOutOrHeld(sample, history, stepped);
    }
  }

  private static void borneOutOrHeld(Sample sample, History history, List<Quantity> stepped) {
    boolean borneOut =
        stepped.stream()
            .allMatch(
                quantity ->
                    history
                        .waiting(quantity)
                        .filter(before -> !isStep(sample, quantity, level(before)))
                        .isPresent());
    for (Quantity quantity : stepped) {
      if (borneOut) {
        sample.flag("step");
        history.waiting(quantity).ifPresent(sample::confirms);
        history.settle(quantity);
      } else {
        History.Point before = history.believed(quantity).orElseThrow();
        sample.holdAsStep(reason(before, sample, quantity));
        history.await(quantity, sample);
      }
    }
  }

  private static Level level(Sample before) {
    return quantity -> {
      OptionalDouble value = before.value(quantity);
      return value.isPresent()
          ? Optional.of(new History.Point(value.getAsDouble(), before.at))
          : Optional.empty();
    };
  }

  private static boolean isStep(Sample sample, Quantity quantity, Level from) {
    Optional<History.Point> before = from.apply(quantity);
    if (before.isEmpty()) {
      return false;
    }
    double minutes = minutes(before.get().at(), sample.at);
    double change = change(before.get(), sample, quantity);
    return quantity.isTemperature()
        ? change > T_STEP_K + T_PER_MIN * minutes || isPulse(sample, quantity, from, minutes)
        : !vapourStayed(sample, from) && change > RH_STEP_PCT + RH_PER_MIN * minutes;
  }

  private static boolean isPulse(Sample sample, Quantity quantity, Level from, double minutes) {
    Optional<History.Point> t0 = from.apply(quantity);
    Optional<History.Point> rh0 = from.apply(Quantity.RELATIVE_HUMIDITY);
    if (quantity != Quantity.AIR_TEMPERATURE || t0.isEmpty() || rh0.isEmpty()) {
      return false;
    }
    double rise = sample.value(quantity).orElseThrow() - t0.get().value();
    double rh = sample.value(Quantity.RELATIVE_HUMIDITY).orElse(Double.POSITIVE_INFINITY);
    return rise > PULSE_K
        && rise > PULSE_PER_MIN * Math.max(minutes, 1.0 / 60)
        && rh < rh0.get().value()
        && vapourStayed(sample, from);
  }

  private static double change(History.Point before, Sample sample, Quantity quantity) {
    return Math.abs(sample.value(quantity).orElseThrow() - before.value());
  }

  private static void fast(Sample sample, History history, Quantity quantity) {
    Optional<History.Point> before = history.believed(quantity);
    if (before.isEmpty()) {
      return;
    }
    double minutes = minutes(before.get().at(), sample.at);
    double change = change(before.get(), sample, quantity);
    double rate = change / Math.max(minutes, 1.0 / 6);
    boolean fast =
        quantity.isTemperature()
            ? change > T_FAST_K && rate > T_PER_MIN
            : change > RH_FAST_PCT && rate > RH_PER_MIN && !vapourStayed(sample, history::believed);
    if (fast && minutes < 10) {
      sample.flag("fast");
    }
  }

  /** Notes what is known to come next: a level that is still held then was no spike. */
  static void stays(Sample next, History history) {
    next.values().keySet().forEach(quantity -> history.await(quantity, next));
  }

  /** True when humidity moved only because temperature did. */
  private static boolean vapourStayed(Sample sample, Level from) {
    Optional<History.Point> t0 = from.apply(Quantity.AIR_TEMPERATURE);
    Optional<History.Point> rh0 = from.apply(Quantity.RELATIVE_HUMIDITY);
    if (t0.isEmpty() || rh0.isEmpty() || !sample.has(Quantity.AIR_TEMPERATURE)) {
      return false;
    }
    double t1 = sample.value(Quantity.AIR_TEMPERATURE).getAsDouble();
    double rh1 = sample.value(Quantity.RELATIVE_HUMIDITY).orElse(0);
    double before = rh0.get().value() * SaturationPressure.overWaterPa(t0.get().value());
    double after = rh1 * SaturationPressure.overWaterPa(t1);
    return Math.abs(after - before) <= SAME_VAPOUR * before;
  }

  private static String reason(History.Point before, Sample sample, Quantity quantity) {
    double value = sample.value(quantity).orElseThrow();
    double change = change(before, sample, quantity);
    String span = Text.span(Duration.between(before.at(), sample.at).abs());
    if (!quantity.isTemperature()) {
      boolean tenth =
          Math.abs(value * 10 - before.value()) <= TENTH_GUESS * before.value() && value < 12;
      return "step of %s points of RH in %s%s"
          .formatted(
              Text.tenth(change), span, tenth ? ": a tenth of the true value suspected" : "");
    }
    if (change <= T_STEP_K) {
      return "step of %s K in %s at one vapour pressure: a pulse of the sensor's own heater?"
          .formatted(Text.tenth(change), span);
    }
    boolean inF = Math.abs(Unit.DEG_F.toHouse(quantity, value) - before.value()) <= UNIT_GUESS_K;
    return "step of %s K in %s%s"
        .formatted(
            Text.tenth(change), span, inF ? ": unit change suspected, looks like [degF]" : "");
  }

  /** Two sensors talking on one untagged stream show as values going to and fro. */
  private static void alternation(Sample sample, History history) {
    if (sample.sensor.isPresent()) {
      return;
    }
    if (history.pairs().size() < 2
        || !sample.has(Quantity.AIR_TEMPERATURE)
        || !sample.has(Quantity.RELATIVE_HUMIDITY)) {
      return;
    }
    Iterator<History.Pair> pairs = history.pairs().iterator();
    History.Pair now = History.Pair.of(sample);
    History.Pair last = pairs.next();
    History.Pair before = pairs.next();
    boolean quick = minutes(before.at(), now.at()) <= 1;
    if (quick && !last.jumped() && alternates(before, last, now)) {
      sample.hold(
          "two alternating populations on an untagged stream: two sensors or two programs talk on "
              + "one line; give each a tag");
    }
  }

  static boolean alternates(History.Pair first, History.Pair other, History.Pair again) {
    boolean same =
        Math.abs(first.t() - again.t()) <= SAME_T_K
            && Math.abs(first.rh() - again.rh()) <= SAME_RH_PCT;
    boolean apart =
        Math.abs(first.t() - other.t()) >= OTHER_T_K
            || Math.abs(first.rh() - other.rh()) >= OTHER_RH_PCT;
    return same && apart;
  }

  private static double minutes(Instant from, Instant to) {
    return Math.max(0, Duration.between(from, to).toMillis() / 60_000.0);
  }
}
