package coatwright.film;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/** The words by which files call the milestones. */
final class CureKeys {
  static final Map<Milestone, String> BY_MILESTONE = words();

  private CureKeys() {}

  static String of(Milestone milestone) {
    String key = BY_MILESTONE.get(milestone);
    if (key == null) {
      throw new IllegalArgumentException("files do not set " + milestone);
    }
    return key;
  }

  private static Map<Milestone, String> words() {
    Map<Milestone, String> words = new EnumMap<>(Milestone.class);
    words.put(Milestone.DRY_TO_TOUCH, "touch");
    words.put(Milestone.DRY_TO_RECOAT, "recoat");
    words.put(Milestone.DRY_HARD, "sand");
    words.put(Milestone.RUB_OUT, "rub-out");
    words.put(Milestone.WRAP, "wrap");
    words.put(Milestone.FULL_HARDNESS, "full-hardness");
    return Collections.unmodifiableMap(words);
  }
}
