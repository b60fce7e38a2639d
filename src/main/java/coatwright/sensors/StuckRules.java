package coatwright.sensors;

import coatwright.climate.Mistrust;
import coatwright.sensors.Neighbours.Neighbour;
import coatwright.sensors.Neighbours.Standing;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * A sensor that repeats itself, stands at an end, or was wet. A pair that stays the same is a fault
 * only where the air moved: by another sensor of the room, or because a whole day has passed over
 * it. Windows are common practice, no source; that humidity must move when temperature does is
 * arithmetic (some 3 points a kelvin at 50 % RH).
 */
final class StuckRules {
  private static final Duration SUSPECT = Duration.ofHours(2);
  private static final Duration STUCK_BESIDE_ANOTHER = Duration.ofHours(6);
  private static final Duration STUCK_ALONE = Duration.ofDays(1);
  private static final Duration FLAT_RH = Duration.ofHours(1);
  private static final Duration AT_CEILING = Duration.ofHours(6);
  private static final double COARSE_STEP = 0.5;
  private static final double FLAT_WHILE_MOVED_K = 2;
  private static final double COARSE_FLAT_WHILE_MOVED_K = 3;
  private static final double ROSE_AT_CEILING_K = 3;
  private static final double DRY_NEIGHBOUR_PCT = 90;
  private static final double WET_PCT = 98;
  private static final Duration WET = Duration.ofMinutes(30);
  private static final Duration RECOVERY = Duration.ofDays(1);
  private static final double AGREES_PCT = 4;
  private static final Duration AGREES_FOR = Duration.ofHours(2);

  private final Map<Quantity, Double> resolution;

  StuckRules(Map<Quantity, Double> resolution) {
    this.resolution = resolution;
  }

  /**
   * @param moved whether another sensor of the room moved since an instant; empty where none was
   *     heard so long
   */
  void judge(
      Sample sample,
      History history,
      List<Neighbour> neighbours,
      Function<Instant, Optional<Boolean>> moved) {
    Optional<History.Run> t = run(sample, history, Quantity.AIR_TEMPERATURE);
    Optional<History.Run> rh = run(sample, history, Quantity.RELATIVE_HUMIDITY);
    if (t.isPresent() && rh.isPresent()) {
      Instant since = later(t.get().since(), rh.get().since());
      frozen(sample, since, neighbours, moved);
    }
    if (rh.isPresent()) {
      flat(sample, rh.get());
      ceiling(sample, history, neighbours);
      wetness(sample, history, neighbours);
    }
  }

  private static Optional<History.Run> run(Sample sample, History history, Quantity quantity) {
    return sample.has(quantity) ? history.run(quantity) : Optional.empty();
  }

  private static Instant later(Instant a, Instant b) {
    return a.isAfter(b) ? a : b;
  }

  private boolean coarse() {
    return resolution.values().stream().anyMatch(step -> step >= COARSE_STEP);
  }

  private void frozen(
      Sample sample,
      Instant since,
      List<Neighbour> neighbours,
      Function<Instant, Optional<Boolean>> moved) {
    Duration lasting = Duration.between(since, sample.at);
    if (lasting.compareTo(SUSPECT) < 0) {
      return;
    }
    boolean another =
        moved
            .apply(since)
            .orElseGet(() -> neighbours.stream().anyMatch(other -> differs(sample, other)));
    Duration beside = coarse() ? STUCK_ALONE : STUCK_BESIDE_ANOTHER;
    if (lasting.compareTo(STUCK_ALONE) >= 0 || (another && lasting.compareTo(beside) >= 0)) {
      sample.hold(
          "frozen: identical pair for %s; restart the sensor".formatted(Text.span(lasting)));
    } else if (!coarse()) {
      sample.flag(another ? Mistrust.STUCK.toString() : "unchanged");
    }
  }

  private static boolean differs(Sample sample, Neighbour other) {
    double t = sample.value(Quantity.AIR_TEMPERATURE).orElse(0);
    double rh = sample.value(Quantity.RELATIVE_HUMIDITY).orElse(0);
    return Math.abs(other.rh() - rh) > 3 || Math.abs(other.t().orElse(t) - t) > 1;
  }

