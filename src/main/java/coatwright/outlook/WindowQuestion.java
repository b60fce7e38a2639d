package coatwright.outlook;

import coatwright.journal.PartPath;
import java.util.Optional;

/**
 * Of which coat the coming hours are asked.
 *
 * @param finish by name; empty for the jar's or the part's, else the shop's usual one
 * @param room where it is laid; empty for where the part stands, else the shop's first
 */
public record WindowQuestion(
    Optional<PartPath> part, Optional<String> finish, Optional<String> jar, Optional<String> room) {
  /** The shop's usual finish in that room. */
  public static WindowQuestion in(String room) {
    return new WindowQuestion(
        Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(room));
  }

  /** The next coat on a part where it stands. */
  public static WindowQuestion on(PartPath part) {
    return new WindowQuestion(
        Optional.of(part), Optional.empty(), Optional.empty(), Optional.empty());
  }
}
