package coatwright.watch;

import coatwright.climate.Climate;
import coatwright.climate.RoomAir;
import coatwright.climate.SourceState;
import coatwright.climate.SourceStatus;
import coatwright.climate.SourceTrust;
import coatwright.quantity.Show;
import coatwright.watch.Sign.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Sensors that are silent, or say what cannot be. A late one is shown but not warned of; it is
 * warned of once it is stale, and the words change when it is lost. When everything on one
 * transport falls silent together the transport is named once instead of every sensor.
 */
final class SensorSigns {
  private static final String KIND = "sensor";
  private static final int TRANSPORT_NEEDS = 2;

  /** Ours: a source just set up may take three of its intervals, and ten minutes at least. */
  private static final Duration LEAST_WAIT = Duration.ofMinutes(10);

  private final Climate climate;
  private final WatchSettings settings;

  SensorSigns(Climate climate, WatchSettings settings) {
    this.climate = climate;
    this.settings = settings;
  }

  /**
   * @param alreadySaid the open warnings: one sensor that was named keeps its own warning when the
   *     rest of its transport follows
   */
  List<Sign> look(List<SourceStatus> sources, Said alreadySaid, Instant now) {
    Map<String, List<SourceStatus>> byTransport = new LinkedHashMap<>();
    for (SourceStatus source : sources) {
      byTransport.computeIfAbsent(source.transport(), t -> new ArrayList<>()).add(source);
    }
    List<Sign> signs = new ArrayList<>();
    byTransport.forEach(
        (transport, on) -> {
          boolean allSilent =
              on.size() >= TRANSPORT_NEEDS && on.stream().allMatch(SensorSigns::silent);
          if (on.size() >= TRANSPORT_NEEDS) {
            signs.add(transport(transport, on, allSilent));
          }
          for (SourceStatus source : on) {
            if (!allSilent || alreadySaid.isOpen(key(source))) {
              signs.add(source(source, now));
            }
          }
        });
    sources.stream()
        .filter(source -> source.trust().isPresent())
        .map(this::doubt)
        .forEach(signs::add);
    for (String room : climate.rooms()) {
      signs.add(disagreement(climate.now(room)));
    }
    return signs;
  }

  private static boolean silent(SourceStatus source) {
    return source.state() == SourceState.STALE || source.state() == SourceState.LOST;
  }

  private static String key(SourceStatus source) {
    return KIND + "/" + source.source();
  }

  private Sign transport(String transport, List<SourceStatus> on, boolean allSilent) {
    String names = String.join(", ", on.stream().map(SourceStatus::source).toList());
    return new Sign(
        KIND + "/all-on/" + transport,
        KIND,
        Optional.empty(),
        Optional.empty(),
        allSilent ? Verdict.ON : Verdict.CLEAR,
        0,
        "All %d sensors on %s are silent (%s); look to what carries them, its power and cable, before the sensors"
            .formatted(on.size(), transport, names),
        Duration.ZERO,
        Duration.ZERO);
  }

  private Sign source(SourceStatus source, Instant now) {
    boolean waiting = source.state() == SourceState.WAITING;
    Duration holdOn = waiting ? longest(source.every().multipliedBy(3), LEAST_WAIT) : Duration.ZERO;
    return new Sign(
        key(source),
        KIND,
        source.room(),
        Optional.empty(),
        verdict(source.state()),
        source.state() == SourceState.LOST ? 1 : 0,
        message(source, now),
        holdOn,
        settings.sensorClearFor());
  }

  private static Verdict verdict(SourceState state) {
    return switch (state) {
      case WAITING, STALE, LOST, REFUSED -> Verdict.ON;
      case LATE -> Verdict.BETWEEN;
      case CURRENT -> Verdict.CLEAR;
    };
  }

  private String message(SourceStatus source, Instant now) {
    String name =
        "Sensor " + source.source() + source.room().map(room -> " in " + room).orElse("") + ": ";
    if (source.trouble().isPresent()) {
      return name + source.trouble().get();
    }
    String last =
        source
            .lastReadingAt()
            .map(at -> ShopTime.hour(at, now, settings.zone()))
            .orElse("never, since the start");
    return switch (source.state()) {
      case REFUSED ->
          name
              + "it speaks, but nothing it says can be believed (last believed reading %s); look at what it sends and put it right"
                  .formatted(last);
      default ->
          name
              + "no reading (the last: %s) though one is due every %s; look to its battery, its place and its cable"
                  .formatted(last, Show.duration(source.every()));
    };
  }

  /** A sensor that speaks and is not to be relied on. */
  private Sign doubt(SourceStatus source) {
    SourceTrust trust = source.trust().orElseThrow();
    boolean silent = source.state() != SourceState.CURRENT && source.state() != SourceState.LATE;
    return new Sign(
        KIND + "/doubt/" + source.source(),
        KIND,
        source.room(),
        Optional.empty(),
        silent ? Verdict.UNKNOWN : trust.inDoubt() ? Verdict.ON : Verdict.CLEAR,
        0,
        "Sensor %s%s is in doubt: %s; what it says ends no warning and allows no coat"
            .formatted(
                source.source(),
                source.room().map(room -> " in " + room).orElse(""),
                trust.notes().isEmpty() ? "see checkup" : trust.notes().get(0)),
        settings.disagreeFor(),
        settings.disagreeFor());
  }

  private Sign disagreement(RoomAir air) {
    Verdict verdict =
        air.air().isEmpty() ? Verdict.UNKNOWN : air.disagree() ? Verdict.ON : Verdict.CLEAR;
    String said =
        air.trouble()
            .orElse(
                "%s read the same air differently; the worse is used until one is checked against a third"
                    .formatted(String.join(" and ", air.sources())));
    return new Sign(
        KIND + "/disagree/" + air.room(),
        KIND,
        Optional.of(air.room()),
        Optional.empty(),
        verdict,
        0,
        "Sensors in " + air.room() + ": " + said,
        settings.disagreeFor(),
        settings.disagreeFor());
  }

  private static Duration longest(Duration one, Duration other) {
    return one.compareTo(other) >= 0 ? one : other;
  }
}