  private void flat(Sample sample, History.Run rh) {
    boolean lasting = rh.lasting(sample.at).compareTo(FLAT_RH) >= 0;
    double moved = rh.warmest() - rh.coldest();
    double most = coarse() ? COARSE_FLAT_WHILE_MOVED_K : FLAT_WHILE_MOVED_K;
    if (lasting && moved > most && rh.value() < History.CEILING_PCT) {
      sample.hold(
          "rh stands at %s for %s while temperature moved by %s K: the element is stuck"
              .formatted(
                  Text.plain(rh.value()), Text.span(rh.lasting(sample.at)), Text.tenth(moved)));
    }
  }

  private static void ceiling(Sample sample, History history, List<Neighbour> neighbours) {
    if (history.highSince().isEmpty()) {
      return;
    }
    Duration lasting = Duration.between(history.highSince().get(), sample.at);
    if (lasting.compareTo(AT_CEILING) <= 0) {
      return;
    }
    OptionalDouble t = sample.value(Quantity.AIR_TEMPERATURE);
    Optional<Neighbour> dry =
        neighbours.stream()
            .filter(other -> other.rhAt(t.orElse(20)) < DRY_NEIGHBOUR_PCT)
            .findFirst();
    dry.ifPresent(
        other ->
            sample.hold(
                "rh at its ceiling for %s while another sensor in the room reads %s %%: wet or saturated"
                    .formatted(Text.span(lasting), Text.tenth(other.rh()))));
    double rose =
        t.isPresent() && history.coldestWhileHigh().isPresent()
            ? t.getAsDouble() - history.coldestWhileHigh().getAsDouble()
            : 0;
    if (rose > ROSE_AT_CEILING_K) {
      sample.hold(
          "rh at its ceiling for %s though temperature rose by %s K: wet or saturated"
              .formatted(Text.span(lasting), Text.tenth(rose)));
    }
  }

  /**
   * After being wet a sensor may warn, but not clear a warning, until it has been dry a day or has
   * agreed with another sensor of the room for two hours.
   */
  private static void wetness(Sample sample, History history, List<Neighbour> neighbours) {
    double rh = sample.value(Quantity.RELATIVE_HUMIDITY).orElse(0);
    boolean wet =
        rh >= WET_PCT
            && history
                .wetSince()
                .map(since -> Duration.between(since, sample.at).compareTo(WET) > 0)
                .orElse(false);
    if (rh < WET_PCT) {
      history.wetSince(Optional.empty());
    } else if (history.wetSince().isEmpty()) {
      history.wetSince(Optional.of(sample.at));
    }
    if (wet || (rh >= DRY_NEIGHBOUR_PCT && history.wetUntil().isPresent())) {
      history.wetUntil(Optional.of(sample.at.plus(RECOVERY)));
    }
    boolean recovering =
        history.wetUntil().map(until -> sample.at.isBefore(until)).orElse(false)
            && !vouchedFor(sample, history, rh, neighbours);
    if (recovering) {
      sample.flag(Mistrust.RECOVERING.toString());
    } else {
      history.wetUntil(Optional.empty());
      history.agreesSince(Optional.empty());
    }
  }

  private static boolean vouchedFor(
      Sample sample, History history, double rh, List<Neighbour> neighbours) {
    OptionalDouble t = sample.value(Quantity.AIR_TEMPERATURE);
    boolean agrees =
        rh < WET_PCT
            && neighbours.stream()
                .filter(other -> other.standing() != Standing.DOUBTFUL)
                .anyMatch(
                    other ->
                        Math.abs((t.isPresent() ? other.rhAt(t.getAsDouble()) : other.rh()) - rh)
                            <= AGREES_PCT);
    history.agreesSince(
        agrees ? history.agreesSince().or(() -> Optional.of(sample.at)) : Optional.empty());
    return history
        .agreesSince()
        .map(since -> Duration.between(since, sample.at).compareTo(AGREES_FOR) >= 0)
        .orElse(false);
  }
}
