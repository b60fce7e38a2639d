package coatwright.demo;

import java.time.Instant;
import java.util.Map;

/**
 * One form somebody of the invented shop filled in.
 *
 * @param at when it was written down
 * @param kind piece, part, jar, coat or note
 * @param form the option texts
 */
public record InventedEntry(Instant at, String kind, Map<String, String> form) {
  public InventedEntry {
    form = Map.copyOf(form);
  }
}
