package coatwright.journal;

import java.util.List;
import java.util.Map;

/**
 * Turns what a person typed, in a command or a form, into entries. The keys are the command's
 * option names; every value is text with its unit. All faults of a form are reported together.
 */
public interface Forms {
  /** Keys: name, room, promise, who, at. */
  List<Entry> piece(Map<String, String> form);

  /** Keys: part, area, thickness, species, who, at. */
  List<Entry> part(Map<String, String> form);

  /** Keys: name, finish, cut, strength, opened, retarder, who, at. */
  List<Entry> jar(Map<String, String> form);

  /**
   * Keys: part (several separated by commas), jar, start, end, room, wetFilm, wood, method, who,
   * same.
   */
  List<Entry> coat(Map<String, String> form);

  /**
   * Keys: part or coat, what (such as {@code clouded=3}, {@code thumbnail=pass}), at, text, who.
   */
  List<Entry> note(Map<String, String> form);

  /** Keys: entry, reason, who. */
  List<Entry> strike(Map<String, String> form);
}
