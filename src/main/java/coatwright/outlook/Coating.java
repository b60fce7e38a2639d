package coatwright.outlook;

import coatwright.air.MoistAir;
import coatwright.film.EnsembleJob;
import coatwright.film.FilmJob;
import coatwright.film.Finish;
import coatwright.film.LaidCoat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A coat about to be laid, ready to be judged.
 *
 * @param air the air now
 * @param airTempErrorK standard uncertainty, K
 * @param rhErrorPct points of RH
 * @param alone this coat by itself on the wood as it is: decides clouding and open time
 * @param stack it and the coats beneath; empty when there are none
 * @param reference the same coats in the finish's reference air
 * @param method brush, pad, wipe or spray
 * @param learnedBrushingMin this part's learned brushing time
 * @param roomVolumeM3 to tell litres of water, where known
 * @param recoatLeftMin what is left of the recoat window, where the finish has a late end; negative
 *     once it is over
 * @param assumptions a sentence each
 */
record Coating(
    Finish finish,
    MoistAir air,
    double airTempErrorK,
    double rhErrorPct,
    double woodTempC,
    double woodErrorK,
    LaidCoat coat,
    EnsembleJob alone,
    Optional<EnsembleJob> stack,
    FilmJob reference,
    String method,
    OptionalDouble learnedBrushingMin,
    OptionalDouble roomVolumeM3,
    OptionalDouble recoatLeftMin,
    List<String> assumptions) {

  /** How far the wood stands above the dew point, less what is not known of both, K. */
  double spreadAtWoodK() {
    return woodTempC - air.dewPointC() - Math.hypot(dewErrorK(), woodErrorK);
  }

  /** Standard uncertainty of the dew point from those of the two readings, K. */
  double dewErrorK() {
    return DewError.ofK(air, airTempErrorK, rhErrorPct);
  }

  /** Dew would form on this wood: nothing else is to be told. */
  boolean condensation() {
    return woodTempC <= air.dewPointC();
  }
}
