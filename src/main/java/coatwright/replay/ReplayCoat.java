package coatwright.replay;

import coatwright.film.Finish;
import coatwright.journal.Method;
import coatwright.journal.Observation;
import coatwright.journal.PartPath;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A coat to be laid in a recorded air.
 *
 * @param start as written, not moved
 * @param cutGPerL grams of flakes per litre of spirit; empty = the finish's usual
 * @param retarder as a jar's entry writes it
 */
record ReplayCoat(
    String id,
    PartPath part,
    Finish finish,
    Instant start,
    OptionalDouble cutGPerL,
    OptionalDouble wetFilmUm,
    OptionalDouble woodTempC,
    OptionalDouble strengthVolPct,
    Optional<String> retarder,
    Method method,
    Optional<Seen> seen) {

  /** What was seen on it: {@code clouded=3}, {@code thumbnail=fail}, {@code tacky}. */
  record Seen(Observation.What what, OptionalInt grade, Optional<Boolean> passed) {}

  ReplayCoat at(Instant newStart) {
    return new ReplayCoat(
        id,
        part,
        finish,
        newStart,
        cutGPerL,
        wetFilmUm,
        woodTempC,
        strengthVolPct,
        retarder,
        method,
        seen);
  }
}
