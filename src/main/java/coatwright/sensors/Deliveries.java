package coatwright.sensors;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What a broker can do to messages on the way: deliver one twice, keep one for months, or let go a
 * whole backlog at once.
 */
final class Deliveries {
  private static final Duration TOGETHER = Duration.ofMillis(200);
  private static final int BURST = 3;
  private static final int MOST_CHANNELS = 512;
  private static final Duration FRESH = Duration.ofHours(6);

  private record Last(String octets, Instant at, int together) {}

  private final SourceMapping mapping;
  private final Map<String, Last> channels =
      new LinkedHashMap<>() {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Last> eldest) {
          return size() > MOST_CHANNELS;
        }
      };

  Deliveries(SourceMapping mapping) {
    this.mapping = mapping;
  }

  /** What this delivery looks like by itself. */
  record Look(boolean repeated, int together) {
    boolean burst() {
      return together >= BURST;
    }
  }

  Look look(RawReading raw) {
    Last last = channels.get(raw.channel());
    Duration gap =
        last == null ? Duration.ofDays(1) : Duration.between(last.at(), raw.arrivedAt()).abs();
    int together = last != null && gap.compareTo(TOGETHER) < 0 ? last.together() + 1 : 1;
    boolean same = last != null && last.octets().equals(raw.octets());
    boolean soon = gap.compareTo(mapping.every().dividedBy(2)) < 0;
    if (raw.way() == RawReading.Way.MESSAGE) {
      channels.put(raw.channel(), new Last(raw.octets(), raw.arrivedAt(), together));
    }
    return raw.way() == RawReading.Way.LINE ? new Look(false, 1) : new Look(same && soon, together);
  }

  /** Holds back what came in a burst without a time of its own: its order is known, no more. */
  void hold(Sample sample, Look look) {
    if (!sample.ownTime && look.burst()) {
      sample.hold(
          "backlog burst: %d messages within moments of each other and no time of their own"
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
      return Optional.of("retained; this source ignores what the broker kept");
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

  /** Why a sample is one already taken; empty when it is new. */
  Optional<String> duplicate(Sample sample, History history, Look look) {
    if (sample.sequence.isPresent() && sample.sequence.equals(history.sequence())) {
      return Optional.of("duplicate of seq " + sample.sequence.get());
    }
    boolean sameTime = sample.ownTime && history.newest().equals(Optional.of(sample.at));
    if (sameTime && history.believedSame(sample)) {
      return Optional.of("duplicate of " + sample.at);
    }
    boolean told = sample.sequence.isPresent() || sample.ownTime;
    return look.repeated() && !told
        ? Optional.of("duplicate: the same bytes again within half the interval")
        : Optional.empty();
  }
}
