package coatwright.journal;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One coat on one part or face.
 *
 * @param jarEntry the entry of the jar's filling it was laid from
 * @param end when the brush was put down; empty while unknown
 * @param wetFilmUm wet film as gauged or reckoned, µm; empty = the method's default
 * @param woodTempC wood temperature if taken, °C
 */
public record Coat(
    PartPath part,
    String jar,
    String jarEntry,
    Instant start,
    Optional<Instant> end,
    String room,
    Method method,
    OptionalDouble wetFilmUm,
    OptionalDouble woodTempC,
    Optional<String> who)
    implements EntryBody {
  @Override
  public String kind() {
    return "coat";
  }
}
