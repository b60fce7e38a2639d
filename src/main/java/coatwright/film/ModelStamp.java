package coatwright.film;

/**
 * Which model, and which version of it, a number came from. Stored beside every prediction, so that
 * an old date can be told from a new model.
 */
public record ModelStamp(String name, String version) {
  static final String FILM_VERSION = "1";

  public ModelStamp {
    if (name.isBlank() || version.isBlank()) {
      throw new IllegalArgumentException("a model stamp needs a name and a version");
    }
  }
}
