package coatwright.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.withinPercentage;

import coatwright.film.AirCourse;
import coatwright.film.Basis;
import coatwright.film.CureCoat;
import coatwright.film.CureEnsemble;
import coatwright.film.CureFacts;
import coatwright.film.CureJob;
import coatwright.film.Curing;
import coatwright.film.Finish;
import coatwright.film.Layer;
import coatwright.film.LayerStack;
import coatwright.film.Milestone;
import coatwright.film.Spreads;
import coatwright.film.TwoPartCure;
import coatwright.film.WaterborneCure;
import coatwright.quantity.Quantities;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Finish files of every family: those that ship, a product from its data sheet, and faults. */
class FinishFilesTest {
  private static final Map<String, Finish> SHIPPED =
      SettingsFolder.finishes(Path.of("config/finishes"));

  private static final String REST =
      """
      title: A product
      wet-film:
        brush: 100um
      build-limit: 150um
      """;

  @TempDir Path folder;

  private Finish read(String text) throws IOException {
    Files.writeString(folder.resolve("product.yaml"), text);
    return SettingsFolder.finishes(folder).get("product");
  }

  private String refusalOf(String text) throws IOException {
    Files.writeString(folder.resolve("product.yaml"), text);
    return String.valueOf(
        catchThrowableOfType(RefusedSettings.class, () -> SettingsFolder.finishes(folder))
            .getMessage());
  }

  private static Finish shipped(String name) {
    return java.util.Objects.requireNonNull(SHIPPED.get(name), name);
  }

  /** Hours in steady air, the middle of the ensemble. */
  private static double hours(Finish finish, double airC, double wetUm, Milestone m) {
    CureJob job =
        CureJob.steady(
            (Curing) finish.drying(),
            CureCoat.unthinned(0, wetUm),
            AirCourse.steady(airC, 0.5, 0.1),
            Spreads.told(0, 0));
    return CureEnsemble.predict(job).milestone(m).p50().orElseThrow() / 3600;
  }

  /**
   * Intervals finishers name (common practice, no source): urethane varnish at 70 °F and 50 %,
   * waterborne, tung oil. Two per cent at the edges for the ensemble's own middle.
   */
  @ParameterizedTest(name = "{0} {1}: {4} to {5} h at {2} °C")
  @CsvSource({
    "varnish-urethane, DRY_TO_TOUCH, 21.1, 80, 4, 6",
    "varnish-urethane, DRY_TO_RECOAT, 21.1, 80, 6, 8",
    "varnish-urethane, FULL_HARDNESS, 21.1, 80, 684, 756",
    "waterborne-acrylic, DRY_TO_TOUCH, 20, 100, 0.95, 2",
    "waterborne-acrylic, DRY_TO_RECOAT, 20, 100, 2, 4",
    "waterborne-urethane, FULL_HARDNESS, 20, 100, 456, 504",
    "oil-tung, RUB_OUT, 20, 10, 240, 360",
    "oil-tung, FULL_HARDNESS, 20, 10, 660, 780",
    "oil-linseed, DRY_TO_TOUCH, 20, 10, 6, 72",
    "two-part-acid, RUB_OUT, 25, 100, 72, 84"
  })
  void shippedFinishesKeepToTheIntervalsFinishersName(
      String name, Milestone m, double airC, double wetUm, double fromH, double toH) {
    assertThat(hours(shipped(name), airC, wetUm, m)).isBetween(fromH, toH);
  }

  @Test
  void everyShippedFigureOfACuringFinishSaysWhereItIsFrom() throws IOException {
    for (Finish finish : SHIPPED.values()) {
      if (finish.drying() instanceof Curing curing) {
        CureFacts facts = curing.facts();
        assertThat(facts.basisByKey())
            .as(finish.name())
            .containsKeys("solids", "reference", "wet-film", "energy", "cold-below", "slow-below");
        assertThat(facts.basisByKey())
            .as(finish.name())
            .containsKeys(Curing.keys().values().toArray(new String[0]));
        assertThat(facts.referenceTempC()).isEqualTo(finish.referenceTempC());
        assertThat(finish.recoatUntilMin().isPresent())
            .as(finish.name())
            .isEqualTo(curing.hasLateEnd());
      }
      assertThat(finish.cautions()).as(finish.name()).isNotEmpty();
    }
    assertThat(shipped("two-part-urethane").basisOf(Milestone.RUB_OUT).estimate()).isTrue();
    assertThat(shipped("varnish-alkyd").basisOf(Milestone.RUB_OUT)).isEqualTo(Basis.CALIBRATED);
    assertThat(shipped("shellac-pale").basisOf(Milestone.WRAP)).isEqualTo(Basis.ASSUMED);
  }

