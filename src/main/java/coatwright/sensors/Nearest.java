package coatwright.sensors;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;

/** The known word a mistyped one most likely meant. */
final class Nearest {
  private static final int FAR = 4;

  private Nearest() {}

  static String remedy(String typed, Collection<String> known) {
    return known.stream()
        .min(Comparator.comparingInt(word -> distance(typed, word)))
        .filter(word -> distance(typed, word) < Math.min(FAR, Math.max(2, typed.length())))
        .map(word -> "did you mean " + word + "?")
        .orElseGet(() -> "use one of " + String.join(", ", known.stream().sorted().toList()));
  }

  /** Edits between two words (Levenshtein). */
  private static int distance(String typed, String known) {
    String a = typed.toLowerCase(Locale.ROOT);
    String b = known.toLowerCase(Locale.ROOT);
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int replaced = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(replaced, Math.min(row[j], row[j - 1]) + 1);
      }
    }
    return row[b.length()];
  }
}
