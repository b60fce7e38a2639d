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
 * @param told what the shop's other parts taught, and what was seen of clouding or weighed
 */
public record EnsembleJob(
    FilmParameters parameters,
    FilmJob job,
    Spreads spreads,
    List<BenchTest.Seen> tests,
    double nowS,
    List<Gap> gaps,
    double gapK,
    Told told) {

  /** A stretch without readings, on the job's clock. */
  public record Gap(double fromS, double toS) {}

  public EnsembleJob {
    tests = List.copyOf(tests);
    gaps = List.copyOf(gaps);
  }

  /** A job of which no more is told. */
  public EnsembleJob(
      FilmParameters parameters,
      FilmJob job,
      Spreads spreads,
      List<BenchTest.Seen> tests,
      double nowS,
      List<Gap> gaps,
      double gapK) {
    this(parameters, job, spreads, tests, nowS, gaps, gapK, Told.NOTHING);
  }

  /** The same, with what is told beside it. */
  public EnsembleJob with(Told newTold) {
    return new EnsembleJob(parameters, job, spreads, tests, nowS, gaps, gapK, newTold);
  }

  /** A coat in air that stays as it is, no tests made yet. */
  public static EnsembleJob untested(FilmParameters parameters, FilmJob job, Spreads spreads) {
    return new EnsembleJob(parameters, job, spreads, List.of(), 0, List.of(), 0);
  }

  double lastCoatS() {
    return job.coats().get(job.coats().size() - 1).atS();
  }
}
