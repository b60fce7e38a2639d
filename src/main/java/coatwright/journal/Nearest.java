package coatwright.journal;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds the known name a mistyped one was most likely meant to be. */
final class Nearest {
  private Nearest() {}

  /**
   * The known name with the fewest letters added, left out or changed.
   *
   * @return empty when nothing is near enough to be the same word
   */
  static Optional<String> to(String typed, Collection<String> known) {
    int most = Math.max(2, typed.length() / 3);
    return known.stream()
        .min(
            Comparator.comparingInt((String name) -> distance(typed, name))
                .thenComparing(name -> name))
        .filter(name -> distance(typed, name) <= most);
  }

  /** Edit distance (Levenshtein 1966), capitals aside. */
  static int distance(String left, String right) {
    String a = left.toLowerCase(Locale.ROOT);
    String b = right.toLowerCase(Locale.ROOT);
    int[] above = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      above[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] row = new int[b.length() + 1];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int changed = above[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        row[j] = Math.min(changed, Math.min(above[j], row[j - 1]) + 1);
      }
      above = row;
    }
    return above[b.length()];
  }
}