  @Test
  void cautionsFollowTheFamily() {
    for (String oil : List.of("varnish-alkyd", "varnish-urethane", "oil-linseed", "oil-tung")) {
      assertThat(shipped(oil).cautions()).anyMatch(c -> c.contains("three days"));
    }
    assertThat(shipped("two-part-urethane").cautions()).anyMatch(c -> c.contains("isocyanates"));
    assertThat(shipped("two-part-acid").cautions()).anyMatch(c -> c.contains("formaldehyde"));
  }

  @Test
  void aProductIsReadFromItsDataSheet() throws IOException {
    Finish finish =
        read(
            REST
                + """
                family: two-part
                data-sheet:
                  at: {temperature: 23C, humidity: 50%, wet-film: 100um}
                  touch: 45min
                  recoat: 3h
                  recoat-until: 24h
                  sand: 12h
                  pot-life: 4h
                """);
    assertThat(hours(finish, 23, 100, Milestone.DRY_TO_RECOAT)).isBetween(2.9, 3.1);
    assertThat(hours(finish, 23, 100, Milestone.DRY_HARD)).isBetween(11.6, 12.4);
    assertThat(finish.basisOf(Milestone.DRY_HARD)).isEqualTo(Basis.DATA_SHEET);
    assertThat(finish.basisOf("pot-life")).isEqualTo(Basis.DATA_SHEET);
    assertThat(finish.basisOf(Milestone.RUB_OUT)).isEqualTo(Basis.ASSUMED);
    assertThat(((TwoPartCure) finish.drying()).potLifeH(23).orElseThrow()).isBetween(3.99, 4.01);
    assertThat(finish.layer()).isEqualTo(Layer.TWO_PART);
  }

  @Test
  void aDataSheetMaySetTheFilmFormingTemperature() throws IOException {
    Finish finish =
        read(
            REST
                + """
                family: waterborne
                data-sheet:
                  at: {temperature: 23C, humidity: 50%, wet-film: 100um}
                  recoat: 2h
                  mfft: 12C
                """);
    assertThat(((WaterborneCure) finish.drying()).lowestFilmC()).isEqualTo(12);
    assertThat(hours(finish, 23, 100, Milestone.DRY_TO_RECOAT)).isBetween(1.95, 2.05);
  }

  /** The same sheet in the units of another country, at air far from the reference. */
  @ParameterizedTest(name = "{0}: touch {1}, recoat {2}")
  @CsvSource({
    "oxidative, 4h, 10h",
    "oxidative, 90min, 5h30min",
    "waterborne, 30min, 2h",
    "two-part, 1h, 6h"
  })
  void statedTimesAreGivenBackInTheStatedAir(String family, String touch, String recoat)
      throws IOException {
    Finish finish =
        read(
            REST
                + """
                family: %s
                data-sheet:
                  at: {temperature: 77F, humidity: 40%%, wet-film: 4mil}
                  touch: %s
                  recoat: %s
                """
                    .formatted(family, touch, recoat));
    CureJob job =
        CureJob.steady(
            (Curing) finish.drying(),
            CureCoat.unthinned(0, 101.6),
            AirCourse.steady(25, 0.4, 0.1),
            Spreads.told(0, 0));
    var told = CureEnsemble.predict(job);
    assertThat(told.milestone(Milestone.DRY_TO_TOUCH).p50().orElseThrow() / 60)
        .isCloseTo(minutes(touch), withinPercentage(3.0));
    assertThat(told.milestone(Milestone.DRY_TO_RECOAT).p50().orElseThrow() / 60)
        .isCloseTo(minutes(recoat), withinPercentage(3.0));
  }

  private static double minutes(String time) {
    return Quantities.duration("time", time).toSeconds() / 60.0;
  }

  @Test
  void faultsOfSeveralFilesAreToldTogether() throws IOException {
    Files.writeString(folder.resolve("first.yaml"), "family: oxidative\nbuild-limit: 100um\n");
    Files.writeString(folder.resolve("second.yaml"), REST + "family: varnish\n");
    String told = refusalOf(REST + "family: two-part\nthresholds:\n  touch: 1.2\n");
    assertThat(told)
        .contains("finishes/first.yaml, ")
        .contains("title: missing")
        .contains("wet-film.brush: missing")
        .contains("finishes/second.yaml, ")
        .contains("line 5: family \"varnish\": it is one of evaporative, oxidative, waterborne")
        .contains("finishes/product.yaml, ")
        .contains("line 7: thresholds.touch \"1.2\": a number from 0.001 to 0.995 is expected");
  }

