package coatwright.config;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.sensors.MappingReader;
import coatwright.sensors.Setting;
import coatwright.sensors.SourceMapping;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the manual says about sensors is read by the program as it stands there. */
class SensorsDocTest {
  private static final Path MANUAL = Path.of("docs", "sensors.md");

  @TempDir private Path folder;

  /** Every example of a whole source, and of a payload. */
  static List<String> examples() throws IOException {
    List<String> examples = new ArrayList<>();
    String[] parts = Files.readString(MANUAL).split("```", -1);
    for (int i = 1; i < parts.length; i += 2) {
      String block = parts[i].strip();
      if (block.startsWith("source:") || block.startsWith("payload:")) {
        examples.add(block);
      }
    }
    return examples;
  }

  @ParameterizedTest
  @MethodSource("examples")
  void readsEveryExample(String example) throws IOException {
    Path file = folder.resolve("example.yaml");
    Files.writeString(file, example + "\n");
    Setting setting = SettingsFolder.document(file);
    SourceMapping mapping =
        example.startsWith("source:")
            ? MappingReader.read(setting)
            : MappingReader.read(setting, "example", false);

    assertThat(mapping.payload().kind()).isNotNull();
  }

  @Test
  void showsEveryFormOfPayload() throws IOException {
    assertThat(examples().size()).isGreaterThanOrEqualTo(10);
    assertThat(String.join("\n", examples()))
        .contains("payload: json", "payload: number", "payload: pattern", "payload: columns")
        .contains("payload: senml", "payload: hex", "payload: modbus-rtu", "payload: word");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "source",
        "transport",
        "filter",
        "filters",
        "captures",
        "retained",
        "presence",
        "device",
        "line",
        "settle",
        "payload",
        "charset",
        "each",
        "when",
        "sensorAt",
        "readings",
        "quantity",
        "at",
        "unit",
        "unitAt",
        "unitMap",
        "decimal",
        "type",
        "words",
        "scale",
        "missing",
        "time",
        "zone",
        "trust",
        "sequenceAt",
        "every",
        "correct",
        "limits",
        "role",
        "room",
        "part",
        "broker",
        "chip",
        "address",
        "function",
        "base",
        "start",
        "count",
        "nul",
        "resolution",
        "separator",
        "header",
        "records",
        "ignoreCase",
        "batteryLowAt",
        "lowWhen",
        "layout",
        "pattern"
      })
  void explainsEveryWord(String word) throws IOException {
    assertThat(Files.readString(MANUAL)).containsPattern("`[^`]*\\b" + word + "\\b[^`]*`");
  }
}
