package coatwright.config;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.film.Basis;
import coatwright.film.CureFacts;
import coatwright.film.CureMoment;
import coatwright.film.CureSigns;
import coatwright.film.Curing;
import coatwright.film.Finish;
import coatwright.film.Layer;
import coatwright.film.Milestone;
import coatwright.film.OxidativeCure;
import coatwright.film.SlowCure;
import coatwright.film.SpiritDrying;
import coatwright.film.TwoPartCure;
import coatwright.film.WaterborneCure;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** What every finish file that ships has to hold, and that the page about them tells the truth. */
class FinishContractTest {
  private static final Path FOLDER = Path.of("config/finishes");
  private static final Path PAGE = Path.of("docs/finishes.md");
  private static final Map<String, Finish> SHIPPED = SettingsFolder.finishes(FOLDER);

  /** Keys that hold words, not figures. */
  private static final Set<String> WORDS =
      Set.of("title", "layer", "family", "cure", "thresholds", "basis", "cautions");

  @TempDir Path folder;

  static Stream<Finish> all() {
    return SHIPPED.values().stream();
  }

  static Stream<Finish> curing() {
    return all().filter(finish -> finish.drying() instanceof Curing);
  }

  static Stream<Finish> spirit() {
    return all().filter(finish -> finish.drying() instanceof SpiritDrying);
  }

  private static Map<?, ?> file(Finish finish) throws IOException {
    String text = Files.readString(FOLDER.resolve(finish.name() + ".yaml"));
    return (Map<?, ?>) new Load(LoadSettings.builder().build()).loadFromString(text);
  }

