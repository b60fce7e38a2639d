package coatwright.config;

import coatwright.film.Finish;
import coatwright.json.Json;
import coatwright.quantity.Fault;
import coatwright.sensors.Setting;
import coatwright.sensors.SourceMapping;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.snakeyaml.engine.v2.nodes.Node;

/**
 * The files a person wrote, read together: {@code coatwright.yaml}, and beside it {@code sources/}
 * and {@code finishes/}. Where there is no folder of finishes, the ones that came with the program
 * are used.
 */
public final class SettingsFolder {
  /** Finishes that come with the program. */
  private static final List<String> SHIPPED =
      List.of(
          "shellac-pale",
          "shellac-amber",
          "shellac-amber-dewaxed",
          "shellac-garnet",
          "shellac-garnet-dewaxed",
          "varnish-alkyd",
          "varnish-urethane",
          "oil-linseed",
          "oil-tung",
          "waterborne-acrylic",
          "waterborne-urethane",
          "lacquer-nitrocellulose",
          "two-part-acid",
          "two-part-urethane");

  private final Map<String, List<Fault>> faultsByFile = new LinkedHashMap<>();

  private SettingsFolder() {}

  /**
   * Reads and checks everything.
   *
   * @param file {@code coatwright.yaml}
   * @throws RefusedSettings naming every fault of every file
   */
  public static Settings read(Path file) {
    SettingsFolder folder = new SettingsFolder();
    Settings settings = folder.settings(file);
    folder.refuseFaults();
    return settings;
  }

  /**
   * The finishes that {@code coatwright.yaml} points to, whatever else may be wrong in it; beside
   * the place of a file that is not there, the same.
   *
   * @throws RefusedSettings naming every fault of the finish files
   */
  public static Map<String, Finish> finishesOf(Path file) {
    SettingsFolder reader = new SettingsFolder();
    List<Fault> notAsked = new ArrayList<>();
    Section root = reader.root(Files.exists(file) ? text(file, notAsked) : "", notAsked);
    Path beside = file.toAbsolutePath().resolveSibling("");
    return finishes(new SettingsReader(root, beside).folder("finishes"));
  }

  /**
   * The finishes of the folder, or the shipped ones where it is not there.
   *
   * @throws RefusedSettings naming every fault of every file
   */
  public static Map<String, Finish> finishes(Path folder) {
    SettingsFolder reader = new SettingsFolder();
    Map<String, Finish> finishes = reader.readFinishes(folder);
    reader.refuseFaults();
    return finishes;
  }

  /**
   * A file of another room's settings as a tree, YAML or JSON.
   *
   * @throws RefusedSettings when it is neither
   */
  public static Setting document(Path file) {
    SettingsFolder reader = new SettingsFolder();
    List<Fault> faults = reader.faultsOf(fileName(file));
    String text = text(file, faults);
    Setting read = text.startsWith("{") ? json(text, faults) : yaml(text, faults);
    reader.refuseFaults();
    return read;
  }

  private static Setting json(String text, List<Fault> faults) {
    try {
      return Setting.of(Json.mapper().readTree(text));
    } catch (JsonProcessingException broken) {
      Fault fault = Fault.of("this line", "is no JSON: " + Json.fault(broken), "mend it there");
      faults.add(
          broken.getLocation() == null ? fault : fault.onLine(broken.getLocation().getLineNr()));
      return new Setting.Nothing(0);
    }
  }

  private static Setting yaml(String text, List<Fault> faults) {
    List<Node> documents = YamlText.documents(text, faults);
    if (documents.size() == 1) {
      return SourcesReader.setting(documents.get(0));
    }
    if (faults.isEmpty()) {
      faults.add(Fault.of("the file", "holds one document", "write one, and no lines of ---"));
    }
    return new Setting.Nothing(0);
  }

  private void refuseFaults() {
    faultsByFile.values().removeIf(List::isEmpty);
    if (!faultsByFile.isEmpty()) {
      throw new RefusedSettings(faultsByFile);
    }
  }

