package coatwright.sensors;

import coatwright.climate.Doubt;
import coatwright.climate.Mistrust;
import coatwright.climate.RawText;
import coatwright.climate.Reading;
import coatwright.climate.SourceState;
import coatwright.climate.SourceStatus;
import coatwright.climate.SourceTrust;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How a source is doing. Ages are measured by monotonic time, so that a clock set by hand or by the
 * network makes nothing stale or fresh. Safe for several threads.
 */
final class SourceWatch {
  private static final Duration LONGEST_LEARNED = Duration.ofHours(1);
  private static final Duration FLOOD_SHOWN = Duration.ofMinutes(10);
  private static final int KEPT = 20;
  private static final int GAPS = 8;
  private static final int MOST_SENSORS = 64;
  private static final int NO_HUMIDITY_TOLD = 3;
  private static final int MOST_SENT = 2_000;
  private static final Duration SENT_KEPT = Duration.ofMinutes(20);

  private final SourceMapping mapping;
  private final Deque<RawText> lastRefused = new ArrayDeque<>();
  private final Deque<Duration> gaps = new ArrayDeque<>();
  private long accepted;
  private long heldBack;
  private long refused;
  private int badInARow;
  private @Nullable Long lastAcceptedNanos;
  private Optional<Instant> lastReadingAt = Optional.empty();
  private Optional<String> lastKnown = Optional.empty();
  private boolean absent;
  private long droppedUnread;
  private @Nullable Long lastDroppedNanos;
  private List<Doubt> doubts = List.of();
  private final Map<String, Reading> newestBySensor = new LinkedHashMap<>();
  private int noHumidityInARow;
  private final Deque<JustSent> justSent = new ArrayDeque<>();
  private Optional<String> noHumidityBecause = Optional.empty();
  private final Calibration calibration;
  private final Clock clock;

  SourceWatch(SourceMapping mapping, Calibration calibration, Clock clock) {
    this.mapping = mapping;
    this.calibration = calibration;
    this.clock = clock;
  }

  synchronized void took(Intake.Taken taken, boolean retained, long nanos) {
    taken.present().ifPresent(this::present);
    if (taken.harmless()) {
      return;
    }
    MappedPayload verdict = taken.verdict();
    doubts = taken.doubts();
    noteHumidity(verdict);
    taken.readings().forEach(this::note);
    taken.sent().forEach(this::note);
    if (!taken.readings().isEmpty()) {
      accepted++;
      badInARow = 0;
      absent = false;
      noteGap(nanos);
      lastAcceptedNanos = nanos;
      lastReadingAt = Optional.of(taken.readings().get(taken.readings().size() - 1).at());
    } else if (retained) {
      lastKnown = Optional.of(taken.raw().text());
    } else {
      badInARow++;
    }
    heldBack += verdict.heldBack().isEmpty() ? 0 : 1;
    refused += verdict.refused().isEmpty() ? 0 : 1;
    if (!verdict.heldBack().isEmpty() || !verdict.refused().isEmpty()) {
      lastRefused.addFirst(taken.raw());
      while (lastRefused.size() > KEPT) {
        lastRefused.removeLast();
      }
    }
  }

  private void note(JustSent sent) {
    justSent.addLast(sent);
    while (justSent.size() > MOST_SENT
        || justSent.getFirst().at().isBefore(sent.at().minus(SENT_KEPT))) {
      justSent.removeFirst();
    }
  }

  /** What a sensor sent over the last quarter of an hour, oldest first. */
  synchronized List<JustSent> justSent(String sensor) {
    return justSent.stream().filter(sent -> sent.sensor().equals(sensor)).toList();
  }

  /** Names of the sensors that were heard; the source's own where none was. */
  synchronized List<String> sensors() {
    List<String> names = justSent.stream().map(JustSent::sensor).distinct().sorted().toList();
    return names.isEmpty() ? List.of(mapping.source()) : names;
  }

  private void note(Reading reading) {
    if (newestBySensor.size() < MOST_SENSORS || newestBySensor.containsKey(reading.sensor())) {
      newestBySensor.put(reading.sensor(), reading);
    }
  }

  /** A dead element is refused while the temperature beside it goes on being believed. */
  private void noteHumidity(MappedPayload verdict) {
    Optional<String> refusal =
        verdict.refused().stream()
            .filter(no -> no.field().equals(Optional.of(Quantity.RELATIVE_HUMIDITY.field())))
            .map(MappedPayload.Refused::reason)
            .findFirst();
    noHumidityInARow = refusal.isPresent() ? noHumidityInARow + 1 : 0;
    noHumidityBecause = refusal;
  }

  private void noteGap(long nanos) {
    if (lastAcceptedNanos != null) {
      gaps.addLast(Duration.ofNanos(nanos - lastAcceptedNanos));
      while (gaps.size() > GAPS) {
        gaps.removeFirst();
      }
    }
  }

  /** A refusal that did not come from the mapping: a line or message too long. */
  synchronized void refusedUnread(RawText raw) {
    refused++;
    badInARow++;
    lastRefused.addFirst(raw);
    while (lastRefused.size() > KEPT) {
      lastRefused.removeLast();
    }
  }

