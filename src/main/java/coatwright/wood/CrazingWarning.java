package coatwright.wood;

import coatwright.quantity.OutOfRange;
import java.util.OptionalDouble;

/**
 * The wood's movement against what the film on it bears.
 *
 * <p>A film glued to wood is stretched as far as the wood swells and squeezed as far as it shrinks.
 * Stretched, it may craze along the grain; squeezed, it may lift or wrinkle: both are judged alike,
 * by size. No level says that nothing will happen: the film's own swelling, cold, age and a swing
 * that comes many times are not in it.
 *
 * @param strainPct how far the wood moves across the grain, %; positive swells
 * @param tolerance what the film bears
 * @param buildUm dry film, µm, if known; 0 to 5000
 * @param buildLimitUm dry film beyond which this finish is known to craze, µm, if known; 1 to 5000
 */
public record CrazingWarning(
    double strainPct,
    FilmTolerance tolerance,
    OptionalDouble buildUm,
    OptionalDouble buildLimitUm) {
  /** How far the film is strained. */
  public enum Level {
    /** Below the film's yield. */
    BELOW_YIELD("below yield"),
    /** From its yield to its break. */
    PAST_YIELD("past yield"),
    /** Its break or more. */
    PAST_BREAK("past break");

    private final String words;

    Level(String words) {
      this.words = words;
    }

    @Override
    public String toString() {
      return words;
    }
  }

  public CrazingWarning {
    OutOfRange.check("movement of the wood", strainPct, "%", -100, 100);
    buildUm.ifPresent(um -> OutOfRange.check("dry film", um, "µm", 0, 5000));
    buildLimitUm.ifPresent(um -> OutOfRange.check("build limit", um, "µm", 1, 5000));
  }

  /** A film whose thickness is not asked about. */
  public static CrazingWarning of(double strainPct, FilmTolerance tolerance) {
    return new CrazingWarning(strainPct, tolerance, OptionalDouble.empty(), OptionalDouble.empty());
  }

  /** The strain as a share of what breaks the film; 1 and more is past it. */
  public double ofBreak() {
    return Math.abs(strainPct) / tolerance.breakPct();
  }

  /** The film is thicker than its finish's limit. */
  public boolean overBuilt() {
    return buildUm.isPresent()
        && buildLimitUm.isPresent()
        && buildUm.getAsDouble() > buildLimitUm.getAsDouble();
  }

  /**
   * How far the film is strained; one level more for a film that is {@link #overBuilt}, since thick
   * films craze sooner (common practice, no source).
   */
  public Level level() {
    double size = Math.abs(strainPct);
    int steps = size >= tolerance.breakPct() ? 2 : size >= tolerance.yieldPct() ? 1 : 0;
    int raised = overBuilt() ? steps + 1 : steps;
    return Level.values()[Math.min(raised, Level.values().length - 1)];
  }
}
