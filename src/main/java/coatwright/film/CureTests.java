package coatwright.film;

/**
 * What a bench test says of a curing film: it compares the film's clock with the member's own
 * milestone. Which milestone, and how sharply, is assumed.
 */
final class CureTests {
  private CureTests() {}

  /** The milestone whose reaching the test looks at. */
  static Milestone milestone(BenchTest test) {
    return switch (test) {
      case TOUCH -> Milestone.DRY_TO_TOUCH;
      case TACK_FREE -> Milestone.DRY_TO_RECOAT;
      case THUMBNAIL, POWDER -> Milestone.DRY_HARD;
      case SMELL, RUBBED_OUT -> Milestone.RUB_OUT;
      case PRINT -> Milestone.WRAP;
    };
  }

  /** Scatter of the test, natural log of time. */
  static double scatterLn(BenchTest test) {
    return switch (test) {
      case RUBBED_OUT -> 0.25;
      case TOUCH, TACK_FREE -> 0.3;
      case THUMBNAIL -> 0.35;
      case POWDER -> 0.4;
      case PRINT -> 0.5;
      case SMELL -> 0.6;
    };
  }
}