  synchronized void present(boolean there) {
    absent = !there;
  }

  /**
   * A presence topic spoke. What the broker kept of it may be old: readings that are fresh beat a
   * kept "gone".
   */
  synchronized void present(boolean there, boolean retained, long nowNanos) {
    boolean fresh = SourceState.of(age(nowNanos), every(), 0, false) == SourceState.CURRENT;
    if (there || !retained || !fresh) {
      absent = !there;
    }
  }

  /** A message or line was dropped because more came than could be read. */
  synchronized void droppedUnread(long nowNanos) {
    droppedUnread++;
    lastDroppedNanos = nowNanos;
  }

  /** The interval the settings give, or else the longest lately seen. */
  private Duration every() {
    Duration every = mapping.every();
    if (mapping.everyGiven()) {
      return every;
    }
    for (Duration gap : gaps) {
      if (gap.compareTo(every) > 0 && gap.compareTo(LONGEST_LEARNED) <= 0) {
        every = gap;
      }
    }
    return every;
  }

  synchronized SourceStatus status(long nowNanos, Optional<String> linkTrouble) {
    Duration every = every();
    Optional<Duration> age = age(nowNanos);
    SourceState state = SourceState.of(age, every, badInARow, absent);
    return new SourceStatus(
        mapping.source(),
        mapping.transportWord(),
        mapping.placing().room(),
        mapping.placing().role(),
        state,
        every,
        lastReadingAt,
        accepted,
        heldBack,
        refused,
        linkTrouble.or(() -> flood(nowNanos)).or(() -> trouble(state, age, every)),
        List.copyOf(lastRefused),
        Optional.of(trust()));
  }

  /** How far it may be believed: the worst of its sensors speaks for it. */
  private SourceTrust trust() {
    Instant now = clock.instant();
    List<String> names =
        newestBySensor.isEmpty() ? List.of(mapping.source()) : List.copyOf(newestBySensor.keySet());
    Calibration.Standing worst =
        names.stream()
            .map(name -> calibration.standing(name, now))
            .max(Comparator.comparingDouble(Calibration.Standing::rhErrorPct))
            .orElseThrow();
    List<String> notes = new ArrayList<>();
    newestBySensor.values().stream()
        .flatMap(reading -> reading.mistrust().stream())
        .distinct()
        .map(Mistrust::sentence)
        .forEach(notes::add);
    boolean inDoubt = !notes.isEmpty();
    if (newestBySensor.values().stream().anyMatch(r -> r.flags().contains(Screen.WARM))) {
      notes.add(
          "it warms itself or stands in a warm spot: move it off its node and away from heat, or"
              + " give it a dated correction");
    }
    if (names.stream().anyMatch(name -> calibration.boxedSince(name, now).isPresent())) {
      notes.add(
          "it lies in the box with a salt; say coatwright calibrate %s --end when it hangs again"
              .formatted(mapping.source()));
    }
    if (worst.isDue()) {
      notes.add("its salt check is due; see coatwright calibrate");
    }
    return new SourceTrust(
        mapping.placing().chip().name(),
        mapping.placing().chip().temperatureErrorK(),
        worst.rhErrorPct(),
        worst.lastCheckAt(),
        worst.vapourHours(),
        worst.due(),
        worst.isDue(),
        inDoubt,
        notes);
  }

  private Optional<Duration> age(long nowNanos) {
    return lastAcceptedNanos == null
        ? Optional.empty()
        : Optional.of(Duration.ofNanos(nowNanos - lastAcceptedNanos));
  }

  private Optional<String> flood(long nowNanos) {
    boolean lately =
        lastDroppedNanos != null && nowNanos - lastDroppedNanos < FLOOD_SHOWN.toNanos();
    return lately
        ? Optional.of(
            "%d messages dropped unread since the start: more come than can be read; narrow the filter"
                .formatted(droppedUnread))
        : Optional.empty();
  }

  private Optional<String> trouble(SourceState state, Optional<Duration> age, Duration every) {
    if (absent) {
      return Optional.of("the node says it is gone; look at its power and its radio");
    }
    String silence =
        age.map(each -> "nothing for " + Text.span(each) + ", expected every " + Text.span(every))
            .orElse("nothing yet");
    return switch (state) {
      case CURRENT ->
          noHumidityInARow >= NO_HUMIDITY_TOLD
              ? noHumidityBecause.map(why -> "its humidity cannot be believed: " + why)
              : doubts.stream().findFirst().map(Doubt::sentence);
      case WAITING ->
          Optional.of(
              "nothing yet; is the sensor on, and is its topic or device right?"
                  + lastKnown.map(text -> " Last known value, age unknown: " + text).orElse(""));
      case REFUSED ->
          Optional.of(
              "it speaks, but nothing it says can be believed: "
                  + Optional.ofNullable(lastRefused.peekFirst())
                      .flatMap(RawText::reason)
                      .orElse("no reason kept"));
      case LATE -> Optional.of(silence);
      case STALE, LOST -> Optional.of(silence + "; look at the sensor");
    };
  }
}
