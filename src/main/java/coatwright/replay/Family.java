package coatwright.replay;

import java.util.Locale;
import java.util.regex.Pattern;

/** What a described finish dries by. Only spirit finishes have a film model so far. */
enum Family {
  SPIRIT("shellac|spirit|french polish|sandarac|button polish|sanding sealer"),
  TWO_PART("catal|conversion|two.part|2k|epoxy|hardener"),
  LACQUER("lacquer|nitro"),
  WATERBORNE("water.?borne|water.?based|acrylic|emulsion"),
  OXIDATIVE("oil|tung|linseed|danish|varnish|alkyd|polyurethane|urethane|enamel|paint"),
  UNKNOWN("");

  private final Pattern words;

  Family(String words) {
    this.words = Pattern.compile(words);
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
}
