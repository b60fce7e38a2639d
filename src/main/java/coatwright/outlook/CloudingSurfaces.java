package coatwright.outlook;

import coatwright.film.FilmParameters;
import coatwright.film.LaidCoat;
import java.util.LinkedHashMap;
import java.util.Map;

/** The last clouding surfaces that were asked for: they hang on the coat, not on the hour. */
final class CloudingSurfaces {
  private static final int KEPT = 32;

  /** All that a surface depends on. */
  private record Key(
      FilmParameters set, String finish, LaidCoat coat, double draughtMPerS, double boardMm) {}

  private final Map<Key, CloudingSurface> kept =
      new LinkedHashMap<>(KEPT, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, CloudingSurface> eldest) {
          return size() > KEPT;
        }
      };

  synchronized CloudingSurface of(Coating coating, double draughtMPerS, double boardMm) {
    FilmParameters set = coating.alone().parameters();
    Key key = new Key(set, coating.finish().name(), coating.coat().at(0), draughtMPerS, boardMm);
    CloudingSurface known = kept.get(key);
    if (known == null) {
      known = CloudingSurface.of(set, coating.finish(), coating.coat(), draughtMPerS, boardMm);
      kept.put(key, known);
    }
    return known;
  }
}
