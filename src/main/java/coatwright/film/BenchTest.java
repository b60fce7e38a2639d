package coatwright.film;

/**
 * A test made at the bench, and what passing it says of the film.
 *
 * <p>Touch and thumbnail compare a softness with a limit; print, smell and rubbing out compare the
 * film's own clock with the member's milestone. All limits and all scatters are assumed: bench
 * tests differ from hand to hand, and two in a hundred are misread either way.
 */
public enum BenchTest {
  /** A clean finger leaves no mark: softness of the skin at most 55 K (1e3 Pa s). */
  TOUCH(true, 55, 5),
  /** Not tacky: softness of the whole film at most the recoat limit of 40 K. */
  TACK_FREE(false, 40, 5),
  /** A thumbnail leaves no dent: softness of the whole film at most 5 K. */
  THUMBNAIL(false, 5, 5),
  /** Sands to powder and does not clog: as hard as for the thumbnail, judged less sharply. */
  POWDER(false, 5, 7),
  /** No smell of spirit close up: about when the film is ready to rub out by the model's limit. */
  SMELL(Milestone.RUB_OUT, 0.6),
  /** A cloth under a weight leaves no pattern: about when it may be wrapped. */
  PRINT(Milestone.WRAP, 0.5),
  /** Rubbed out and stayed fine: this person's own limit was reached. */
  RUBBED_OUT(Milestone.RUB_OUT, 0.25);

  private static final double MISREAD = 0.02;

  final boolean onSoftness;
  final boolean onSkin;
  final double limitK;
  final double scatter;
  final Milestone milestone;

  BenchTest(boolean onSkin, double limitK, double scatterK) {
    this.onSoftness = true;
    this.onSkin = onSkin;
    this.limitK = limitK;
    this.scatter = scatterK;
    this.milestone = Milestone.DRY_HARD;
  }

  BenchTest(Milestone milestone, double scatterLn) {
    this.onSoftness = false;
    this.onSkin = false;
    this.limitK = 0;
    this.scatter = scatterLn;
    this.milestone = milestone;
  }

  /** Chance of this outcome where the film stands so many scatters beyond the limit. */
  static double chance(double scattersBeyond, boolean passed) {
    double passes = MISREAD + (1 - 2 * MISREAD) * NormalLaw.below(scattersBeyond);
    return passed ? passes : 1 - passes;
  }

  /**
   * A test that was made.
   *
   * @param atS on the job's clock
   */
  public record Seen(BenchTest test, double atS, boolean passed) {}
}
