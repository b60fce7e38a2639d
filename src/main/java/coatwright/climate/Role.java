package coatwright.climate;

/**
 * What a sensor stands in: the room's air, on a piece or board, outside, or a reference instrument.
 */
public enum Role {
  ROOM,
  PIECE,
  OUTSIDE,
  REFERENCE;

  /** The word used in settings and JSON. */
  @Override
  public String toString() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
