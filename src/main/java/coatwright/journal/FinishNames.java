package coatwright.journal;

import coatwright.quantity.RefusedInput;
import java.util.Set;
import java.util.TreeSet;

/**
 * The finishes a jar may hold.
 *
 * @param all their names
 * @param dissolved those of them that are a resin in spirit: only of these is there a cut, a spirit
 *     strength or a retarder
 */
public record FinishNames(Set<String> all, Set<String> dissolved) {
  public FinishNames {
    all = Set.copyOf(all);
    dissolved = Set.copyOf(dissolved);
    if (!all.containsAll(dissolved)) {
      throw new IllegalArgumentException("of the dissolved finishes not all are named");
    }
  }

  /** Finishes that are all a resin in spirit. */
  public static FinishNames ofSpirit(String... names) {
    return new FinishNames(Set.of(names), Set.of(names));
  }

  /**
   * A quantity that has a meaning for resin in spirit only.
   *
   * @throws RefusedInput where the finish is none
   */
  <T> T onlyDissolved(String finish, String key, T value) {
    if (all.contains(finish) && !dissolved.contains(finish)) {
      throw RefusedInput.of(
          key + " \"" + value + "\"",
          "belongs to a finish dissolved in spirit, and " + finish + " is none",
          "leave it out");
    }
    return value;
  }

  Set<String> sorted() {
    return new TreeSet<>(all);
  }
}
