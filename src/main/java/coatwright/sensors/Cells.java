package coatwright.sensors;

import java.util.Optional;

/** One record of a payload, taken apart so that places can be looked up. */
interface Cells {
  /** What stands at the place: a JSON Pointer, group or column name, by the payload's form. */
  Cell at(String place);

  /** The same, where a place may also be meant from the payload's root. */
  default Cell nearOrRoot(String place) {
    return at(place);
  }

  /** The text that stands there, numbers as they print; empty where there is none. */
  default Optional<String> text(String place) {
    Cell cell = nearOrRoot(place);
    if (cell instanceof Cell.Words words) {
      return Optional.of(words.text());
    }
    if (cell instanceof Cell.Figure figure) {
      return Optional.of(figure.text());
    }
    return cell instanceof Cell.Other other && other.what().startsWith("boolean ")
        ? Optional.of(other.what().substring("boolean ".length()))
        : Optional.empty();
  }
}
