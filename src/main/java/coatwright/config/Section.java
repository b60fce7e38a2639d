package coatwright.config;

import coatwright.quantity.Fault;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.StrictNumber;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * One level of a settings file, read key by key. What is wrong is collected, not thrown; a fault is
 * put down once, and the default stands in so that reading goes on to the next. Keys are written in
 * dashed lower case; {@code passwordFile} is read as {@code password-file}.
 */
final class Section {
  private static final String NONE = "none";

  private final String path;
  private final int line;
  private final List<Fault> faults;
  private final Map<String, Node> valueByKey = new LinkedHashMap<>();
  private final Map<String, Integer> lineByKey = new LinkedHashMap<>();
  private final Set<String> asked = new LinkedHashSet<>();

  private Section(String path, int line, List<Fault> faults) {
    this.path = path;
    this.line = line;
    this.faults = faults;
  }

  /** The section a node holds; an empty one, with a fault, when it holds something else. */
  static Section of(String path, Node node, List<Fault> faults) {
    Section section = new Section(path, YamlText.line(node), faults);
    if (node instanceof MappingNode mapping) {
      mapping.getValue().forEach(section::take);
    } else if (!isEmpty(node)) {
      section.fault(
          YamlText.line(node),
          section.named(),
          "holds keys and values",
          "write each as key: value");
    }
    return section;
  }

  /** A section that is not in the file: every key takes its default. */
  static Section absent(String path, int line, List<Fault> faults) {
    return new Section(path, line, faults);
  }

  private void take(NodeTuple tuple) {
    int keyLine = YamlText.line(tuple.getKeyNode());
    if (!(tuple.getKeyNode() instanceof ScalarNode scalar)) {
      fault(keyLine, named(), "a key is a word", "write it as key: value");
      return;
    }
    String key = dashed(scalar.getValue());
    if (valueByKey.containsKey(key)) {
      fault(keyLine, name(key), "stands twice", "keep one of them");
      return;
    }
    lineByKey.put(key, keyLine);
    if (!isEmpty(tuple.getValueNode())) {
      valueByKey.put(key, tuple.getValueNode());
    }
  }

  private static boolean isEmpty(Node node) {
    return node instanceof ScalarNode scalar && scalar.isPlain() && scalar.getValue().isEmpty();
  }

  private static String dashed(String key) {
    return key.replaceAll("(?<=[a-z0-9])([A-Z])", "-$1").toLowerCase(Locale.ROOT);
  }

  /** The line this section starts on. */
  int line() {
    return line;
  }

  /** The keys written here, in their order; for sections whose keys are a person's own names. */
  Set<String> names() {
    asked.addAll(lineByKey.keySet());
    return lineByKey.keySet();
  }

  /** Whether any key stands here. */
  boolean isWritten() {
    return !lineByKey.isEmpty();
  }

  /** The text of a key that has to be there. */
  String needed(String key, String example) {
    Optional<String> text = text(key);
    if (text.isEmpty() && !valueByKey.containsKey(key)) {
      fault(lineByKey.getOrDefault(key, line), name(key), "missing", "write it like " + example);
    }
    return text.orElse("");
  }

  /** The text of a key, or the default. */
  String text(String key, String otherwise) {
    return text(key).orElse(otherwise);
  }

  /** The text of a key that may say {@code none}. */
  Optional<String> optional(String key) {
    return text(key).filter(text -> !text.equals(NONE));
  }

  /** A quantity read with its unit, or the default. */
  <T> T quantity(String key, T otherwise, BiFunction<String, String, T> reader) {
    Optional<String> text = text(key);
    if (text.isEmpty()) {
      return otherwise;
    }
    try {
      return reader.apply(name(key), text.get());
    } catch (RefusedInput refused) {
      int at = lineOf(key);
      refused.faults().forEach(fault -> faults.add(fault.onLine(at)));
      return otherwise;
    }
  }

  /** A quantity that may be {@code none}. */
  OptionalDouble optionalQuantity(String key, BiFunction<String, String, Double> reader) {
    if (optional(key).isEmpty()) {
      return OptionalDouble.empty();
    }
    double read = quantity(key, Double.NaN, reader);
    return Double.isNaN(read) ? OptionalDouble.empty() : OptionalDouble.of(read);
  }

  /** A pure number within a range, or the default. */
  double number(String key, double otherwise, double low, double high) {
    Optional<String> text = text(key);
    if (text.isEmpty()) {
      return otherwise;
    }
    OptionalDouble number = StrictNumber.parse(text.get(), '.');
    if (number.isPresent() && number.getAsDouble() >= low && number.getAsDouble() <= high) {
      return number.getAsDouble();
    }
    fault(
        lineOf(key),
        quoted(key, text.get()),
        "a number from %s to %s is expected".formatted(plain(low), plain(high)),
        "write it like " + plain(otherwise));
    return otherwise;
  }

