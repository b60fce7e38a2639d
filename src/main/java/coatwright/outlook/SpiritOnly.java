package coatwright.outlook;

import coatwright.film.Finish;
import coatwright.film.SpiritDrying;
import coatwright.quantity.Fault;
import java.util.List;
import java.util.Optional;

/** What can be asked of a finish dissolved in spirit only. */
public final class SpiritOnly {
  /** Names of those quantities. */
  public static final List<String> KEYS = List.of("cut", "strength", "retarder");

  private SpiritOnly() {}

  /** The fault in giving such a quantity for any other finish; empty where it has a meaning. */
  public static Optional<Fault> refused(Finish finish, String key, String text) {
    return finish.drying() instanceof SpiritDrying
        ? Optional.empty()
        : Optional.of(
            Fault.of(
                key + " \"" + text + "\"",
                "belongs to a finish dissolved in spirit, and " + finish.title() + " is none",
                "leave it out"));
  }
}
