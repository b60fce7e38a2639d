package coatwright.film;

import coatwright.quantity.OutOfRange;
import java.util.List;

/**
 * Coats of a curing finish, to be told with their range.
 *
 * @param curing the finish's own kinetics
 * @param coats of one finish, at least one, in the order they went on
 * @param air the room's air; what lies after now is only expected
 * @param woodTempC of the wood when the last coat went on, °C, −5 to 60; it drifts to the air's
 * @param spreads how well the inputs are known; cut and strength do not matter here
 * @param tests bench tests that were made, in the order they were made
 * @param nowS the present on the job's clock
 * @param gaps stretches of the air before now that nobody measured
 * @param gapK how far the air may have strayed in a gap from the line across it, K, 0 to 20
 */
public record CureJob(
    Curing curing,
    List<CureCoat> coats,
    AirCourse air,
    double woodTempC,
    Spreads spreads,
    List<BenchTest.Seen> tests,
    double nowS,
    List<EnsembleJob.Gap> gaps,
    double gapK) {

  public CureJob {
    coats = List.copyOf(coats);
    tests = List.copyOf(tests);
    gaps = List.copyOf(gaps);
    if (coats.isEmpty()) {
      throw new OutOfRange("a film needs at least one coat; got none");
    }
    for (int i = 1; i < coats.size(); i++) {
      if (coats.get(i).atS() <= coats.get(i - 1).atS()) {
        throw new OutOfRange("coats must follow each other in time; put them in order");
      }
    }
    OutOfRange.check("wood temperature", woodTempC, "°C", -5, 60);
    OutOfRange.check("strayed air in a gap", gapK, "K", 0, 20);
  }

  /** One coat in air that stays as it is, the wood as warm as the air, no tests made yet. */
  public static CureJob steady(Curing curing, CureCoat coat, AirCourse air, Spreads spreads) {
    return new CureJob(
        curing,
        List.of(coat),
        air,
        air.airTempCAt(coat.atS()),
        spreads,
        List.of(),
        coat.atS(),
        List.of(),
        0);
  }

  CureJob withAir(AirCourse other) {
    return new CureJob(curing, coats, other, woodTempC, spreads, tests, nowS, gaps, gapK);
  }

  CureCoat lastCoat() {
    return coats.get(coats.size() - 1);
  }
}
