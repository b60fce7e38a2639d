package coatwright.film;

import java.util.List;

/**
 * The cheap form of clouding: one coat as one well-mixed lump on its board, for the many questions
 * that ask only how near to clouding a coat would come and how cold. No dates, no haze, no coats
 * beneath. Keeps its working memory between questions; use one per thread.
 */
public final class LumpedClouding {
  private static final SimulationOptions ONE_CELL =
      new SimulationOptions(1, 2, 3e-4, false, false, Double.POSITIVE_INFINITY);

  private final FilmParameters parameters;
  private Lump lump;

  /**
   * What the first hour of a coat comes to.
   *
   * @param condensation the wood stood at or below the dew point as the coat went on
   * @param peakS the clouding number at its highest
   * @param filmLowC the film's lowest temperature, °C
   * @param dewPointC the room's dew point at that moment, °C
   * @param filmMinusDewK film temperature less dew point at its lowest, K
   */
  public record Answer(
      boolean condensation, double peakS, double filmLowC, double dewPointC, double filmMinusDewK) {

    /** Lowest film temperature less the dew point of that moment, K. */
    public double marginK() {
      return filmLowC - dewPointC;
    }
  }

  public LumpedClouding(FilmParameters parameters) {
    this.parameters = parameters;
    lump = new Lump(parameters, Species.of(parameters, List.of()));
  }

  /**
   * The first hour of a coat.
   *
   * @param job with one coat
   * @throws FilmFailure if the calculation cannot go on
   */
  public Answer of(FilmJob job) {
    if (job.coats().size() != 1) {
      throw new IllegalArgumentException(
          "lumped clouding looks at one coat on its board, got %d; run the whole film for a stack"
              .formatted(job.coats().size()));
    }
    Species species = Species.of(parameters, job.coats());
    if (!lump.species.sameAs(species)) {
      lump = new Lump(parameters, species);
    }
    return lump.hour(job);
  }

  /** The working memory for one mixture. */
  private static final class Lump {
    final Species species;
    private final FilmGrid grid;
    private final FilmEquations equations;
    private final RosenbrockStepper stepper;
    private final Moment moment;
    private final CloudingTracker clouding;

    Lump(FilmParameters p, Species species) {
      this.species = species;
      FilmSolution solution = FilmSolution.of(p, species);
      grid = new FilmGrid(species, 1, ONE_CELL);
      equations = new FilmEquations(p, grid, solution);
      stepper = new RosenbrockStepper(grid, equations, ONE_CELL.rtol());
      moment = new Moment(grid);
      clouding = new CloudingTracker(solution, moment, equations);
    }

    Answer hour(FilmJob job) {
      LaidCoat coat = job.coats().get(0);
      AirCursor cursor = new AirCursor(job.air(), coat.atS());
      grid.clear(job.boardThicknessMm() / 1000);
      equations.prepare(job, cursor);
      stepper.clear(coat.atS());
      equations.airAt(coat.atS());
      boolean condensation = job.woodTempC() <= equations.gas.dewPointC();
      grid.lay(coat, stepper.y);
      double liquidC = coat.liquidTempC().orElse(cursor.tempC(coat.atS()));
      int film = grid.film();
      stepper.y[film] = 0.5 * (liquidC + job.woodTempC()) + Species.KELVIN;
      for (int i = 1; i <= FilmGrid.WOOD_CELLS; i++) {
        stepper.y[film + i] = job.woodTempC() + Species.KELVIN;
      }
      stepper.restart();
      moment.begin(stepper.y, stepper.f);
      clouding.begin(coat.atS());
      double endS = coat.atS() + CloudingTracker.WINDOW_S;
      while (stepper.timeS < endS) {
        double limit = Math.min(endS, cursor.nextKnotS());
        stepper.step(limit);
        double to = stepper.endS(limit);
        moment.finish(stepper.yEnd, stepper.fEnd, stepper.stepS);
        clouding.step(stepper.timeS, stepper.stepS);
        stepper.advance(to);
        moment.advance();
        if (to == cursor.nextKnotS()) {
          cursor.pass();
        }
      }
      return new Answer(
          condensation,
          clouding.peakS,
          clouding.filmLowK - Species.KELVIN,
          clouding.dewAtLowC,
          clouding.marginK);
    }
  }
}
