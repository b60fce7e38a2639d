package coatwright.review;

/** Answers why. */
public interface Reviews {
  /**
   * The case of a coat ({@code e41}) or of a part's newest clouded coat ({@code
   * cabinet/left-door}).
   */
  Why why(String coatOrPart);
}
