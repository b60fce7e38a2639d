package coatwright.journal;

import java.time.LocalDate;
import java.util.Optional;

/** A piece of furniture in the shop. */
public record Piece(String name, Optional<String> room, Optional<LocalDate> promise)
    implements EntryBody {
  @Override
  public String kind() {
    return "piece";
  }
}
