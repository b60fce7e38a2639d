package coatwright.film;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What a simulation found.
 *
 * <p>When the wood stood at or below the dew point as any coat went on ({@link #condensation}), no
 * hardening times are given: water on the wood is not a coating.
 *
 * @param model which model and set
 * @param coats outcome of every coat, in order
 * @param condensation the wood was at or below the dew point when a coat went on
 * @param clockFromS the instant from which the hardening times count (the last coat, or the first
 *     in the reference set)
 * @param dryHardS dry hard: handle, sand; an estimate, the thumbnail decides; s from clockFromS
 * @param rubOutS ready to rub out
 * @param wrapS ready to wrap; an estimate, the print test decides
 * @param fullHardnessS full hardness
 * @param tooHumidToHarden at the air of the run's end the film would stay too soft to rub out for
 *     ever
 * @param dryFilmUm dry thickness of all coats together, µm
 * @param trace the asked-for samples, in time order
 * @param work what it took
 */
public record FilmRun(
    ModelStamp model,
    List<CoatOutcome> coats,
    boolean condensation,
    double clockFromS,
    OptionalDouble dryHardS,
    OptionalDouble rubOutS,
    OptionalDouble wrapS,
    OptionalDouble fullHardnessS,
    boolean tooHumidToHarden,
    double dryFilmUm,
    List<FilmSample> trace,
    Work work) {

  /**
   * What a run took.
   *
   * @param steps accepted time steps
   * @param rejected steps taken back
   */
  public record Work(int steps, int rejected) {}

  public FilmRun {
    coats = List.copyOf(coats);
    trace = List.copyOf(trace);
  }

  /** The last coat's outcome. */
  public CoatOutcome lastCoat() {
    return coats.get(coats.size() - 1);
  }
}
