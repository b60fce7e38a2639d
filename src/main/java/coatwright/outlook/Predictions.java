package coatwright.outlook;

import coatwright.film.CureEnsemble;
import coatwright.film.Ensemble;
import coatwright.film.EnsembleJob;
import coatwright.film.Prediction;
import coatwright.film.Sensitivity;
import coatwright.film.ShopPrior;
import coatwright.film.Told;
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
    return of(job, observations, now, slopes, ShopPrior.UNTAUGHT);
  }

  /**
   * The same in a shop that has taught its own ways.
   *
   * @param shop what its other parts have taught
   */
  public static Prediction of(
      LaidJob job,
      List<Entry> observations,
      Instant now,
      Optional<Sensitivity> slopes,
      ShopPrior shop) {
    if (job instanceof CuringJob cure) {
      return CureEnsemble.predict(
          cure.asked(Tests.of(observations, cure), cure.onClockS(now)), shop);
    }
    CoatJob film = (CoatJob) job;
    return Ensemble.predict(
        new EnsembleJob(
            Sets.of(film.finish()),
            film.stack(),
            film.spreads(),
            Tests.of(observations, film),
            film.onClockS(now),
            film.clockGaps(),
            film.gapK(),
            new Told(shop, List.of(), Tests.weighed(observations, film))),
        slopes);
  }
}
