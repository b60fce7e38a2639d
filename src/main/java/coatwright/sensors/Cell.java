package coatwright.sensors;

/** What stands at one place of a payload. */
sealed interface Cell {
  /** Nothing is there. */
  record Absent() implements Cell {}

  /** Words, which may wholly be a number. */
  record Words(String text) implements Cell {}

  /** A number of the payload's own grammar; may have overflowed. */
  record Figure(double value, String text) implements Cell {}

  /** Something that is neither, named for the reader: "null", "boolean", "array". */
  record Other(String what) implements Cell {}

  /** Something that can be no number of this source, and why. */
  record Unusable(String reason) implements Cell {}

  Cell ABSENT = new Absent();
}
