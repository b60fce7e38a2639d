package coatwright.outlook;

import coatwright.journal.PartPath;
import java.util.Optional;

/**
 * The next coat on a part.
 *
 * @param room where it is laid; empty for where the part stands
 * @param jar it is laid from; empty for the jar of the last coat, or the one filled last
 */
public record NextCoat(PartPath part, Optional<String> room, Optional<String> jar) {
  /** Where the part stands, from the jar that is in use. */
  public static NextCoat on(PartPath part) {
    return new NextCoat(part, Optional.empty(), Optional.empty());
  }

  /** In that room, from the jar that is in use. */
  public static NextCoat on(PartPath part, String room) {
    return new NextCoat(part, Optional.of(room), Optional.empty());
  }
}
