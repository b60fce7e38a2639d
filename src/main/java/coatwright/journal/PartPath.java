package coatwright.journal;

import coatwright.quantity.RefusedInput;
import java.util.Optional;

/**
 * Names a part of a piece, and a face of it where it matters: {@code piece/part} or {@code
 * piece/part/face}.
 */
public record PartPath(String piece, String part, Optional<String> face) {
  /** Reads {@code piece/part[/face]}; refuses anything else. */
  public static PartPath parse(String text) {
    String[] names = text.strip().split("/", -1);
    boolean named = names.length == 2 || names.length == 3;
    for (String name : names) {
      named &= !name.isBlank();
    }
    if (!named) {
      throw RefusedInput.of(
          "part \"" + text + "\"",
          "a part is named piece/part or piece/part/face",
          "write it so, for example cabinet/left-door/front");
    }
    return new PartPath(
        names[0].strip(),
        names[1].strip(),
        names.length == 3 ? Optional.of(names[2].strip()) : Optional.empty());
  }

  /** The part without its face. */
  public PartPath whole() {
    return new PartPath(piece, part, Optional.empty());
  }

  @Override
  public String toString() {
    return piece + "/" + part + face.map(f -> "/" + f).orElse("");
  }
}
