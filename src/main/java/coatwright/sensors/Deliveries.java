package coatwright.sensors;

import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a broker can do to messages on the way: deliver one twice, keep one for months, or let go a
 * whole backlog at once.
 */
final class Deliveries {
  private static final Duration TOGETHER = Duration.ofMillis(200);

  /** So many within moments of each other were kept somewhere and let go together. */
  static final int BURST = 3;

  private static final int MOST_CHANNELS = 512;
  private static final int MOST_TOLD = 4_096;
  private static final Duration FRESH = Duration.ofHours(6);
  private static final int STANDING_INTERVALS = 3;

  private record Last(String octets, Instant at, int together) {}

  private final SourceMapping mapping;
  private final Map<String, Last> channels =
      new LinkedHashMap<>() {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Last> eldest) {
          return size() > MOST_CHANNELS;
        }
      };

  private int recalledBurst;

  /** What was told with a time of its own: the same once more is the same message once more. */
  private record Told(String sensor, Instant at, Map<Quantity, Double> values) {}

  private final Set<Told> told =
      Collections.newSetFromMap(
          new LinkedHashMap<>() {
            @Override
            protected boolean removeEldestEntry(Map.Entry<Told, Boolean> eldest) {
              return size() > MOST_TOLD;
            }
          });

  Deliveries(SourceMapping mapping) {
    this.mapping = mapping;
  }

  /** What this delivery looks like by itself. */
  record Look(boolean repeated, int together) {
    boolean burst() {
      return together >= BURST;
    }
  }

  /** A recording tells how many messages came just before. */
  void recallBurst(int count) {
    recalledBurst = count;
  }

  /** Looks at it beside the one before of the same sensor by the same topic. */
  Look look(RawReading raw, String sensor) {
    String channel = raw.channel() + "\n" + sensor;
    Last last = channels.get(channel);
    Duration gap =
        last == null ? Duration.ofDays(1) : Duration.between(last.at(), raw.arrivedAt()).abs();
    int together = last != null && gap.compareTo(TOGETHER) < 0 ? last.together() + 1 : 1;
    together += recalledBurst;
    boolean same = last != null && last.octets().equals(raw.octets());
    boolean soon = gap.compareTo(mapping.every().dividedBy(2)) < 0;
    if (raw.way() == RawReading.Way.MESSAGE || raw.way() == RawReading.Way.BACKLOG) {
      channels.put(channel, new Last(raw.octets(), raw.arrivedAt(), together));
    }
    return switch (raw.way()) {
      case LINE -> new Look(false, 1);
      case BACKLOG -> new Look(false, Math.max(BURST, together));
      case MESSAGE, RETAINED -> new Look(same && soon, together);
    };
  }

  /** Holds back what came in a burst without a time of its own: its order is known, no more. */
  void hold(Sample sample, Look look) {
    if (!sample.ownTime && look.burst()) {
      sample.hold(
          "backlog burst: %d or more messages within moments of each other and no time of their own; only their order is known"
              .formatted(look.together()));
    }
  }

  /** Why a retained value is no reading; empty when the settings and its own time make it one. */
  Optional<String> retained(RawReading raw, Sample sample) {
    Transport.Retained mode =
        mapping.transport().orElse(null) instanceof Transport.Mqtt mqtt
            ? mqtt.retained()
            : Transport.Retained.LAST_KNOWN;
    Duration age = Duration.between(sample.at, raw.arrivedAt());
    if (sample.ownTime && age.compareTo(FRESH) > 0) {
      return Optional.of("retained and %s old".formatted(Text.span(age)));
    }
    if (mode == Transport.Retained.IGNORE) {
      sample.repeated();
      return Optional.of("retained; ignored, as the settings say");
    }
    if (mode == Transport.Retained.READING_IF_TIMED && sample.ownTime) {
      sample.flag("retained");
      return Optional.empty();
    }
    return Optional.of(
        sample.ownTime
            ? "retained on subscribe; shown as last known, not logged"
            : "retained on subscribe; age unknown");
  }

  /**
   * Why the sender is taken to repeat an old value: its own counter or clock has not moved for
   * three intervals though it goes on sending. The time of the link is not the time of the
   * measurement.
   */
  Optional<String> standingStill(Sample sample, History history, RawReading raw) {
    Optional<String> mark =
        sample.sequence.or(() -> sample.ownTime ? Optional.of("" + sample.at) : Optional.empty());
    if (mark.isEmpty()) {
      return Optional.empty();
    }
    Duration still = history.standsStill(mark.get(), raw.arrivedAt());
    return still.compareTo(mapping.every().multipliedBy(STANDING_INTERVALS)) < 0
        ? Optional.empty()
        : Optional.of(
            "its own %s has stood at %s for %s: what carries it repeats the last value; look at the sensor itself"
                .formatted(
                    sample.sequence.isPresent() ? "counter" : "time",
                    mark.get(),
                    Text.span(still)));
  }

  /** Why a sample is one already taken; empty when it is new. */
  Optional<String> duplicate(Sample sample, History history, Look look) {
    if (sample.sequence.isPresent() && sample.sequence.equals(history.sequence())) {
      return Optional.of("duplicate of seq " + sample.sequence.get());
    }
    boolean sameTime = sample.ownTime && history.newest().equals(Optional.of(sample.at));
    if (sameTime && history.believedSame(sample)) {
      return Optional.of("duplicate of " + sample.at);
    }
    if (sample.ownTime && !told.add(new Told(sample.key, sample.at, sample.values()))) {
      return Optional.of("duplicate of " + sample.at + ", delivered again");
    }
    boolean numbered = sample.sequence.isPresent() || sample.ownTime;
    return look.repeated() && !numbered
        ? Optional.of("duplicate: the same bytes again within half the interval")
        : Optional.empty();
  }
}
