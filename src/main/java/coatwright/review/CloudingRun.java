package coatwright.review;

import coatwright.air.MoistAir;
import coatwright.film.CoatOutcome;
import coatwright.film.FilmJob;
import coatwright.film.FilmParameters;
import coatwright.film.FilmRun;
import coatwright.film.FilmSimulation;
import coatwright.film.SimulationOptions;
import coatwright.outlook.CloudingRule;
import coatwright.outlook.Outlook.CloudingLevel;
import java.util.Optional;

/**
 * One run of the film through its first hour, and what it says of clouding.
 *
 * @param outcome of the last coat; empty when the wood was at or below the dew point, where no coat
 *     can be computed
 * @param spreadAtWoodK wood less dew point as the coat went on, K
 * @param level by the outlook's rule
 */
record CloudingRun(Optional<CoatOutcome> outcome, double spreadAtWoodK, CloudingLevel level) {
  static final double FIRST_HOUR_S = 3600;

  /**
   * @param set the film model's, of the coat's finish
   * @param spread p90 over p50 of the water ratio, from what is not known of this coat's inputs;
   *     the same for every changed run, since the logarithms go together
   */
  static CloudingRun of(FilmParameters set, FilmJob job, double spread) {
    double lastS = job.coats().get(job.coats().size() - 1).atS();
    FilmRun run = new FilmSimulation(set, SimulationOptions.DEFAULT).run(job, lastS + FIRST_HOUR_S);
    double airC = job.air().airTempCAt(lastS);
    double dewC = MoistAir.of(airC, 100 * job.air().rhFractionAt(lastS)).dewPointC();
    boolean whole = run.coats().size() == job.coats().size();
    Optional<CoatOutcome> last = whole ? Optional.of(run.lastCoat()) : Optional.empty();
    double spreadK = last.map(CoatOutcome::woodBeforeC).orElse(job.woodTempC()) - dewC;
    Optional<CoatOutcome> dry = spreadK > 0 ? last : Optional.empty();
    return new CloudingRun(dry, spreadK, level(dry, spreadK, spread));
  }

  private static CloudingLevel level(Optional<CoatOutcome> outcome, double spreadK, double spread) {
    return outcome
        .map(dry -> CloudingRule.level(spreadK, dry.peakS(), dry.peakS() * spread, dry.marginK()))
        .orElse(CloudingLevel.LIKELY);
  }

  /**
   * Water over the water at which resin or blend gives way; infinite where dew lies on the wood.
   */
  double s() {
    return outcome.map(CoatOutcome::peakS).orElse(Double.POSITIVE_INFINITY);
  }

  /** It would not have given way, nor the wood stood at the dew point. */
  boolean staysClear() {
    return s() < CloudingRule.LIMIT_S && spreadAtWoodK >= CloudingRule.LEAST_SPREAD_K;
  }
}
