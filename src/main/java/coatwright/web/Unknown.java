package coatwright.web;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** A name nobody knows; carries the known names nearest to it. */
final class Unknown extends RuntimeException {
  private static final int MOST_NEAREST = 3;

  private final String sentence;
  private final transient List<String> nearest;

  private Unknown(String sentence, List<String> nearest) {
    super(sentence);
    this.sentence = sentence;
    this.nearest = nearest;
  }

  /**
   * @param kind what the name should have named, such as {@code room}
   * @param known every name of that kind
   */
  static Unknown of(String kind, String name, Collection<String> known) {
    List<String> nearest =
        known.stream()
            .distinct()
            .sorted(
                Comparator.comparingInt((String candidate) -> stepsBetween(name, candidate))
                    .thenComparing(Comparator.naturalOrder()))
            .limit(MOST_NEAREST)
            .toList();
    String remedy =
        nearest.isEmpty()
            ? "none is known yet; enter one first"
            : "the nearest known are " + String.join(", ", nearest);
    return new Unknown("no " + kind + " is called \"" + name + "\"; " + remedy, nearest);
  }

  /** What is unknown and which names are nearest. */
  String sentence() {
    return sentence;
  }

  List<String> nearest() {
    return nearest;
  }

  /** Levenshtein distance, capitals ignored: letters to add, drop or change. */
  static int stepsBetween(String one, String other) {
    String a = one.toLowerCase(Locale.ROOT);
    String b = other.toLowerCase(Locale.ROOT);
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int kept = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(kept, Math.min(row[j], row[j - 1]) + 1);
      }
    }
    return row[b.length()];
  }
}
