package coatwright.sensors;

import coatwright.quantity.Fault;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The named values of one place in the settings, and every fault found while reading them. */
final class Fields {
  private final String where;
  private final Setting.MapOf map;
  private final List<Fault> faults;

  Fields(String where, Setting.MapOf map, List<Fault> faults) {
    this.where = where;
    this.map = map;
    this.faults = faults;
  }

  int line() {
    return map.line();
  }

  boolean has(String word) {
    Setting found = map.values().get(word);
    return found != null && !(found instanceof Setting.Nothing);
  }

  Optional<Setting> raw(String word) {
    return has(word) ? Optional.ofNullable(map.values().get(word)) : Optional.empty();
  }

  /** Notes a fault of one of these values. */
  void fault(String word, String rule, String remedy) {
    Setting value = map.values().get(word);
    fault(value == null ? map : value, word + shown(value), rule, remedy);
  }

  private void fault(Setting at, String input, String rule, String remedy) {
    Fault fault = Fault.of(where + " " + input, rule, remedy);
    faults.add(at.line() > 0 ? fault.onLine(at.line()) : fault);
  }

  private static String shown(@Nullable Setting value) {
    return value == null ? "" : scalar(value).map(text -> " \"" + text + "\"").orElse("");
  }

  /** Notes a fault for each word that is not known here, with the nearest that is. */
  void refuseUnknown(Collection<String> known) {
    refuseUnknown(known, List.of(), "", false);
  }

  /**
   * The same, with words that are known here only in some cases.
   *
   * @param rule what is said of such a word where it is not the case
   */
  void refuseUnknown(
      Collection<String> known, Collection<String> sometimes, String rule, boolean isTheCase) {
    map.values()
        .forEach(
            (word, value) -> {
              if (sometimes.contains(word)) {
                if (!isTheCase) {
                  fault(value, word, rule, "take the word out");
                }
              } else if (!known.contains(word)) {
                fault(value, word, "is not a word used here", Nearest.remedy(word, known));
              }
            });
  }

  Optional<String> text(String word) {
    Optional<Setting> found = raw(word);
    Optional<String> text = found.flatMap(Fields::scalar);
    if (found.isPresent() && text.isEmpty()) {
      fault(word, "is a list or a group", "write one value");
    }
    return text;
  }

  String requiredText(String word, String remedy) {
    Optional<String> text = text(word).filter(found -> !found.isBlank());
    if (text.isEmpty() && !has(word)) {
      fault(word, "is missing", remedy);
    } else if (text.isEmpty()) {
      fault(word, "is empty", remedy);
    }
    return text.orElse("");
  }

  boolean flag(String word, boolean otherwise) {
    Optional<Setting> found = raw(word);
    if (found.isEmpty()) {
      return otherwise;
    }
    if (found.get() instanceof Setting.Flag flag) {
      return flag.value();
    }
    fault(word, "is neither true nor false", "write true or false");
    return otherwise;
  }

  double number(String word, double otherwise) {
    Optional<Setting> found = raw(word);
    if (found.isEmpty()) {
      return otherwise;
    }
    if (found.get() instanceof Setting.Num number) {
      return number.value().doubleValue();
    }
    fault(word, "is not a number", "write a number such as 2.5");
    return otherwise;
  }

  Optional<Duration> duration(String word) {
    Optional<String> text = text(word);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(Duration.parse(text.get()));
    } catch (DateTimeException e) {
      fault(word, "is not an ISO 8601 duration", "write it like PT30S, PT1M or PT1H");
      return Optional.empty();
    }
  }

  /** One value or a list of them, as texts. */
  List<String> texts(String word) {
    List<String> texts = new ArrayList<>();
    for (Setting value : settings(word)) {
      Optional<String> text = scalar(value);
      text.ifPresent(texts::add);
      if (text.isEmpty()) {
        fault(word, "holds a list or a group where a value is due", "write plain values");
      }
    }
    return texts;
  }

  /** One value or a list of them. */
  List<Setting> settings(String word) {
    Optional<Setting> found = raw(word);
    if (found.isEmpty()) {
      return List.of();
    }
    return found.get() instanceof Setting.ListOf list ? list.values() : List.of(found.get());
  }

  Optional<Fields> group(String word) {
    Optional<Setting> found = raw(word);
    if (found.isPresent() && found.get() instanceof Setting.MapOf inner) {
      return Optional.of(new Fields(where + " " + word, inner, faults));
    }
    if (found.isPresent()) {
      fault(word, "is not a group of named values", "write its parts below it");
    }
    return Optional.empty();
  }

  /** A list of groups. */
  List<Fields> groups(String word) {
    List<Fields> groups = new ArrayList<>();
    int index = 1;
    for (Setting value : settings(word)) {
      if (value instanceof Setting.MapOf inner) {
        groups.add(new Fields(where + " " + word + " " + index, inner, faults));
      } else {
        fault(value, word + " " + index, "is not a group of named values", "write its parts");
      }
      index++;
    }
    return groups;
  }

  /** Named groups, in order. */
  Map<String, Setting> named(String word) {
    Optional<Setting> found = raw(word);
    if (found.isPresent() && found.get() instanceof Setting.MapOf inner) {
      return inner.values();
    }
    if (found.isPresent()) {
      fault(word, "is not a group of named values", "write its parts below it");
    }
    return new LinkedHashMap<>();
  }

  Fields inside(String name, Setting.MapOf inner) {
    return new Fields(where + " " + name, inner, faults);
  }

  static Optional<String> scalar(Setting value) {
    if (value instanceof Setting.Text text) {
      return Optional.of(text.value());
    }
    if (value instanceof Setting.Num number) {
      return Optional.of(plain(number.value()));
    }
    return value instanceof Setting.Flag flag
        ? Optional.of(Boolean.toString(flag.value()))
        : Optional.empty();
  }

  private static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }
}