  @Test
  void aSheetWithoutATimeAndKeysOfOtherFamiliesAreRefused() throws IOException {
    assertThat(
            refusalOf(
                REST
                    + """
                    family: oxidative
                    data-sheet:
                      at: {temperature: 23C, humidity: 50%, wet-film: 100um}
                    cure:
                      mfft: 8C
                    """))
        .contains("data-sheet: it states no time to any milestone; write at least one")
        .contains("line 9: cure.mfft: no such key");
    assertThat(refusalOf(REST + "family: two-part\nwipe-off-after: 15min\n"))
        .contains("line 6: wipe-off-after: no such key");
    assertThat(refusalOf(REST + "family: oxidative\ncure:\n  energy: 300kJ/mol\n"))
        .contains("activation energy");
  }

  @Test
  void tellsEveryFaultOfAFinishWithItsLine() throws IOException {
    String told =
        refusalOf(
            """
            title: A product
            family: oxidative
            layer: vanish
            solids: half
            usual-cut: 2lb
            wet-film:
              brush: 80um
            build-limit: 150um
            cure:
              energy: 60
              thickness-exponant: 0.7
            thresholds:
              touch: 6
              recoat: 24h
            may-go-over: [bare wood, chalk paint]
            basis:
              touch: guessed
              tuch: "assumed: by eye"
            """);
    assertThat(told)
        .startsWith("finishes/product.yaml, ")
        .containsSubsequence("line 3:", "line 4:", "line 5:", "line 10:", "line 17:", "line 18:")
        .contains("line 3: layer \"vanish\": it is one of bare wood, dry stain")
        .contains("line 4: solids \"half\"")
        .contains("line 5: usual-cut: no such key")
        .contains(
            "line 10: cure.energy \"60\": an activation energy needs its unit; write it like"
                + " 60kJ/mol")
        .contains("line 11: cure.thickness-exponant: no such key; did you mean thickness-exponent?")
        .contains("line 13: thresholds.touch \"6\"")
        .contains("line 15: may-go-over: \"chalk paint\" is none of bare wood, dry stain, dry oil")
        .contains("line 17: basis.touch \"guessed\": it begins with one of published, calibrated")
        .contains(
            "line 18: basis.tuch \"assumed: by eye\": no such key in this finish; did you mean"
                + " touch?");
  }

  @Test
  void tellsEveryFaultOfADataSheet() throws IOException {
    String told =
        refusalOf(
            REST
                + """
                family: waterborne
                data-sheet:
                  at: {temperature: 23, humidity: 50%}
                  recoat: 2
                  pot-life: 4h
                """);
    assertThat(told)
        .contains("line 7: data-sheet.at.temperature \"23\"")
        .contains("line 7: data-sheet.at.wet-film: missing; write it like 100um")
        .contains("line 8: data-sheet.recoat \"2\"")
        .contains("line 9: data-sheet.pot-life: no such key");
  }

  @Test
  void thresholdsAndStatedTimesThatFallAreRefused() throws IOException {
    assertThat(refusalOf(REST + "family: oxidative\nthresholds:\n  touch: 30h\n  recoat: 24h\n"))
        .contains(
            "threshold of dry to recoat is 24.0 h, less than that of the milestone before it");
    assertThat(
            refusalOf(
                REST
                    + """
                    family: oxidative
                    data-sheet:
                      at: {temperature: 23C, humidity: 50%, wet-film: 100um}
                      touch: 6h
                      recoat: 4h
                    """))
        .contains("line 7: data-sheet: the stated time to dry to recoat, 4.0 h, is shorter");
  }

  @ParameterizedTest(name = "{1} over {0}: {2}")
  @CsvSource({
    "shellac-pale, varnish-urethane, none",
    "shellac-pale, waterborne-acrylic, none",
    "shellac-amber, shellac-pale, none",
    "shellac-amber, varnish-urethane, WAX_BENEATH",
    "shellac-garnet, waterborne-urethane, WAX_BENEATH",
    "shellac-garnet-dewaxed, varnish-alkyd, none",
    "oil-linseed, varnish-alkyd, none",
    "oil-linseed, waterborne-acrylic, NOT_OVER",
    "varnish-urethane, shellac-pale, NOT_OVER",
    "varnish-alkyd, varnish-urethane, none",
    "two-part-urethane, waterborne-acrylic, NOT_OVER",
    "shellac-pale, two-part-acid, NOT_OVER"
  })
  void theLayerStackFollowsBothFiles(String below, String above, String expected) {
    String found =
        LayerStack.check(shipped(below), shipped(above)).map(w -> w.reason().name()).orElse("none");
    assertThat(found).isEqualTo(expected);
  }

  @Test
  void theWarningSaysWhatToDo() {
    assertThat(
            LayerStack.check(shipped("shellac-amber"), shipped("varnish-alkyd"))
                .orElseThrow()
                .sentence())
        .isEqualTo(
            "Amber shellac with its wax holds wax: Alkyd oil varnish may not hold on it. Put a coat"
                + " of dewaxed shellac between, or stay with shellac.");
    assertThat(LayerStack.mayGoOver(shipped("oil-tung"), Layer.BARE_WOOD)).isTrue();
  }
}
