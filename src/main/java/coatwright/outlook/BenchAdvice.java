package coatwright.outlook;

import coatwright.film.Milestone;
import coatwright.film.Prediction;
import coatwright.film.Prediction.NextTest;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;

/** The test to make for a milestone, when, and the one that would narrow the rub-out date most. */
final class BenchAdvice {
  private final ZoneId zone;

  BenchAdvice(ZoneId zone) {
    this.zone = zone;
  }

  Optional<String> test(Milestone m, PartPrediction p, Optional<Instant> due, Instant now) {
    Optional<String> plain = due.flatMap(d -> plain(m, when(d, now)));
    if (m != Milestone.RUB_OUT) {
      return plain;
    }
    Optional<String> narrows = narrows(p, now);
    return plain.isPresent() && narrows.isPresent()
        ? Optional.of(plain.get() + " " + narrows.get())
        : plain.or(() -> narrows);
  }

  private String when(Instant due, Instant now) {
    return due.isAfter(now) ? "from " + Times.near(due, now, zone) : "now";
  }

  private static Optional<String> plain(Milestone m, String when) {
    return switch (m) {
      case DRY_TO_TOUCH ->
          Optional.of("Touch a spot that does not show with a clean finger " + when + ".");
      case DRY_TO_RECOAT ->
          Optional.of("Draw the back of a finger over an edge " + when + "; it must not drag.");
      case DRY_HARD ->
          Optional.of(
              "Press a thumbnail where it does not show "
                  + when
                  + ", or see whether it sands to powder.");
      case RUB_OUT ->
          Optional.of("Smell it close up " + when + "; rub out a spot that does not show first.");
      case WRAP ->
          Optional.of(
              "Lay a cloth under a weight for an hour " + when + "; it must leave no print.");
      case RESTED, FULL_HARDNESS -> Optional.empty();
    };
  }

  private Optional<String> narrows(PartPrediction p, Instant now) {
    Optional<NextTest> next = p.prediction().nextTest();
    return next.map(t -> Judge.text("What would narrow the date most: %s.", named(t, p, now)));
  }

  private String named(NextTest t, PartPrediction p, Instant now) {
    Prediction.Knowledge k = t.knowledge();
    return switch (k) {
      case WET_FILM ->
          "how thick the coats went on (weigh the jar before and after, or use a wet-film comb)";
      case CUT -> "the jar's cut, by a dried sample";
      case RUBBED_OUT -> "rubbing out a spot and noting whether it stayed fine";
      case THUMBNAIL -> {
        Instant at = p.lastCoatAt().plusSeconds(Math.round(t.bestAtS()));
        yield "a thumbnail test about " + Times.near(at, now, zone);
      }
    };
  }
}
