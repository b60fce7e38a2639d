package coatwright.replay;

import coatwright.review.Why;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Puts times back where the record had them. */
record Unmoved(Duration by) {
  Instant time(Instant moved) {
    return moved.minus(by);
  }

  private Optional<Instant> time(Optional<Instant> moved) {
    return moved.map(this::time);
  }

  List<Replayed.Milestone> milestones(List<Replayed.Milestone> moved) {
    return moved.stream()
        .map(m -> new Replayed.Milestone(m.name(), time(m.p10()), time(m.p50()), time(m.p90())))
        .toList();
  }

  /** The case under the list's own name for the coat. */
  Why why(Why w, String id) {
    return new Why(
        id,
        w.part(),
        w.sentence(),
        w.airAtFault(),
        w.air().stream()
            .map(
                a ->
                    new Why.Air(
                        time(a.at()), a.airTempC(), a.rhPct(), a.dewPointC(), a.woodTempC()))
            .toList(),
        w.gaps().stream().map(g -> new Why.Gap(time(g.from()), time(g.to()))).toList(),
        w.model(),
        w.counterfactuals(),
        w.jar(),
        w.cautions());
  }
}
