package coatwright.replay;

import coatwright.film.Drying;
import coatwright.film.Finish;
import coatwright.film.LacquerDrying;
import coatwright.film.OxidativeCure;
import coatwright.film.SpiritDrying;
import coatwright.film.TwoPartCure;
import coatwright.film.WaterborneCure;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** What a described finish dries by. */
enum Family {
  SPIRIT("shellac|spirit|french polish|sandarac|button polish|sanding sealer", SpiritDrying.class),
  TWO_PART("catal|conversion|two.part|2k|epoxy|hardener", TwoPartCure.class),
  LACQUER("lacquer|nitro", LacquerDrying.class),
  WATERBORNE("water.?borne|water.?based|acrylic|emulsion", WaterborneCure.class),
  OXIDATIVE(
      "oil|tung|linseed|danish|varnish|alkyd|polyurethane|urethane|enamel|paint",
      OxidativeCure.class),
  UNKNOWN("", Drying.class);

  private final Pattern words;
  private final Class<? extends Drying> drying;

  Family(String words, Class<? extends Drying> drying) {
    this.words = Pattern.compile(words);
    this.drying = drying;
  }

  /**
   * By the first of the families, in the order above, that the words name; waterborne before its
   * own film.
   */
  static Family of(String finish) {
    String text = finish.toLowerCase(Locale.ROOT);
    for (Family family : new Family[] {TWO_PART, WATERBORNE, LACQUER, SPIRIT, OXIDATIVE}) {
      if (family.words.matcher(text).find()) {
        return family;
      }
    }
    return UNKNOWN;
  }

  /** Dries by a volatile leaving, which chills the film. */
  boolean chills() {
    return this == SPIRIT || this == LACQUER;
  }

  /**
   * The shop's finish of this family that the words come nearest to: the one whose name and title
   * share most words with them, of several alike the usual one, then the first by name.
   *
   * @param told how the finish was described
   * @param usual the shop's usual finish
   * @return empty where the shop has none of this family, or the family is unknown
   */
  Optional<Finish> nearest(String told, Map<String, Finish> finishes, String usual) {
    if (this == UNKNOWN) {
      return Optional.empty();
    }
    String text = told.toLowerCase(Locale.ROOT);
    return finishes.values().stream()
        .filter(finish -> drying.isInstance(finish.drying()))
        .min(
            Comparator.<Finish>comparingLong(finish -> -shared(finish, text))
                .thenComparing(finish -> !finish.name().equals(usual))
                .thenComparing(Finish::name));
  }

  private static long shared(Finish finish, String text) {
    List<String> own =
        Arrays.asList(
            (finish.name() + " " + finish.title()).toLowerCase(Locale.ROOT).split("\\W+"));
    return own.stream().distinct().filter(word -> word.length() > 2 && text.contains(word)).count();
  }
}
