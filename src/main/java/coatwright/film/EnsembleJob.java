package coatwright.film;

import java.util.List;

/**
 * A film to be told with its range.
 *
 * @param parameters the set, as it stands in the middle
 * @param job coats, air and wood, as far as known
 * @param spreads how well they are known
 * @param tests bench tests that were made, in the order they were made
 * @param nowS the present on the job's clock; air after it is only expected
 * @param gaps stretches of the air before now that nobody measured
 * @param gapK how far the air may have strayed in a gap from the line across it, K
 */
public record EnsembleJob(
    FilmParameters parameters,
    FilmJob job,
    Spreads spreads,
    List<BenchTest.Seen> tests,
    double nowS,
    List<Gap> gaps,
    double gapK) {

  /** A stretch without readings, on the job's clock. */
  public record Gap(double fromS, double toS) {}

  public EnsembleJob {
    tests = List.copyOf(tests);
    gaps = List.copyOf(gaps);
  }

  /** A coat in air that stays as it is, no tests made yet. */
  public static EnsembleJob untested(FilmParameters parameters, FilmJob job, Spreads spreads) {
    return new EnsembleJob(parameters, job, spreads, List.of(), 0, List.of(), 0);
  }

  double lastCoatS() {
    return job.coats().get(job.coats().size() - 1).atS();
  }
}
