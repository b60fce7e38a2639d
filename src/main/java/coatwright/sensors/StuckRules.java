package coatwright.sensors;

import coatwright.sensors.Neighbours.Neighbour;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A sensor that repeats itself. Windows are common practice, no source; that humidity must move
 * when temperature does is arithmetic (some 3 points a kelvin at 50 % RH).
 */
final class StuckRules {
  private static final Duration SUSPECT = Duration.ofHours(2);
  private static final Duration STUCK_BESIDE_ANOTHER = Duration.ofHours(6);
  private static final Duration STUCK_ALONE = Duration.ofDays(1);
  private static final Duration COARSE_ALONE = Duration.ofDays(3);
  private static final Duration FLAT_RH = Duration.ofHours(1);
  private static final Duration AT_CEILING = Duration.ofHours(6);
  private static final double COARSE_STEP = 0.5;
  private static final double FLAT_WHILE_MOVED_K = 2;
  private static final double DRY_NEIGHBOUR_PCT = 90;
  private static final double WET_PCT = 98;
  private static final Duration WET = Duration.ofMinutes(30);
  private static final Duration RECOVERY = Duration.ofDays(1);

  private final Map<Quantity, Double> resolution;

  StuckRules(Map<Quantity, Double> resolution) {
    this.resolution = resolution;
  }

  void judge(Sample sample, History history, List<Neighbour> neighbours) {
    Optional<History.Run> t = run(sample, history, Quantity.AIR_TEMPERATURE);
    Optional<History.Run> rh = run(sample, history, Quantity.RELATIVE_HUMIDITY);
    if (t.isPresent() && rh.isPresent()) {
      Duration both = shorter(t.get().lasting(sample.at), rh.get().lasting(sample.at));
      frozen(sample, both, neighbours);
    }
    if (rh.isPresent()) {
      flat(sample, rh.get());
      ceiling(sample, history, neighbours);
    }
  }

  private static Optional<History.Run> run(Sample sample, History history, Quantity quantity) {
    return sample.has(quantity) ? history.run(quantity) : Optional.empty();
  }

  private static Duration shorter(Duration a, Duration b) {
    return a.compareTo(b) < 0 ? a : b;
  }

  private boolean coarse() {
    return resolution.values().stream().anyMatch(step -> step >= COARSE_STEP);
  }

  private void frozen(Sample sample, Duration lasting, List<Neighbour> neighbours) {
    Duration beside = coarse() ? STUCK_ALONE : STUCK_BESIDE_ANOTHER;
    Duration alone = coarse() ? COARSE_ALONE : STUCK_ALONE;
    boolean another = neighbours.stream().anyMatch(other -> differs(sample, other));
    if (lasting.compareTo(alone) >= 0 || (another && lasting.compareTo(beside) >= 0)) {
      sample.hold(
          "frozen: identical pair for %s; restart the sensor".formatted(Text.span(lasting)));
    } else if (!coarse() && lasting.compareTo(SUSPECT) >= 0) {
      sample.flag("unchanged");
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
    if (lasting && !coarse() && moved > FLAT_WHILE_MOVED_K && rh.value() < History.CEILING_PCT) {
      sample.hold(
          "rh stands at %s for %s while temperature moved by %s K: the element is stuck"
              .formatted(
                  Text.plain(rh.value()), Text.span(rh.lasting(sample.at)), Text.tenth(moved)));
    }
  }

  private static void ceiling(Sample sample, History history, List<Neighbour> neighbours) {
    double rh = sample.value(Quantity.RELATIVE_HUMIDITY).orElse(0);
    double t = sample.value(Quantity.AIR_TEMPERATURE).orElse(20);
    wetness(sample, history, rh);
    if (history.highSince().isEmpty()) {
      return;
    }
    Instant since = history.highSince().get();
    Duration lasting = Duration.between(since, sample.at);
    Optional<Neighbour> dry =
        neighbours.stream().filter(other -> other.rhAt(t) < DRY_NEIGHBOUR_PCT).findFirst();
    if (lasting.compareTo(AT_CEILING) > 0 && dry.isPresent()) {
      sample.hold(
          "rh at its ceiling for %s while another sensor in the room reads %s %%: wet or saturated"
              .formatted(Text.span(lasting), Text.tenth(dry.get().rh())));
    }
  }

  /** After being wet a sensor may warn, but not clear a warning, until it has been dry a day. */
  private static void wetness(Sample sample, History history, double rh) {
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
    if (history.wetUntil().map(until -> sample.at.isBefore(until)).orElse(false)) {
      sample.flag("recovering");
    } else {
      history.wetUntil(Optional.empty());
    }
  }
}
