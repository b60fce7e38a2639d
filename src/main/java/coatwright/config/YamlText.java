package coatwright.config;

import coatwright.quantity.Fault;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;

/** YAML as a tree that still knows its lines. */
final class YamlText {
  private static final int LARGEST_FILE = 1_000_000;
  private static final int MOST_ALIASES = 20;

  private YamlText() {}

  /** The documents of a file; a text that is no YAML adds a fault and gives none. */
  static List<Node> documents(String text, List<Fault> faults) {
    LoadSettings settings =
        LoadSettings.builder()
            .setCodePointLimit(LARGEST_FILE)
            .setMaxAliasesForCollections(MOST_ALIASES)
            .setAllowRecursiveKeys(false)
            .build();
    List<Node> documents = new ArrayList<>();
    try {
      new Compose(settings).composeAllFromString(text).forEach(documents::add);
      return documents;
    } catch (MarkedYamlEngineException broken) {
      faults.add(notYaml(broken));
    } catch (YamlEngineException broken) {
      faults.add(
          Fault.of(
              "the file", "is no YAML: " + broken.getMessage(), "compare it with the example"));
    }
    return List.of();
  }

  private static Fault notYaml(MarkedYamlEngineException broken) {
    Fault fault =
        Fault.of(
            "this line",
            "is no YAML: " + broken.getProblem(),
            "use blanks, not tabs, to indent, and quote a text that holds : or #");
    return broken.getProblemMark().map(mark -> fault.onLine(mark.getLine() + 1)).orElse(fault);
  }

  /** The line a node starts on, counted from 1. */
  static int line(Node node) {
    return node.getStartMark().map(mark -> mark.getLine() + 1).orElse(1);
  }

  /** The name in the list nearest to a mistyped one, when it is near enough to be meant. */
  static Optional<String> nearest(String typed, Iterable<String> names) {
    String best = "";
    int least = Math.max(2, typed.length() / 3) + 1;
    for (String name : names) {
      int distance = distance(typed, name);
      if (distance < least) {
        least = distance;
        best = name;
      }
    }
    return best.isEmpty() ? Optional.empty() : Optional.of(best);
  }

  /** Letters to add, drop or change to make one word of the other. */
  private static int distance(String a, String b) {
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int changed = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(changed, Math.min(row[j], row[j - 1]) + 1);
      }
    }
    return row[b.length()];
  }
}
