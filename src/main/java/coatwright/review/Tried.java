package coatwright.review;

import coatwright.film.CoatOutcome;
import java.util.OptionalDouble;

/** A change and what the film did with it. */
record Tried(Change change, CloudingRun run) {
  Change.Kind kind() {
    return change.kind();
  }

  boolean mends() {
    return run.staysClear();
  }

  /** Only for a run whose wood carried no dew: there is no water to tell of otherwise. */
  Why.Counterfactual told(CloudingRun base) {
    CoatOutcome outcome = run.outcome().orElseThrow();
    return new Why.Counterfactual(
        change.words(),
        change.was(),
        change.would(),
        run.level().toString(),
        OptionalDouble.of(outcome.waterPeakPct()),
        OptionalDouble.of(outcome.waterLimitPct()),
        run.s() <= Why.HELPS * base.s());
  }
}
