package coatwright.film;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What can lie in a stack of finishes, by the words finish files use. */
public enum Layer {
  BARE_WOOD,
  /** A stain whose solvent has gone. */
  DRY_STAIN,
  /** An oil that has hardened. */
  DRY_OIL,
  /** Shellac without its wax. */
  SHELLAC,
  WAXY_SHELLAC,
  LACQUER,
  OIL_VARNISH,
  /** Oil varnish of urethane resin. */
  POLYURETHANE,
  WATERBORNE,
  TWO_PART;

  /** The layer a file's word means. */
  public static Optional<Layer> of(String word) {
    return Arrays.stream(values()).filter(l -> l.toString().equals(word)).findFirst();
  }

  /** Every word, in the order above. */
  public static List<String> words() {
    return Arrays.stream(values()).map(Layer::toString).toList();
  }

  /** The word: {@code bare wood}; {@code two-part}. */
  @Override
  public String toString() {
    return this == TWO_PART ? "two-part" : name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
