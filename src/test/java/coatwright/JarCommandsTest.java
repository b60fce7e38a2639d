package coatwright;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.cli.CommandLineDoor;
import coatwright.json.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The arithmetic of the jar at the command line: it needs no daemon. */
class JarCommandsTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-20T15:00:00Z"), ZoneOffset.UTC);

  /** What a command answered. */
  private record Ran(int exitCode, String out, String err) {
    JsonNode json() throws IOException {
      return Json.mapper().readTree(out);
    }

    double number(String field) throws IOException {
      return json().path(field).asDouble(Double.NaN);
    }
  }

  private static Ran jar(String words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code =
        CommandLineDoor.run(
            ("jar " + words).split(" "),
            new House(CLOCK),
            CLOCK,
            new PrintWriter(out),
            new PrintWriter(err));
    return new Ran(code, out.toString(), err.toString());
  }

  /**
   * A printed workshop mixing chart (8 oz to the quart of spirit is 2 lb) and ideal mixing at a
   * resin density of 1.14 by a separate program: 22.802 % by weight, 17.371 % by volume.
   */
  @Test
  void mixTellsFlakesSpiritAndSolids() throws IOException {
    Ran ran = jar("mix --spirit 1qt --cut 2lb --json");

    assertThat(ran.exitCode()).isZero();
    assertThat(ran.number("flakesG")).isCloseTo(8 * 28.349523125, within(1e-6));
    assertThat(ran.number("solidsMassPct")).isCloseTo(22.802, within(0.001));
    assertThat(ran.number("solidsVolumePct")).isCloseTo(17.371, within(0.001));
    assertThat(ran.number("volumeMl")).isCloseTo(1.2102 * 946.352946, within(0.05));
    assertThat(ran.number("cutLbPerUsGal")).isCloseTo(2, within(1e-9));
    assertThat(ran.json().fieldNames())
        .toIterable()
        .contains("cutGPerL", "spiritMl", "strengthVolPct")
        .doesNotContain("viscosityMPas");
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"--volume 1L --cut 2lb", "--volume 1L --cut 239.653g/L"})
  void aVolumeIsThatOfTheMixture(String words) throws IOException {
    Ran ran = jar("mix " + words + " --json");

    assertThat(ran.number("volumeMl")).isCloseTo(1000, within(1e-6));
    assertThat(ran.number("flakesG")).isCloseTo(198.02, within(0.01));
  }

  @Test
  void aFilmOverAnAreaIsMixedWithItsWaste() throws IOException {
    Ran ran = jar("mix --area 3m2 --dry-film 40um --coats 4 --waste 10% --cut 1.5lb --json");

    double onWoodMl = 0.9 * ran.number("volumeMl");
    assertThat(onWoodMl / 3 * ran.number("solidsVolumePct") / 100).isCloseTo(40, within(1e-6));
    assertThat(ran.number("wetFilmPerCoatUm")).isCloseTo(onWoodMl / 3 / 4, within(1e-6));
  }

  @Test
  void aFilmPastTheFinishsLimitIsMinded() {
    assertThat(jar("mix --area 3m2 --dry-film 120um --cut 1.5lb --units metric").out())
        .contains("Mind: 120 µm (4.7 mil) dry is more than shellac-pale's build limit of 100 µm");
  }

  /** The arithmetic by a separate program: 0.760 parts of spirit to one of a 3 lb cut. */
  @Test
  void thinTellsTheSpiritToAdd() throws IOException {
    Ran ran = jar("thin --have 500mL --from 3lb --to 1.5lb --json");

    assertThat(ran.number("addSpiritMl") / 500).isCloseTo(0.760, within(0.0006));
    assertThat(ran.number("cutLbPerUsGal")).isCloseTo(1.5, within(1e-9));
  }

  /** Principle of ISO 3251: the first weighing of the table gives 24.6420 %. */
  @Test
  void residueTellsTheCutAndWhatTheJarWasCalled() throws IOException {
    String weighed = "residue --dish 2.1034g --wet 3.109g --dry 2.3512g --called 3lb";

    assertThat(jar(weighed + " --json").number("solidsMassPct")).isCloseTo(24.642, within(1e-4));
    assertThat(jar(weighed + " --units us").out())
        .contains("the jar is called 3lb, which is 30.7 % solids by weight, and the sample has")
        .contains("24.6 %");
  }

  /** ISO 2431, 4 mm at 50 s is 64.5 mm²/s, the published equation. */
  @Test
  void cupTellsViscosityAndInMilliPascalSecondsOnceTheCutIsKnown() throws IOException {
    Ran ran = jar("cup --cup iso4 --time 50s --temp 23C --json");

    assertThat(ran.number("viscosityMm2PerS")).isCloseTo(64.5, within(1e-9));
    assertThat(ran.json().has("viscosityMPas")).isFalse();
    assertThat(jar("cup --cup iso4 --time 50s --temp 23C --cut 2lb --json").number("viscosityMPas"))
        .isCloseTo(64.5 * 0.8685, within(0.01));
    assertThat(jar("cup --cup iso4 --time 50s --temp 27C --units metric").out())
        .contains("the standard measures at 23.0 °C, and this ran at 27.0 °C");
  }

  /** OIML R 22: 94.1 % read in spirit of 27 °C is 92.5 % at 20 °C. */
  @Test
  void strengthIsCorrectedForTemperatureAndBlended() throws IOException {
    Ran ran = jar("strength --reading 94.1% --temp 27C --volume 1L --to 90% --json");

    assertThat(ran.number("strengthVolPct")).isBetween(92.0, 93.0);
    assertThat(ran.json().path("blend").path("blendStrengthVolPct").asDouble())
        .isCloseTo(90, within(1e-6));
    assertThat(ran.json().path("blend").path("shrinkageMl").asDouble()).isPositive();
  }

  @Test
  void moreWaterInTheSpiritIsCloserToClouding() throws IOException {
    JsonNode weak = jar("strength --reading 88% --temp 20C --air 20C,60% --json").json();
    JsonNode strong = jar("strength --reading 96% --temp 20C --air 20C,60% --json").json();

    assertThat(weak.path("jarWaterShareOfLimit").asDouble()).isGreaterThan(0.7);
    assertThat(strong.path("jarWaterShareOfLimit").asDouble()).isLessThan(0.35);
    assertThat(weak.path("clouding").path("clouding").path("waterPeakPct").asDouble())
        .isGreaterThan(strong.path("clouding").path("clouding").path("waterPeakPct").asDouble());
    assertThat(jar("strength --reading 88% --temp 20C").out()).contains("too weak for this cut");
  }

  @Test
  void aDoseIsToldInEveryWayAndDropsAreNotReckonedWith() throws IOException {
    Ran ran = jar("retard --volume 1L --dose 3% --solvent 2-butoxyethanol --cut 1.5lb --json");

    assertThat(ran.number("addMl")).isCloseTo(30, within(1e-9));
    assertThat(ran.json().path("reckonedWith").asBoolean()).isTrue();
    assertThat(ran.number("volumeMl")).isCloseTo(1000, within(1e-6));
    Ran drops = jar("retard --volume 1qt --dose 10drops/qt --json");
    assertThat(drops.json().path("reckonedWith").asBoolean(true)).isFalse();
    assertThat(drops.number("addLowMl")).isLessThan(drops.number("addHighMl"));
    assertThat(jar("retard --volume 1qt --dose 3%").out()).contains("it passes the skin");
  }

  @Test
  void coverageCountsTheBuildAgainstTheFinishsLimit() throws IOException {
    Ran ran = jar("coverage --cut 1.5lb --wet-film 75um --coats 6 --json");

    assertThat(ran.number("dryFilmUm")).isCloseTo(10.21, within(0.01));
    assertThat(ran.number("buildUm")).isCloseTo(61.3, within(0.1));
    assertThat(ran.number("buildLimitUm")).isEqualTo(100);
    assertThat(ran.number("coatsToLimit")).isEqualTo(9);
  }

  @Test
  void whatIsNoShellacLeavesItsSolidsByVolume() throws IOException {
    Ran file = jar("coverage --finish varnish-alkyd --wet-film 100um --json");
    Ran can = jar("coverage --finish varnish-alkyd --solids-volume 40% --wet-film 100um --json");
    Ran thinned =
        jar(
            "coverage --finish varnish-alkyd --solids-volume 40% --thinned 25% --wet-film 100um"
                + " --json");

    assertThat(file.number("dryFilmUm")).as("the file's 50 %").isCloseTo(50, within(1e-6));
    assertThat(can.number("dryFilmUm")).isCloseTo(40, within(1e-6));
    assertThat(thinned.number("dryFilmUm")).as("100/1.25").isCloseTo(32, within(1e-6));
    assertThat(can.number("coverageM2PerL")).as("1000 · 0.40 / 40").isCloseTo(10, within(1e-6));
    assertThat(jar("coverage --finish lacquer-nitrocellulose --wet-film 4mil").out())
        .contains("the finish file's, not your can's");
  }

  @Test
  void vapourCannotBeToldWithoutTheAirChangesAndIsNeverAPass() throws IOException {
    Ran unknown = jar("vapour --room 28m3 --spirit 300mL --json");

    assertThat(unknown.json().path("share").asText()).isEqualTo("can't tell");
    assertThat(unknown.json().has("lelSharePct")).isFalse();
    Ran known = jar("vapour --room 28m3 --spirit 300mL --air-changes 2/h --json");
    assertThat(known.number("lelSharePct")).isBetween(1.0, 13.5);
    assertThat(known.number("exposureSharePct")).isGreaterThan(known.number("lelSharePct"));
    assertThat(jar("vapour --room 28m3 --spirit 1mL --air-changes 2/h").out())
        .contains("no pass")
        .doesNotContain("safe ");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "mix --volume 1qt --cut 3lb --solids 5%     | a 3lb cut has 30.7 % solids | is a 0.36 lb",
        "mix --flakes 8oz --spirit 1gal --cut 2lb   | make a 0.50 lb              | a 2.00 lb",
        "mix --volume 1L --spirit 1L --cut 2lb      | more than one way           | --volume",
        "mix --cut 2lb                              | needs an amount             | --area",
        "mix --area 3m2 --cut 2lb                   | go together                 | --dry-film",
        "mix --volume 1L --cut 5%                   | cut \"5%\"                  | 240g/L",
        "thin --have 1L --from 1lb --to 2lb         | spirit only makes a cut     | more flakes",
        "residue --wet 1g --dry 2g                  | as much dry as it did wet   | check which",
        "residue --wet 10g --dry 9g                 | 90 % would have stayed      | --dish",
        "cup --cup iso4 --time 12s --temp 23C       | from 30 to 100 s            | 12.0 s",
        "cup --cup iso9 --time 40s --temp 23C       | no such cup                 | iso4",
        "strength --reading 90% --temp 20C --to 95% | only makes spirit weaker    | --with",
        "strength --reading 100% --temp 5C          | cannot read                 | Read it again",
        "mix --volume 1L --cut 2lb --finish x       | not a finish this shop knows | shellac-pale",
        "mix --volume 1L --cut 2lb --finish oil-tung | counts flakes in spirit     | tung oil",
        "coverage --cut 2lb --wet-film 3mil --finish varnish-alkyd | counts flakes |"
            + " --solids-volume",
        "coverage --solids-volume 48% --wet-film 3mil | follows from its cut | --cut",
        "coverage --finish varnish-alkyd --solids-volume 1% --wet-film 3mil | 2 to 100 % | 48%",
        "coverage --finish oil-tung --thinned 9900% --wet-film 3mil | a share here | 0 to 100",
        "retard --volume 1L --dose 3                | --dose \"3\"                | 10drops/qt",
        "coverage --cut 2lb                         | needs a film                | --wet-film",
        "vapour --room 28m3 --spirit 1L --solvent x | no published limits         | data sheet",
      })
  void badInputGetsASentenceNamingBothFacts(String words, String fact, String other) {
    Ran ran = jar(words);

    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err().lines()).hasSize(1);
    assertThat(ran.err()).contains(fact).contains(other);
  }

  @Test
  void spiritTooWeakToCarryTheCutIsMindedWhereItIsMixed() {
    for (String weak : new String[] {"30%", "80%"}) {
      assertThat(jar("mix --volume 1L --cut 2lb --strength " + weak).out())
          .contains("is too weak for this cut, whatever the weather");
    }
    assertThat(jar("mix --volume 1L --cut 2lb").out()).doesNotContain("too weak");
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {
        "mix --volume 1L --cut 2lb",
        "residue --wet 10g --dry 2g --step 0.1g",
        "cup --cup din4 --time 40s --temp 20C --cut 2lb",
        "strength --reading 95% --temp 20C --volume 1L --to 90%",
        "coverage --cut 2lb --wet-film 75um --area 2m2",
        "vapour --room 30m3 --mixture 1L --cut 2lb"
      })
  void aShopThatCountsInPoundsReadsNoMetricFigureAlone(String words) {
    String said = jar(words + " --units us").out();

    assertThat(said).doesNotContain("°C").doesNotContain(" K ");
    assertThat(said.replaceAll("\\([^)]*\\)", ""))
        .doesNotContain(" g/L")
        .doesNotContain(" m³ ")
        .doesNotContain(" µm");
  }

  @Test
  void oneCoatMakesAndSixCoatsMake() {
    assertThat(jar("coverage --cut 2lb --wet-film 75um").out()).contains("1 coat makes ");
    assertThat(jar("coverage --cut 2lb --wet-film 75um --coats 6").out()).contains("6 coats make ");
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"us", "metric", "imperial"})
  void everyAnswerIsPrintedInTheUnitsAskedFor(String units) {
    String[] all = {
      "mix --volume 1L --cut 2lb",
      "thin --have 1L --from 2lb --to 1lb",
      "residue --wet 10g --dry 2g",
      "cup --cup din4 --time 40s --temp 20C --cut 2lb",
      "strength --reading 95% --temp 20C --volume 1L --to 90%",
      "retard --volume 1L --dose 2%",
      "coverage --cut 2lb --wet-film 75um --area 2m2",
      "vapour --room 30m3 --mixture 1L --cut 2lb",
    };
    for (String words : all) {
      Ran ran = jar(words + " --units " + units);
      assertThat(ran.exitCode()).as(words + ran.err()).isZero();
      assertThat(ran.out()).as(words).contains("From: ").doesNotContainIgnoringCase("safe ");
    }
    assertThat(jar("mix --volume 1L --cut 2lb --units " + units).out())
        .contains(
            switch (units) {
              case "us" -> "33.8 fl oz (1.00 L)";
              case "metric" -> "1.00 L of a 240 g/L (2.00 lb)";
              default -> "35.2 fl oz imp (1.00 L)";
            });
  }
}
