package coatwright.outlook;

import coatwright.climate.Gap;
import coatwright.film.AirCourse;
import coatwright.film.FilmJob;
import coatwright.film.FilmParameters;
import coatwright.film.Finish;
import coatwright.film.Spreads;
import coatwright.journal.Entry;
import coatwright.journal.PartPath;
import java.time.Instant;
import java.util.List;

/**
 * The film job of coats as they were laid: what was in the jar, the air that really was, the wood.
 * Change an input and run it again to see what would have been.
 *
 * @param coat the entry of the coat asked for: the last of {@code laid}
 * @param laid entries of it and every coat beneath it, oldest first
 * @param stack all of them on one clock, whose zero is {@code zero}: decides drying
 * @param zero when the first coat went on
 * @param alone the coat by itself on wood as warm as it was then: decides clouding and open time;
 *     its clock starts with this coat
 * @param spreads how well the inputs are known
 * @param gapK how far the air may have strayed in a gap: half of what it ranged over, 2 K at least
 * @param gaps stretches without readings between the first coat and the end of the record
 * @param inputs where every input came from
 */
public record CoatJob(
    Entry coat,
    PartPath part,
    Finish finish,
    List<Entry> laid,
    FilmJob stack,
    Instant zero,
    FilmJob alone,
    Spreads spreads,
    double gapK,
    List<Gap> gaps,
    List<Provenance> inputs)
    implements LaidJob {
  public CoatJob {
    laid = List.copyOf(laid);
    gaps = List.copyOf(gaps);
    inputs = List.copyOf(inputs);
  }

  /** The film model's set of its finish. */
  public FilmParameters parameters() {
    return Sets.of(finish);
  }

  @Override
  public AirCourse air() {
    return stack.air();
  }

  @Override
  public boolean sameCoats(LaidJob other) {
    return other instanceof CoatJob film && film.stack.coats().equals(stack.coats());
  }

  @Override
  public double lastCoatS() {
    return stack.coats().get(stack.coats().size() - 1).atS();
  }
}
