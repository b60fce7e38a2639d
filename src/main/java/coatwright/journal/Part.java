package coatwright.journal;

import java.util.Optional;
import java.util.OptionalDouble;

/** A part (or one face of it) that takes coats. */
public record Part(
    PartPath path, OptionalDouble areaM2, OptionalDouble thicknessMm, Optional<String> species)
    implements EntryBody {
  @Override
  public String kind() {
    return "part";
  }
}
