package coatwright.cli;

import coatwright.film.Finish;
import coatwright.quantity.UnitSystem;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;

/**
 * Port: what the commands ask of the house without a running daemon, and the starting of one. The
 * root implements it, because it alone knows the settings, the store and the other doors.
 */
public interface Hall {
  /**
   * Where the settings and the data lie; empty means the usual place.
   *
   * @param config {@code coatwright.yaml}
   */
  record Place(Optional<Path> config, Optional<Path> data) {}

  /**
   * What a command has to know of the shop.
   *
   * @param host where its daemon listens
   */
  record ShopFacts(String host, int port, UnitSystem units, ZoneId zone) {}

  /** The shop's facts by its settings; the defaults where there is no file of settings. */
  ShopFacts shop(Place place);

  /** The finishes this place knows, by name. */
  Map<String, Finish> finishes(Place place);
}
