package coatwright.outlook;

import coatwright.climate.Gap;
import coatwright.film.AirCourse;
import coatwright.film.EnsembleJob;
import coatwright.film.Finish;
import coatwright.journal.Entry;
import coatwright.journal.PartPath;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * Coats as they were laid, put together again: what was in the jar, the air that really was, the
 * wood. One kind for every way of hardening; this is what they share.
 */
public sealed interface LaidJob permits CoatJob, CuringJob {
  /** The entry of the coat asked for: the last of {@link #laid}. */
  Entry coat();

  PartPath part();

  /** The finish of the coat asked for. */
  Finish finish();

  /** Entries of it and of every coat beneath that hardens with it, oldest first. */
  List<Entry> laid();

  /** When the first of them went on; zero of the job's clock. */
  Instant zero();

  /** The air on that clock. */
  AirCourse air();

  /** When the last coat went on, on that clock, s. */
  double lastCoatS();

  /** Stretches without readings between the first coat and the end of the record. */
  List<Gap> gaps();

  /** Where every input came from. */
  List<Provenance> inputs();

  /** Whether another job has the same coats at the same moments, whatever its air. */
  boolean sameCoats(LaidJob other);

  /** A moment on the job's clock, s. */
  default double onClockS(Instant at) {
    return Duration.between(zero(), at).toMillis() / 1000.0;
  }

  /** The gaps on the job's clock. */
  default List<EnsembleJob.Gap> clockGaps() {
    return gaps().stream()
        .map(g -> new EnsembleJob.Gap(onClockS(g.from()), onClockS(g.to())))
        .toList();
  }

  /** When the coat asked for went on. */
  default Instant laidAt() {
    return coat().at();
  }
}
