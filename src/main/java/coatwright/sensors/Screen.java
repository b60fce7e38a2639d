package coatwright.sensors;

import coatwright.climate.Role;
import coatwright.sensors.Neighbours.Neighbour;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Judges each sample by itself, by what the sensor said before and by its neighbours. Nothing is
 * deleted here: what is not believed is refused or held back, with the reason.
 */
final class Screen {
  private static final double NEAR_SATURATION_PCT = 90;
  private static final Duration CLIMB_REMEMBERED = Duration.ofHours(6);

  private final SourceMapping mapping;
  private final LimitRules limits;
  private final StuckRules stuck;
  private final Neighbours neighbours;

  Screen(SourceMapping mapping, Neighbours neighbours) {
    this.mapping = mapping;
    this.limits = new LimitRules(mapping.limits());
    this.stuck = new StuckRules(mapping.resolution());
    this.neighbours = neighbours;
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
      List<Neighbour> others = company(sample);
      StepRules.judge(sample, history);
      history.saw(sample);
      stuck.judge(sample, history, others);
      CompanyRules.judge(sample, others);
    }
    LimitRules.clip(sample);
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

  /** Lets the room's other sensors be judged beside this one. */
  void tell(Sample sample) {
    Optional<String> room = mapping.placing().room();
    OptionalDouble rh = sample.value(Quantity.RELATIVE_HUMIDITY);
    if (room.isPresent() && standsInAir() && rh.isPresent()) {
      neighbours.note(
          room.get(),
          who(sample),
          new Neighbour(sample.value(Quantity.AIR_TEMPERATURE), rh.getAsDouble(), sample.at));
    }
  }
}