  private static Set<String> keys(Object section) {
    Set<String> keys = new TreeSet<>();
    ((Map<?, ?>) section).keySet().forEach(key -> keys.add(String.valueOf(key)));
    return keys;
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("curing")
  void everyFigureHasItsBasisAndEveryBasisItsFigure(Finish finish) throws IOException {
    Map<?, ?> file = file(finish);
    Set<String> figures = keys(file);
    figures.removeAll(WORDS);
    figures.addAll(keys(file.get("cure")));
    figures.addAll(keys(file.get("thresholds")));
    assertThat(keys(file.get("basis"))).isEqualTo(figures);
    assertThat(finish.basis()).hasSize(figures.size());
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("curing")
  void everyFileSetsAllMilestonesAndSaysWhetherItsWindowCloses(Finish finish) throws IOException {
    Set<String> wanted = new TreeSet<>(Curing.keys().values());
    wanted.add("recoat-until");
    assertThat(keys(file(finish).get("thresholds"))).isEqualTo(wanted);
    Curing drying = (Curing) finish.drying();
    assertThat(drying.milestones()).isEqualTo(Curing.keys().keySet());
    assertThat(drying.hasLateEnd()).isEqualTo(finish.layer() != Layer.DRY_OIL);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("curing")
  void theReferenceAirIsUsualAndTheColdIsSlow(Finish finish) {
    Curing drying = (Curing) finish.drying();
    CureFacts facts = drying.facts();
    double um = finish.wetFilmUmByMethod().getOrDefault("brush", 100.0);
    CureMoment usual =
        CureMoment.of(facts.referenceTempC(), facts.referenceRhPct(), facts.referenceTempC(), um);
    assertThat(CureSigns.at(drying, usual).slowCure()).isEmpty();
    double coldC = facts.coldBelowC() - 1;
    List<SlowCure> cold = CureSigns.at(drying, CureMoment.of(coldC, 50, coldC, um)).slowCure();
    assertThat(cold).hasAtLeastOneElementOfType(SlowCure.Cold.class);
    assertThat(facts.needsAirExchange()).isEqualTo(drying instanceof OxidativeCure);
  }

  /** Wiped off after a quarter of an hour, weeping pores every half: common practice, no source. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("curing")
  void oilAloneIsWipedOffAndBleeds(Finish finish) {
    Curing drying = (Curing) finish.drying();
    CureFacts facts = drying.facts();
    boolean oil = finish.layer() == Layer.DRY_OIL;
    assertThat(facts.wipeOffAfterMin().isPresent()).isEqualTo(oil);
    assertThat(facts.bleedEveryMin().isPresent()).isEqualTo(oil);
    if (oil) {
      assertThat(facts.wipeOffAfterMin().orElseThrow()).isBetween(10.0, 30.0);
      assertThat(facts.bleedEveryMin().orElseThrow()).isBetween(15.0, 120.0);
      assertThat(finish.wetFilmUmByMethod().get("wipe")).isLessThan(20.0);
      CureSigns signs = CureSigns.at(drying, CureMoment.of(20, 50, 20, 10));
      assertThat(signs.wipeOffAfterMin()).isEqualTo(facts.wipeOffAfterMin());
      assertThat(signs.bleedEveryMin()).isEqualTo(facts.bleedEveryMin());
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("all")
  void everyFinishSaysWhatMayLieUnderAndOverIt(Finish finish) {
    assertThat(finish.mayGoOver()).contains(Layer.BARE_WOOD).doesNotHaveDuplicates();
    assertThat(finish.mayGoUnder()).contains(finish.layer()).doesNotHaveDuplicates();
    assertThat(finish.mayGoUnder()).doesNotContain(Layer.BARE_WOOD, Layer.DRY_STAIN);
    assertThat(finish.buildLimitUm()).isBetween(20.0, 300.0);
    assertThat(finish.testDueMonths()).isBetween(1, 24);
    assertThat(finish.cautions()).anyMatch(caution -> caution.contains("safety data sheet"));
    assertThat(String.join(" ", finish.cautions())).doesNotContainIgnoringCase(" safe ");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("spirit")
  void shellacHoldsWaxOrIsDewaxedAndItsFileAgrees(Finish finish) {
    boolean waxy = finish.layer() == Layer.WAXY_SHELLAC;
    assertThat(finish.title().contains("with its wax")).isEqualTo(waxy);
    assertThat(finish.waxNote()).startsWith(waxy ? "Holds its wax" : "Dewaxed");
    assertThat(finish.mayGoUnder().contains(Layer.OIL_VARNISH)).isEqualTo(!waxy);
    assertThat(finish.recoatUntilMin()).isEmpty();
    assertThat(finish.referenceTempC()).isEqualTo(20);
    assertThat(finish.basisOf(Milestone.RUB_OUT)).isEqualTo(Basis.CALIBRATED);
    assertThat(finish.basis())
        .anyMatch(line -> line.startsWith("Reference air"))
        .anyMatch(line -> line.startsWith("Usual cut"))
        .anyMatch(line -> line.startsWith("Wet films"))
        .anyMatch(line -> line.startsWith("Temperature limits"))
        .anyMatch(line -> line.startsWith("Months until"))
        .anyMatch(line -> line.startsWith("Build limit"))
        .anyMatch(line -> line.startsWith("Drying"));
  }

  @Test
  void everyFamilyShips() {
    assertThat(SHIPPED.values())
        .extracting(finish -> (Object) finish.drying().getClass())
        .contains(SpiritDrying.class, OxidativeCure.class, WaterborneCure.class, TwoPartCure.class);
  }

  @Test
  void thePageAboutFinishesNamesEveryKeyThatShips() throws IOException {
    String page = Files.readString(PAGE);
    for (Finish finish : SHIPPED.values()) {
      Map<?, ?> file = file(finish);
      Set<String> keys = keys(file);
      if (file.get("cure") instanceof Map<?, ?> cure) {
        keys.addAll(keys(cure));
        keys.addAll(keys(file.get("thresholds")));
      }
      for (String key : keys) {
        assertThat(page).as("%s of %s", key, finish.name()).contains("`" + key + "`");
      }
    }
  }

  @Test
  void thePagesTableOfLayersIsThatOfTheFiles() throws IOException {
    List<String> lines = Files.readAllLines(PAGE);
    for (Finish finish : SHIPPED.values()) {
      assertThat(lines)
          .as(finish.name())
          .contains(
              "| `%s` | %s | %s | %s |"
                  .formatted(
                      finish.name(),
                      finish.layer(),
                      joined(finish.mayGoOver()),
                      joined(finish.mayGoUnder())));
    }
  }

  private static String joined(List<Layer> layers) {
    return String.join(", ", layers.stream().map(Layer::toString).toList());
  }

  /** The page's own products, read as they are printed there. */
  @Test
  void thePagesInventedProductsAreRead() throws IOException {
    Matcher block = Pattern.compile("(?s)```yaml\n(title:.*?)```").matcher(Files.readString(PAGE));
    int count = 0;
    while (block.find()) {
      count++;
      Files.writeString(folder.resolve("product-" + count + ".yaml"), block.group(1));
    }
    Map<String, Finish> read = SettingsFolder.finishes(folder);
    assertThat(count).isEqualTo(2);
    assertThat(read).hasSize(2);
    for (Finish product : read.values()) {
      assertThat(product.basisOf(Milestone.DRY_TO_RECOAT)).isEqualTo(Basis.DATA_SHEET);
      assertThat(product.basisOf(Milestone.WRAP).estimate()).isTrue();
    }
  }
}
