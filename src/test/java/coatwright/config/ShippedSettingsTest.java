package coatwright.config;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.config.Settings.Shop;
import coatwright.config.Settings.Store;
import coatwright.config.Settings.Web;
import coatwright.film.Finish;
import coatwright.film.SpiritDrying;
import coatwright.sensors.SourceMapping;
import coatwright.store.influx.MirrorSettings;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What ships in the config folder is what the program takes for granted, and all of it reads. */
class ShippedSettingsTest {
  private static final Path CONFIG = Path.of("config");

  @TempDir Path folder;

  @Test
  void theCommentedFileIsReadAsItStands() {
    Settings settings = SettingsFolder.read(CONFIG.resolve("coatwright.yaml"));

    assertThat(settings.shop()).isEqualTo(Shop.DEFAULT);
    assertThat(settings.web()).isEqualTo(Web.DEFAULT);
    assertThat(settings.store()).isEqualTo(Store.DEFAULT);
    assertThat(settings.brokers()).isEmpty();
    assertThat(settings.mirrors()).isEmpty();
    assertThat(settings.finishes())
        .containsOnlyKeys(
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
  }

  @Test
  void theCommentedKeysAreTheDefaultsOfTheRecords() throws IOException {
    Settings settings = SettingsFolder.read(uncommented());

    assertThat(settings.shop()).isEqualTo(Shop.DEFAULT);
    assertThat(settings.web()).isEqualTo(Web.DEFAULT);
    assertThat(settings.store()).isEqualTo(Store.DEFAULT);
    assertThat(settings.rooms().get(0).volumeM3()).isEmpty();
    assertThat(settings.brokers()).containsOnlyKeys("house");
    assertThat(settings.brokers().get("house").user()).isEmpty();
    assertThat(settings.brokers().get("house").clientId()).isEmpty();
    assertThat(settings.mirrors())
        .containsExactly(MirrorSettings.usual("house", "http://127.0.0.1:8086"));
  }

  @Test
  void everyExampleOfASensorIsReadOnceItsBrokerIsThere() throws IOException {
    Files.createDirectories(folder.resolve("sources"));
    try (Stream<Path> examples = Files.list(CONFIG.resolve("sources/examples"))) {
      for (Path example : examples.toList()) {
        Files.copy(example, folder.resolve("sources").resolve(example.getFileName()));
      }
    }

    Settings settings = SettingsFolder.read(uncommented());

    assertThat(settings.sources())
        .extracting(SourceMapping::source)
        .containsExactly("bench-board", "rack-probe", "wall");
  }

  @Test
  void theFinishesInTheProgramAreThoseInTheFolder() {
    Map<String, Finish> inFolder = SettingsFolder.finishes(CONFIG.resolve("finishes"));
    Map<String, Finish> inProgram = SettingsFolder.finishes(folder.resolve("nowhere"));

    assertThat(inProgram).isEqualTo(inFolder);
  }

  @Test
  void theUsualCutOfThePaleShellacIsOneAndAHalfPound() {
    Finish pale = SettingsFolder.finishes(CONFIG.resolve("finishes")).get("shellac-pale");

    assertThat(pale.drying())
        .isInstanceOfSatisfying(
            SpiritDrying.class,
            spirit -> assertThat(spirit.usualCutGPerL()).isBetween(179.7, 179.8));
    assertThat(pale.wetFilmUmByMethod()).containsEntry("brush", 75.0);
    assertThat(pale.recoatUntilMin()).isEmpty();
    assertThat(pale.testDueMonths()).isEqualTo(6);
  }

  /** The shipped file with every "# key: value" taken at its word. */
  private Path uncommented() throws IOException {
    String text =
        Files.readString(CONFIG.resolve("coatwright.yaml"))
            .lines()
            .map(line -> line.replaceFirst("^( *)# ( *[a-z-]+:( [^ ]+)?)$", "$1$2"))
            .map(line -> line.replaceFirst("^#( {3,}[a-z-]+: .*)$", " $1"))
            .collect(Collectors.joining("\n"));
    Path file = folder.resolve("coatwright.yaml");
    Files.writeString(file, text);
    return file;
  }
}
