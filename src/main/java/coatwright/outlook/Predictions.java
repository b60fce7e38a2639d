package coatwright.outlook;

import coatwright.film.Ensemble;
import coatwright.film.EnsembleJob;
import coatwright.film.Prediction;
import coatwright.film.Sensitivity;
import coatwright.journal.Entry;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** What the model of a finish says of coats as they lie there. */
public final class Predictions {
  private Predictions() {}

  /**
   * The milestones of coats with what the bench tests say of them.
   *
   * @param observations entries of tests, in any order
   * @param now the end of the air that was; after it the air is expected
   * @param slopes of an earlier look at the same coats, to save the time of finding them again
   */
  public static Prediction of(
      LaidJob job, List<Entry> observations, Instant now, Optional<Sensitivity> slopes) {
    CoatJob film = (CoatJob) job;
    return Ensemble.predict(
        new EnsembleJob(
            Sets.of(film.finish()),
            film.stack(),
            film.spreads(),
            Tests.of(observations, film),
            film.onClockS(now),
            film.clockGaps(),
            film.gapK()),
        slopes);
  }
}
