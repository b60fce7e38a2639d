package coatwright.journal;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A jar of finish. A second entry under the same name is a new filling; coats keep the one they
 * were laid from.
 *
 * @param cutGPerL grams of flakes per litre of spirit; empty means unknown
 * @param strengthVolPct spirit strength, per cent by volume
 */
public record Jar(
    String name,
    String finish,
    OptionalDouble cutGPerL,
    OptionalDouble strengthVolPct,
    Optional<LocalDate> opened,
    Optional<String> retarder)
    implements EntryBody {
  @Override
  public String kind() {
    return "jar";
  }
}
