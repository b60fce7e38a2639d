package coatwright.film;

import coatwright.air.MoistAir;

/**
 * The moment a curing film came nearest to the dew point while it was still wet; at or below it
 * water settles on it.
 *
 * @param atS on the job's clock, s
 * @param filmTempC of the film, which is the wood's under it, °C
 * @param dewPointC of the air at that moment, °C
 */
public record CureDew(double atS, double filmTempC, double dewPointC) {
  private static final double STEP_S = 300;

  /**
   * Looks from the last coat on.
   *
   * @param forS how long the film is taken to be wet, s
   */
  public static CureDew nearest(CureJob job, double forS) {
    CureAir air = new CureAir(job, false);
    double atS = job.lastCoat().atS();
    double endS = atS + Math.max(0, forS);
    CureDew nearest = at(job, air, atS);
    for (double s = atS; s < endS; s += STEP_S) {
      CureDew then = at(job, air, Math.min(endS, s + STEP_S));
      if (then.marginK() < nearest.marginK()) {
        nearest = then;
      }
    }
    return nearest;
  }

  private static CureDew at(CureJob job, CureAir air, double atS) {
    MoistAir moist = MoistAir.of(job.air().airTempCAt(atS), 100 * job.air().rhFractionAt(atS));
    return new CureDew(atS, air.filmTempAt(atS), moist.dewPointC());
  }

  /** Film less dew point, K. */
  public double marginK() {
    return filmTempC - dewPointC;
  }
}