  private Settings settings(Path file) {
    List<Fault> faults = faultsOf(fileName(file));
    String text = text(file, faults);
    if (!faults.isEmpty()) {
      // What is not there has no lines to find fault with.
      refuseFaults();
    }
    Section root = root(text, faults);
    Path beside = file.toAbsolutePath().resolveSibling("");
    SettingsReader reader = new SettingsReader(root, beside);
    Map<String, Finish> finishes = readFinishes(reader.folder("finishes"));
    Path sources = reader.folder("sources");
    return reader.settings(finishes, (rooms, brokers) -> readSources(sources, rooms, brokers));
  }

  private List<SourceMapping> readSources(Path folder, Set<String> rooms, Set<String> brokers) {
    SourcesReader reader = new SourcesReader(rooms, brokers);
    if (Files.isDirectory(folder)) {
      for (NamedText file : yamlFiles(folder)) {
        String name = fileName(folder) + "/" + file.name() + ".yaml";
        reader.read(name, file.text(), faultsOf(name));
      }
    }
    return reader.mappings();
  }

  private Map<String, Finish> readFinishes(Path folder) {
    Map<String, Finish> finishes = new TreeMap<>();
    for (NamedText file : Files.isDirectory(folder) ? yamlFiles(folder) : shipped()) {
      List<Fault> faults = faultsOf("finishes/" + file.name() + ".yaml");
      List<Node> documents = YamlText.documents(file.text(), faults);
      if (!FinishReader.isName(file.name())) {
        faults.add(
            Fault.of(
                "the file's name", "is the finish's name, a-z, 0-9 and dashes", "rename the file"));
      }
      if (documents.size() == 1) {
        finishes.put(file.name(), FinishReader.read(file.name(), documents.get(0), faults));
      } else if (faults.isEmpty()) {
        faults.add(Fault.of("the file", "holds one finish", "write one finish in each file"));
      }
    }
    return finishes;
  }

  private Section root(String text, List<Fault> faults) {
    List<Node> documents = YamlText.documents(text, faults);
    if (documents.size() > 1) {
      faults.add(Fault.of("the file", "holds one document", "take out the lines of ---"));
    }
    return documents.isEmpty()
        ? Section.absent("", 1, faults)
        : Section.of("", documents.get(0), faults);
  }

  private List<Fault> faultsOf(String file) {
    return faultsByFile.computeIfAbsent(file, name -> new ArrayList<>());
  }

  private List<NamedText> yamlFiles(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> fileName(file).endsWith(".yaml") && Files.isRegularFile(file))
          .sorted()
          .map(this::named)
          .toList();
    } catch (IOException unreadable) {
      throw new UncheckedIOException("cannot list " + folder, unreadable);
    }
  }

  private NamedText named(Path file) {
    String fileName = fileName(file);
    List<Fault> faults =
        faultsOf(fileName(Optional.ofNullable(file.getParent()).orElse(file)) + "/" + fileName);
    return new NamedText(
        fileName.substring(0, fileName.length() - ".yaml".length()), text(file, faults));
  }

  private static List<NamedText> shipped() {
    return SHIPPED.stream().map(SettingsFolder::shipped).toList();
  }

  private static NamedText shipped(String name) {
    String resource = "/config/finishes/" + name + ".yaml";
    try (InputStream in = SettingsFolder.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its own file " + resource);
      }
      return new NamedText(name, new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException unreadable) {
      throw new UncheckedIOException("cannot read " + resource, unreadable);
    }
  }

  private static String text(Path file, List<Fault> faults) {
    try {
      return Files.readString(file);
    } catch (NoSuchFileException missing) {
      faults.add(
          Fault.of(
              file.toString(), "is not there", "copy the example, or name yours with --config"));
    } catch (CharacterCodingException notText) {
      faults.add(Fault.of("the file", "is not UTF-8 text", "save it as UTF-8"));
    } catch (IOException unreadable) {
      faults.add(
          Fault.of(
              file.toString(),
              "cannot be read (" + unreadable.getMessage() + ")",
              "see that it is a file you may read"));
    }
    return "";
  }

  private static String fileName(Path file) {
    return Optional.ofNullable(file.getFileName()).map(Path::toString).orElse("");
  }

  /** A file's name without its ending, and what it holds. */
  private record NamedText(String name, String text) {}
}
