package coatwright.config;

import coatwright.quantity.Fault;
import coatwright.quantity.RefusedInput;
import coatwright.sensors.MappingReader;
import coatwright.sensors.Setting;
import coatwright.sensors.SourceMapping;
import coatwright.sensors.Transport;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/**
 * Reads the sensors' files: hands each document to the sensors' own reader, and checks what only
 * the house can know, that the room and the broker are there and no name stands twice.
 */
final class SourcesReader {
  private final Set<String> rooms;
  private final Set<String> brokers;
  private final Map<String, String> fileBySource = new HashMap<>();
  private final List<SourceMapping> mappings = new ArrayList<>();

  SourcesReader(Set<String> rooms, Set<String> brokers) {
    this.rooms = rooms;
    this.brokers = brokers;
  }

  /** What was read so far, in the order of the files. */
  List<SourceMapping> mappings() {
    return List.copyOf(mappings);
  }

  /** Reads the documents of one file; its faults are added to the list. */
  void read(String file, String text, List<Fault> faults) {
    for (Node document : YamlText.documents(text, faults)) {
      try {
        accept(file, document, MappingReader.read(setting(document)), faults);
      } catch (RefusedInput refused) {
        refused.faults().forEach(fault -> faults.add(placed(fault, document)));
      }
    }
  }

  private void accept(String file, Node document, SourceMapping mapping, List<Fault> faults) {
    String other = fileBySource.putIfAbsent(mapping.source(), file);
    if (other != null) {
      faults.add(
          fault(document, "source", mapping.source(), "is in " + other + " too", "rename one"));
    }
    mapping
        .placing()
        .room()
        .filter(room -> !rooms.contains(room))
        .ifPresent(
            room ->
                faults.add(
                    fault(
                        document,
                        "room",
                        room,
                        "no such room in coatwright.yaml",
                        among(room, rooms))));
    mapping
        .transport()
        .filter(Transport.Mqtt.class::isInstance)
        .map(transport -> ((Transport.Mqtt) transport).broker())
        .filter(broker -> !brokers.contains(broker))
        .ifPresent(
            broker ->
                faults.add(
                    fault(
                        document,
                        "broker",
                        broker,
                        "no such broker in coatwright.yaml",
                        among(broker, brokers))));
    mappings.add(mapping);
  }

  private static String among(String typed, Set<String> names) {
    if (names.isEmpty()) {
      return "write it there first";
    }
    return YamlText.nearest(typed, names)
        .map(near -> "did you mean " + near + "?")
        .orElseGet(() -> "there are: " + names.stream().sorted().collect(Collectors.joining(", ")));
  }

  private static Fault fault(Node document, String key, String value, String rule, String remedy) {
    return Fault.of(key + " \"" + value + "\"", rule, remedy).onLine(lineOf(document, key));
  }

  private static Fault placed(Fault fault, Node document) {
    return fault.line().isPresent() && fault.line().getAsInt() > 0
        ? fault
        : fault.onLine(YamlText.line(document));
  }

  private static int lineOf(Node document, String key) {
    if (document instanceof MappingNode mapping) {
      for (NodeTuple tuple : mapping.getValue()) {
        if (tuple.getKeyNode() instanceof ScalarNode scalar && scalar.getValue().equals(key)) {
          return YamlText.line(tuple.getValueNode());
        }
      }
    }
    return YamlText.line(document);
  }

  /** The document as the sensors' reader takes it: neither YAML nor JSON. */
  static Setting setting(Node node) {
    int line = YamlText.line(node);
    if (node instanceof MappingNode mapping) {
      Map<String, Setting> values = new LinkedHashMap<>();
      for (NodeTuple tuple : mapping.getValue()) {
        String key = tuple.getKeyNode() instanceof ScalarNode scalar ? scalar.getValue() : "?";
        if (values.put(key, setting(tuple.getValueNode())) != null) {
          throw new RefusedInput(
              List.of(
                  Fault.of(key, "stands twice", "keep one of them")
                      .onLine(YamlText.line(tuple.getKeyNode()))));
        }
      }
      return new Setting.MapOf(values, line);
    }
    if (node instanceof SequenceNode sequence) {
      return new Setting.ListOf(
          sequence.getValue().stream().map(SourcesReader::setting).toList(), line);
    }
    return node instanceof ScalarNode scalar ? scalar(scalar, line) : new Setting.Nothing(line);
  }

  private static Setting scalar(ScalarNode scalar, int line) {
    String text = scalar.getValue();
    Tag tag = scalar.getTag();
    if (tag.equals(Tag.NULL)) {
      return new Setting.Nothing(line);
    }
    if (tag.equals(Tag.BOOL)) {
      return new Setting.Flag(Boolean.parseBoolean(text), line);
    }
    if (tag.equals(Tag.INT) || tag.equals(Tag.FLOAT)) {
      Optional<BigDecimal> number = number(text);
      if (number.isPresent()) {
        return new Setting.Num(number.get(), line);
      }
    }
    return new Setting.Text(text, line);
  }

  private static Optional<BigDecimal> number(String text) {
    try {
      return Optional.of(new BigDecimal(text));
    } catch (NumberFormatException notDecimal) {
      // .inf and .nan are numbers to YAML, and to nobody else here.
      return Optional.empty();
    }
  }
}
