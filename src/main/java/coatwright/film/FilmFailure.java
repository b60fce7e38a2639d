package coatwright.film;

/** The film cannot be computed further: a fault in the model or its numbers, never the weather. */
public final class FilmFailure extends RuntimeException {
  private static final long serialVersionUID = 1L;

  FilmFailure(String message) {
    super(message);
  }
}
