package coatwright.outlook;

import coatwright.film.Milestone;
import coatwright.journal.Entry;
import coatwright.journal.Observation;
import coatwright.journal.Observation.What;
import java.time.Instant;
import java.util.Optional;

/**
 * A bench test that failed when, even after learning from it, nine in ten such films would long
 * have passed. The model has no member that explains it: the test was misread, or something the
 * model does not know keeps the film soft (old stock, what lies beneath). From its milestone on no
 * date is told until a test passes.
 *
 * @param test the newest such note since the last coat
 * @param milestone what it tests for
 * @param byNow when nine in ten would have reached that
 */
record Contradiction(Entry test, Milestone milestone, Instant byNow) {
  /** The one that stands, if any: no later test of as much or more was passed. */
  static Optional<Contradiction> in(PartPrediction p) {
    Optional<Contradiction> found = Optional.empty();
    for (Entry e : p.observations()) {
      Optional<Milestone> tested = testedBy(e);
      if (tested.isEmpty() || !e.at().isAfter(p.lastCoatAt())) {
        continue;
      }
      if (passed(e)) {
        found = found.filter(c -> c.milestone().compareTo(tested.get()) > 0);
        continue;
      }
      Optional<Instant> ninety = p.dates(tested.get()).p90();
      if (ninety.isPresent() && ninety.get().isBefore(e.at())) {
        found = Optional.of(new Contradiction(e, tested.get(), ninety.get()));
      }
    }
    return found;
  }

  /** Whether a milestone comes with or after what failed. */
  boolean holdsBack(Milestone m) {
    return m.compareTo(milestone) >= 0;
  }

  private static boolean passed(Entry e) {
    Observation o = (Observation) e.body();
    return o.what() != What.TACKY && o.passed().orElse(false);
  }

  /** What a test was made for; empty for notes that are no test with an outcome. */
  private static Optional<Milestone> testedBy(Entry e) {
    Observation o = (Observation) e.body();
    if (o.what() != What.TACKY && o.passed().isEmpty()) {
      return Optional.empty();
    }
    return switch (o.what()) {
      case TOUCH -> Optional.of(Milestone.DRY_TO_TOUCH);
      case TACKY -> Optional.of(Milestone.DRY_TO_RECOAT);
      case THUMBNAIL, POWDER -> Optional.of(Milestone.DRY_HARD);
      case SMELL, RUBBED_OUT -> Optional.of(Milestone.RUB_OUT);
      case PRINT -> Optional.of(Milestone.WRAP);
      case CLOUDED, CLEARED, WEIGHED, CARRIED_IN -> Optional.empty();
    };
  }
}
