package coatwright.film;

import java.util.Optional;

/**
 * Whether one finish may lie on another, by what both files say. A word that is missing on either
 * side is a warning; which pairs hold is common practice, and a test piece decides.
 */
public final class LayerStack {
  private LayerStack() {}

  /**
   * What speaks against it.
   *
   * @param below the lower finish's title
   * @param above the upper finish's title
   * @param reason which side does not name the other
   * @param missing the word that is not there
   */
  public record Warning(String below, String above, Reason reason, Layer missing) {

    /** One sentence for the bench. */
    public String sentence() {
      return switch (reason) {
        case WAX_BENEATH ->
            "%s holds wax: %s may not hold on it. Put a coat of dewaxed shellac between, or stay with shellac."
                .formatted(below, above);
        case NOT_OVER ->
            "%s is not known to go over %s: its file does not name %s. Try it on a scrap first."
                .formatted(above, below, missing);
        case NOT_UNDER ->
            "%s is not known to go under %s: its file does not name %s. Try it on a scrap first."
                .formatted(below, above, missing);
      };
    }
  }

  /** Which side does not name the other. */
  public enum Reason {
    /** Waxy shellac beneath anything but shellac. */
    WAX_BENEATH,
    /** The upper finish's {@code may-go-over} lacks the lower. */
    NOT_OVER,
    /** The lower finish's {@code may-go-under} lacks the upper. */
    NOT_UNDER
  }

  /** What speaks against laying one finish over another; nothing where both files allow it. */
  public static Optional<Warning> check(Finish below, Finish above) {
    boolean over = above.mayGoOver().contains(below.layer());
    boolean under = below.mayGoUnder().contains(above.layer());
    if (over && under) {
      return Optional.empty();
    }
    if (below.layer() == Layer.WAXY_SHELLAC) {
      return warning(below, above, Reason.WAX_BENEATH, below.layer());
    }
    return over
        ? warning(below, above, Reason.NOT_UNDER, above.layer())
        : warning(below, above, Reason.NOT_OVER, below.layer());
  }

  private static Optional<Warning> warning(
      Finish below, Finish above, Reason reason, Layer missing) {
    return Optional.of(new Warning(below.title(), above.title(), reason, missing));
  }

  /** Whether a finish's file names what lies beneath, where that is no finish of the list. */
  public static boolean mayGoOver(Finish above, Layer below) {
    return above.mayGoOver().contains(below);
  }
}
