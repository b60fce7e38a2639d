package coatwright.outlook;

import coatwright.air.MoistAir;
import coatwright.film.AirCourse;
import coatwright.film.CureJob;
import coatwright.film.CureMoment;
import coatwright.film.Curing;
import coatwright.film.Finish;
import coatwright.film.ShopPrior;
import java.util.List;

/**
 * A coat of a finish that cures, about to be laid, ready to be judged.
 *
 * @param airTempErrorK standard uncertainty, K
 * @param rhErrorPct points of RH
 * @param job this coat on the coats of the same finish beneath it
 * @param moment air, wood and coat as it goes on
 * @param shop what the shop's other parts of this finish have taught
 * @param method brush, pad, wipe or spray
 * @param assumptions a sentence each
 */
record CureCoating(
    Finish finish,
    Curing curing,
    MoistAir air,
    double airTempErrorK,
    double rhErrorPct,
    double woodTempC,
    double woodErrorK,
    CureJob job,
    CureMoment moment,
    ShopPrior shop,
    String method,
    List<String> assumptions) {
  CureCoating {
    assumptions = List.copyOf(assumptions);
  }

  /** How far the wood stands above the dew point, less what is not known of both, K. */
  double spreadAtWoodK() {
    double dewErrorK = DewError.ofK(air, airTempErrorK, rhErrorPct);
    return woodTempC - air.dewPointC() - Math.hypot(dewErrorK, woodErrorK);
  }

  boolean condensation() {
    return woodTempC <= air.dewPointC();
  }

  /** The same coats in the air the finish's usual drying is judged against. */
  CureJob atReference() {
    return new CureJob(
        curing,
        job.coats(),
        AirCourse.steady(
            finish.referenceTempC(), finish.referenceRhPct() / 100, job.air().draughtMPerS()),
        finish.referenceTempC(),
        job.spreads(),
        List.of(),
        job.nowS(),
        List.of(),
        0);
  }
}
