package coatwright.wood;

import java.util.Locale;

/** How a board was cut from the log, which decides how far its width moves. */
public enum Sawn {
  /** Growth rings flat to the face: the width moves along the rings, tangentially, and most. */
  FLAT,
  /** Growth rings upright to the face: the width moves from ring to ring, radially. */
  QUARTER;

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