  /** A whole number within a range, or the default. */
  int whole(String key, int otherwise, int low, int high) {
    double number = number(key, otherwise, low, high);
    if (number != Math.rint(number)) {
      fault(lineOf(key), name(key), "a whole number is expected", "write it like " + otherwise);
      return otherwise;
    }
    return (int) number;
  }

  private static String plain(double number) {
    return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
  }

  /** One of a few words, or the default. */
  String choice(String key, String otherwise, List<String> words) {
    Optional<String> text = text(key);
    if (text.isEmpty() || words.contains(text.get())) {
      return text.orElse(otherwise);
    }
    String remedy =
        YamlText.nearest(text.get(), words)
            .map(near -> "write " + near)
            .orElse("choose one of them");
    fault(lineOf(key), quoted(key, text.get()), "it is one of " + String.join(", ", words), remedy);
    return otherwise;
  }

  /** The texts of a list; a single text counts as a list of one. */
  List<String> texts(String key) {
    asked.add(key);
    Node node = valueByKey.get(key);
    if (node instanceof SequenceNode sequence) {
      return sequence.getValue().stream().flatMap(item -> scalar(key, item).stream()).toList();
    }
    return text(key).map(List::of).orElse(List.of());
  }

  /** Whether keys and values stand under a key, and not a text or a list. */
  boolean isSection(String key) {
    return valueByKey.get(key) instanceof MappingNode;
  }

  /** Whether a key is written here, with a value. */
  boolean has(String key) {
    return valueByKey.containsKey(key);
  }

  /** The section under a key; absent, every key of it takes its default. */
  Section section(String key) {
    asked.add(key);
    Node node = valueByKey.get(key);
    return node == null
        ? absent(name(key), lineByKey.getOrDefault(key, line), faults)
        : of(name(key), node, faults);
  }

  /** The sections of a list, named {@code key[1]}, {@code key[2]} …. */
  List<Section> sections(String key) {
    asked.add(key);
    Node node = valueByKey.get(key);
    List<Section> sections = new ArrayList<>();
    if (node instanceof SequenceNode sequence) {
      for (Node item : sequence.getValue()) {
        sections.add(of(name(key) + "[" + (sections.size() + 1) + "]", item, faults));
      }
    } else if (node != null) {
      fault(YamlText.line(node), name(key), "a list is expected", "begin each of them with \"- \"");
    }
    return sections;
  }

  /** Puts down every key that nobody asked for, with the nearest one that is known. */
  void refuseOthers() {
    for (Map.Entry<String, Integer> key : lineByKey.entrySet()) {
      if (!asked.contains(key.getKey())) {
        String known = asked.stream().sorted().collect(Collectors.joining(", "));
        String remedy =
            YamlText.nearest(key.getKey(), asked)
                .map(near -> "did you mean " + near + "?")
                .orElse("known here: " + known);
        fault(key.getValue(), name(key.getKey()), "no such key", remedy);
      }
    }
  }

  /** Puts down a fault of one key's value. */
  void fault(String key, String rule, String remedy) {
    boolean single = valueByKey.get(key) instanceof ScalarNode;
    String shown = single ? text(key).map(text -> quoted(key, text)).orElse(name(key)) : name(key);
    fault(lineOf(key), shown, rule, remedy);
  }

  /** Puts down a fault of one key's value that is not to be shown. */
  void faultUnshown(String key, String rule, String remedy) {
    fault(lineOf(key), name(key), rule, remedy);
  }

  private void fault(int atLine, String input, String rule, String remedy) {
    faults.add(Fault.of(input, rule, remedy).onLine(atLine));
  }

  private Optional<String> text(String key) {
    asked.add(key);
    Node node = valueByKey.get(key);
    return node == null ? Optional.empty() : scalar(key, node);
  }

  private Optional<String> scalar(String key, Node node) {
    if (node instanceof ScalarNode scalar) {
      return Optional.of(scalar.getValue().strip());
    }
    fault(YamlText.line(node), name(key), "a single value is expected", "write it on one line");
    return Optional.empty();
  }

  private int lineOf(String key) {
    Node node = valueByKey.get(key);
    return node == null ? lineByKey.getOrDefault(key, line) : YamlText.line(node);
  }

  private String name(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  private String named() {
    return path.isEmpty() ? "the file" : path;
  }

  private String quoted(String key, String text) {
    return name(key) + " \"" + text + "\"";
  }
}
