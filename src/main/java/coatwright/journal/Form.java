package coatwright.journal;

import coatwright.quantity.Fault;
import coatwright.quantity.RefusedInput;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * One form being read: gives values by key and gathers every fault, so that a person mends them all
 * at once. A blank value counts as left out.
 */
final class Form {
  /** Reads one value or refuses it; the first argument is what it is called. */
  interface Reader<T> {
    T read(String what, String text);
  }

  private static final int LONGEST_TEXT = 2000;

  private final Map<String, String> values = new TreeMap<>();
  private final List<Fault> faults = new ArrayList<>();

  Form(Map<String, String> form, Set<String> keys) {
    form.forEach(
        (key, value) -> {
          if (!keys.contains(key)) {
            fault(
                "\"" + key + "\"",
                "this form has no such entry",
                Nearest.to(key, keys)
                    .map(near -> "did you mean " + near + "?")
                    .orElse("use " + String.join(", ", keys)));
          } else if (value.length() > LONGEST_TEXT) {
            fault(key, "this is longer than " + LONGEST_TEXT + " letters", "shorten it");
          } else if (!value.isBlank()) {
            values.put(key, value.strip());
          }
        });
  }

  Optional<String> text(String key) {
    return Optional.ofNullable(values.get(key));
  }

  boolean has(String key) {
    return values.containsKey(key);
  }

  /** The value of a key that must be there; its absence is one more fault. */
  Optional<String> required(String key, String remedy) {
    if (!values.containsKey(key)) {
      fault(key, "this is missing", remedy);
    }
    return text(key);
  }

  /** Reads a value if it is there and sound; what is wrong with it joins the faults. */
  <T> Optional<T> read(String key, String what, Reader<T> reader) {
    return read(text(key), what, reader);
  }

  <T> Optional<T> read(Optional<String> text, String what, Reader<T> reader) {
    try {
      return text.map(given -> reader.read(what, given));
    } catch (RefusedInput refused) {
      faults.addAll(refused.faults());
      return Optional.empty();
    }
  }

  void fault(String input, String rule, String remedy) {
    faults.add(Fault.of(input, rule, remedy));
  }

  /** Throws if anything was wrong. */
  void refuseFaults() {
    if (!faults.isEmpty()) {
      throw new RefusedInput(faults);
    }
  }
}
