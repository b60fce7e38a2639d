package coatwright.sensors;

import coatwright.climate.Mistrust;
import coatwright.climate.Role;
import coatwright.sensors.Neighbours.Neighbour;
import coatwright.sensors.Neighbours.Standing;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * Judges each sample by itself, by what the sensor said before and by its neighbours. Nothing is
 * deleted here: what is not believed is refused or held back, with the reason; what is believed but
 * in doubt carries a {@link Mistrust} word.
 */
final class Screen {
  private static final double NEAR_SATURATION_PCT = 90;
  private static final Duration CLIMB_REMEMBERED = Duration.ofHours(6);
  private static final int SILENT_INTERVALS = 5;
  private static final Duration SILENT_AT_LEAST = Duration.ofMinutes(10);

  private final SourceMapping mapping;
  private final LimitRules limits;
  private final StuckRules stuck;
  private final Neighbours neighbours;
  private final Calibration calibration;

  Screen(SourceMapping mapping, Neighbours neighbours, Calibration calibration) {
    this.mapping = mapping;
    this.limits = LimitRules.of(mapping);
    this.stuck = new StuckRules(mapping.resolution());
    this.neighbours = neighbours;
    this.calibration = calibration;
  }

  void judge(Sample sample, History history) {
    limits.refuse(sample);
    if (!sample.hasReading()) {
      return;
    }
    limits.hold(sample);
    saturation(sample, history);
    boolean late = history.newest().map(sample.at::isBefore).orElse(false);
    if (late) {
      sample.flag("out_of_order");
    } else if (sample.isHeld()) {
      history.saw(sample);
    } else {
      inOrder(sample, history);
    }
    LimitRules.clip(sample);
  }

  private void inOrder(Sample sample, History history) {
    List<Neighbour> others = company(sample);
    StepRules.judge(sample, history);
    history.saw(sample);
    stuck.judge(sample, history, others, moved());
    Sample corrected = sample.copy();
    calibration.correct(corrected);
    CompanyRules.judge(sample, corrected, others);
    if (!sample.isHeld()) {
      overDays(sample, corrected, history, others);
    }
  }

  /** What only shows over minutes, hours or days; it marks, and holds nothing back. */
  private void overDays(Sample sample, Sample corrected, History history, List<Neighbour> others) {
    OptionalDouble sentRh = sample.value(Quantity.RELATIVE_HUMIDITY);
    if (sentRh.isPresent() && history.floor().take(sentRh.getAsDouble(), sample.at)) {
      sample.flag(Mistrust.AT_FLOOR.toString());
    }
    if (sentRh.isEmpty() || !sample.has(Quantity.AIR_TEMPERATURE) || !standsInAir()) {
      return;
    }
    double t = corrected.value(Quantity.AIR_TEMPERATURE).orElseThrow();
    double rh = corrected.value(Quantity.RELATIVE_HUMIDITY).orElseThrow();
    if (mapping.placing().role() != Role.REFERENCE) {
      history.drift().take(t, rh, calibration.vapourErrorPct(rh), sample.at, others);
    }
    if (history.drift().drifting()) {
      sample.flag(Mistrust.DRIFTING.toString());
    }
    if (fellSilentBefore(sample, history)) {
      history.warmUp().restarted(sample.at, others);
    }
    boolean warmed = history.warmUp().take(t, rh, sample.at, others);
    if (warmed || history.drift().warm()) {
      sample.flag(WARM);
    }
  }

  /** Flag of a sensor that stands in its own warmth, or in that of something beside it. */
  static final String WARM = "warm";

  private boolean fellSilentBefore(Sample sample, History history) {
    Duration usual = mapping.every().multipliedBy(SILENT_INTERVALS);
    Duration least = usual.compareTo(SILENT_AT_LEAST) > 0 ? usual : SILENT_AT_LEAST;
    return history
        .newest()
        .map(before -> Duration.between(before, sample.at).compareTo(least) > 0)
        .orElse(false);
  }

  private Function<Instant, Optional<Boolean>> moved() {
    Optional<String> room = mapping.placing().room().filter(any -> standsInAir());
    return since -> room.flatMap(name -> neighbours.movedSince(name, mapping.source(), since));
  }

  /** Above the plausible humidity is believed only if it was climbed to: fog, not a fault. */
  private void saturation(Sample sample, History history) {
    OptionalDouble rh = sample.value(Quantity.RELATIVE_HUMIDITY);
    Limits limit = mapping.limits().get(Quantity.RELATIVE_HUMIDITY);
    if (rh.isEmpty() || limit == null || rh.getAsDouble() <= limit.plausibleHigh()) {
      return;
    }
    boolean climbed =
        history
            .seen(Quantity.RELATIVE_HUMIDITY)
            .filter(last -> last.value() >= NEAR_SATURATION_PCT)
            .filter(last -> Duration.between(last.at(), sample.at).compareTo(CLIMB_REMEMBERED) <= 0)
            .isPresent();
    if (!climbed) {
      sample.hold(
          "rh %s %% without having climbed there: fog, or a wet sensor? The next value will tell"
              .formatted(Text.plain(rh.getAsDouble())));
    }
  }

  private List<Neighbour> company(Sample sample) {
    Optional<String> room = mapping.placing().room();
    return room.isEmpty() || !standsInAir()
        ? List.of()
        : neighbours.of(room.get(), mapping.source(), sample.at);
  }

  private boolean standsInAir() {
    Role role = mapping.placing().role();
    return role == Role.ROOM || role == Role.REFERENCE;
  }

  private String who(Sample sample) {
    return mapping.source() + "/" + sample.key;
  }

  /** Lets the room's other sensors be judged beside this one, which is corrected by now. */
  void tell(Sample sample) {
    Optional<String> room = mapping.placing().room();
    OptionalDouble rh = sample.value(Quantity.RELATIVE_HUMIDITY);
    if (room.isPresent() && standsInAir() && rh.isPresent()) {
      neighbours.note(
          room.get(),
          who(sample),
          new Neighbour(
              sample.value(Quantity.AIR_TEMPERATURE),
              rh.getAsDouble(),
              sample.at,
              calibration.vapourErrorPct(rh.getAsDouble()),
              standing(sample)));
    }
  }

  private Standing standing(Sample sample) {
    if (Mistrust.among(sample.flags()).isPresent()) {
      return Standing.DOUBTFUL;
    }
    return mapping.placing().role() == Role.REFERENCE ? Standing.REFERENCE : Standing.USUAL;
  }
}
