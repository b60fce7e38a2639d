package coatwright.outlook;

import coatwright.climate.Gap;
import coatwright.film.AirCourse;
import coatwright.film.BenchTest;
import coatwright.film.CureCoat;
import coatwright.film.CureJob;
import coatwright.film.Curing;
import coatwright.film.Finish;
import coatwright.film.Spreads;
import coatwright.journal.Entry;
import coatwright.journal.PartPath;
import java.time.Instant;
import java.util.List;

/**
 * Coats of a finish that cures, as they were laid, in the air that really was.
 *
 * @param coat the entry of the coat asked for: the last of {@code laid}
 * @param laid entries of it and of the coats of the same finish beneath it, oldest first
 * @param curing the finish's own kinetics
 * @param coats the same coats on one clock, whose zero is {@code zero}
 * @param woodTempC of the wood when the last coat went on, °C
 * @param spreads how well the inputs are known
 * @param gapK how far the air may have strayed in a gap, K
 */
public record CuringJob(
    Entry coat,
    PartPath part,
    Finish finish,
    List<Entry> laid,
    Curing curing,
    List<CureCoat> coats,
    AirCourse air,
    double woodTempC,
    Instant zero,
    Spreads spreads,
    double gapK,
    List<Gap> gaps,
    List<Provenance> inputs)
    implements LaidJob {
  public CuringJob {
    laid = List.copyOf(laid);
    coats = List.copyOf(coats);
    gaps = List.copyOf(gaps);
    inputs = List.copyOf(inputs);
  }

  @Override
  public double lastCoatS() {
    return coats.get(coats.size() - 1).atS();
  }

  @Override
  public boolean sameCoats(LaidJob other) {
    return other instanceof CuringJob cure && cure.coats.equals(coats);
  }

  /** The question to the cure model, as it stands at that moment of the job's clock. */
  public CureJob asked(List<BenchTest.Seen> tests, double nowS) {
    return new CureJob(curing, coats, air, woodTempC, spreads, tests, nowS, clockGaps(), gapK);
  }
}
