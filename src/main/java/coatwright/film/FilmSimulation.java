package coatwright.film;

/**
 * Computes what becomes of coats laid in a given air on a given board.
 *
 * <p>Keeps its working memory between runs and allocates nothing while it steps; use one per
 * thread. Time is seconds on the job's own clock.
 */
public final class FilmSimulation {
  private static final double[] NO_SAMPLES = {};

  private final FilmParameters parameters;
  private final SimulationOptions options;
  private static final int KEPT = 2;
  private final FilmEngine[] engines = new FilmEngine[KEPT];

  public FilmSimulation(FilmParameters parameters, SimulationOptions options) {
    this.parameters = parameters;
    this.options = options;
  }

  public FilmParameters parameters() {
    return parameters;
  }

  public SimulationOptions options() {
    return options;
  }

  /** As {@link #run(FilmJob, double, double...)} without samples. */
  public FilmRun run(FilmJob job, double untilS) {
    return run(job, untilS, NO_SAMPLES);
  }

  /**
   * Runs a job.
   *
   * @param untilS when to stop, after the last coat
   * @param sampleTimesS where to note the film's state, rising, from the first coat to untilS; at a
   *     coat's own instant the film is noted before the brush, at the first coat's after it
   * @throws FilmFailure if the calculation cannot go on
   */
  public FilmRun run(FilmJob job, double untilS, double... sampleTimesS) {
    double last = job.coats().get(job.coats().size() - 1).atS();
    if (!(untilS > last) || Double.isInfinite(untilS)) {
      throw new IllegalArgumentException(
          "a run must end after the last coat at %s s; asked until %s s".formatted(last, untilS));
    }
    double before = job.coats().get(0).atS();
    for (double t : sampleTimesS) {
      if (!(t >= before && t <= untilS)) {
        throw new IllegalArgumentException(
            "sample times must rise from the first coat to the end of the run; got %s s after %s s"
                .formatted(t, before));
      }
      before = t;
    }
    return engine(job).run(job, untilS, sampleTimesS);
  }

  /** The last two mixtures keep their engines: plain spirit and retarded, or two blends. */
  private FilmEngine engine(FilmJob job) {
    Species species = Species.of(parameters, job.coats());
    int coats = job.coats().size();
    for (int i = 0; i < KEPT; i++) {
      FilmEngine engine = engines[i];
      if (engine != null && engine.species().sameAs(species)) {
        if (engine.mostCoats() < coats) {
          engines[i] = new FilmEngine(parameters, options, species, coats);
        }
        return engines[i];
      }
    }
    engines[1] = engines[0];
    engines[0] = new FilmEngine(parameters, options, species, coats);
    return engines[0];
  }
}
