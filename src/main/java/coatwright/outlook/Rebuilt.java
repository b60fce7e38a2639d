package coatwright.outlook;

/** A coat's job put together again, or why it cannot be. */
public sealed interface Rebuilt {
  /** The job. */
  record Known(LaidJob job) implements Rebuilt {}

  /**
   * It cannot be put together.
   *
   * @param reason one sentence: what is missing and what would help
   */
  record Unknown(String reason) implements Rebuilt {}
}
