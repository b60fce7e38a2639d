package coatwright.config;

import coatwright.film.Basis;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Where a finish's figures are from: under {@code basis}, either sentences, or for each key {@code
 * published}, {@code calibrated}, {@code assumed} or {@code data-sheet}, a colon, and why. A key
 * that is not named is assumed.
 */
final class BasisReader {
  private static final List<String> COMMON =
      List.of(
          "reference",
          "wet-film",
          "wet-film-spread",
          "lowest-temperature",
          "highest-temperature",
          "test-due",
          "build-limit",
          "wax",
          "may-go-over",
          "may-go-under");

  private final Set<String> known = new TreeSet<>(COMMON);
  private final Map<String, Basis> byKey = new TreeMap<>();
  private final List<String> sentences = new ArrayList<>();
  private final List<Told> told = new ArrayList<>();
  private final Section section;

  private record Told(String key, String text) {}

  /**
   * @param file the whole file
   */
  BasisReader(Section file) {
    if (file.isSection("basis")) {
      section = file.section("basis");
      for (String key : List.copyOf(section.names())) {
        told.add(new Told(key, section.text(key, "")));
      }
    } else {
      section = file;
      sentences.addAll(file.texts("basis"));
    }
    told.forEach(this::take);
  }

  private void take(Told t) {
    String word = t.text().split(":", 2)[0].strip();
    Optional<Basis> basis =
        Arrays.stream(Basis.values()).filter(b -> b.toString().equals(word)).findFirst();
    if (basis.isEmpty()) {
      section.fault(
          t.key(),
          "it begins with one of " + words(),
          "write it like \"assumed: common practice, no source\"");
      return;
    }
    byKey.put(t.key(), basis.get());
    sentences.add(t.key() + ": " + t.text());
  }

  private static String words() {
    return Arrays.stream(Basis.values()).map(Basis::toString).collect(Collectors.joining(", "));
  }

  /** Keys of the family that a basis may be told for. */
  void know(String... keys) {
    known.addAll(List.of(keys));
  }

  /** By key. */
  Map<String, Basis> byKey() {
    return byKey;
  }

  /** For people, a line each. */
  List<String> sentences() {
    return sentences;
  }

  /** Puts down every key that the finish does not have. */
  void refuseUnknown() {
    for (Told t : told) {
      if (!known.contains(t.key())) {
        section.fault(
            t.key(),
            "no such key in this finish",
            YamlText.nearest(t.key(), known)
                .map(near -> "did you mean " + near + "?")
                .orElse("known here: " + String.join(", ", known)));
      }
    }
  }
}
