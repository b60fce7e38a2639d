package coatwright;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import coatwright.cli.CommandLineDoor;
import coatwright.json.Json;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The worked examples of the reference tables as a person types them, in the units of their print;
 * each table names its source in its first line.
 */
class JarWorkedExamplesTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-20T15:00:00Z"), ZoneOffset.UTC);
  private static final Map<String, String> SPIRIT =
      Map.of("1 gallon", "1gal", "1/2 gallon", "0.5gal", "1 quart", "1qt", "1 pint", "1pt");
  private static final Map<String, String> CUPS =
      Map.of(
          "Zahn #2", "zahn2",
          "Ford #4", "ford4",
          "DIN 53211 4 mm", "din4",
          "ISO 2431 3 mm", "iso3");

  private static String said(String words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code =
        CommandLineDoor.run(
            ("jar " + words).split(" "),
            new House(CLOCK),
            CLOCK,
            new PrintWriter(out),
            new PrintWriter(err));
    assertThat(code).as(words + ": " + err).isZero();
    return out.toString();
  }

  private static JsonNode json(String words) throws IOException {
    return Json.mapper().readTree(said(words + " --json"));
  }

  static Stream<Row> chart() {
    return ReferenceTable.read("mix/mixing_chart_printed.csv").stream()
        .filter(row -> SPIRIT.containsKey(row.text("alcohol_volume")));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("chart")
  void theWorkshopChartReadsOffInOunces(Row row) throws IOException {
    String words =
        "mix --spirit %s --cut %slb"
            .formatted(SPIRIT.get(row.text("alcohol_volume")), row.text("cut_lb_per_gal"));
    double ounces = row.number("flakes_oz");

    assertThat(json(words).path("flakesG").asDouble() / 28.349523125)
        .isCloseTo(ounces, within(1e-9));
    String first = said(words + " --units us").split(" ", -1)[1];
    assertThat(Double.parseDouble(first)).isCloseTo(ounces, within(0.005));
  }

  static Stream<Row> cuts() {
    return ReferenceTable.read("mix/pound_cut.csv").stream()
        .filter(
            row ->
                row.text("alcohol").startsWith("95") && row.number("shellac_sg_assumed") == 1.14);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cuts")
  void aPoundCutHasTheSolidsOfTheTableInEitherUnit(Row row) throws IOException {
    String us = row.text("cut_lb_per_gal_alcohol") + "lb";
    String metric = row.text("flakes_g_per_L_alcohol") + "g/L";
    for (String cut : new String[] {us, metric}) {
      JsonNode mix = json("mix --volume 1L --cut " + cut);
      assertThat(mix.path("solidsMassPct").asDouble())
          .isCloseTo(row.number("nonvolatile_mass_pct"), within(0.002));
      assertThat(mix.path("solidsVolumePct").asDouble())
          .isCloseTo(row.number("volume_solids_pct_ideal"), within(0.002));
      assertThat(mix.path("flakesG").asDouble())
          .isCloseTo(row.number("flakes_g_per_L_mixture"), within(0.02));
    }
  }

  static Stream<Row> thinnings() {
    return ReferenceTable.read("mix/dilution.csv").stream();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("thinnings")
  void thinningAddsThePartsOfTheArithmetic(Row row) throws IOException {
    JsonNode thin =
        json(
            "thin --have 1qt --from %slb --to %slb"
                .formatted(row.text("existing_cut"), row.text("target_cut")));
    assertThat(thin.path("addSpiritMl").asDouble() / thin.path("haveMl").asDouble())
        .isCloseTo(row.number("parts_alcohol_computed_sg1.14"), within(0.0006));
  }

  static Stream<Row> weighings() {
    return ReferenceTable.read("mix/nonvolatile_weighing.csv").stream();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("weighings")
  void aDriedSampleGivesItsShare(Row row) throws IOException {
    String words =
        "residue --dish %sg --wet %sg --dry %sg"
            .formatted(row.text("m0_g"), row.text("m1_g"), row.text("m2_g"));
    assertThat(json(words).path("solidsMassPct").asDouble())
        .isCloseTo(row.number("nonvolatile_mass_pct"), within(1e-4));
  }

  static Stream<Row> cupTimes() {
    return ReferenceTable.read("mix/flow_cups_printed.csv").stream()
        .filter(row -> row.text("kind").equals("worked example"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cupTimes")
  void aCupGivesThePrintedViscosity(Row row) throws IOException {
    String cup = CUPS.getOrDefault(row.text("cup"), "");
    JsonNode told = json("cup --cup %s --time %ss --temp 73F".formatted(cup, row.text("t_s")));
    assertThat(told.path("viscosityMm2PerS").asDouble())
        .isCloseTo(row.number("nu_mm2_per_s"), withinPercentage(0.001));
  }
}
