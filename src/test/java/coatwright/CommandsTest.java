package coatwright;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.cli.CommandLineDoor;
import coatwright.climate.RawText;
import coatwright.json.Json;
import coatwright.store.SqliteStore;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The commands that need no daemon, and what the others say when there is none. */
class CommandsTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-20T15:00:00Z"), ZoneOffset.UTC);

  @TempDir Path folder;

  /** What a command answered. */
  private record Ran(int exitCode, String out, String err) {
    JsonNode json() throws IOException {
      return Json.mapper().readTree(out);
    }
  }

  private static Ran run(String... words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code =
        CommandLineDoor.run(
            words, new House(CLOCK), CLOCK, new PrintWriter(out), new PrintWriter(err));
    return new Ran(code, out.toString(), err.toString());
  }

  @Test
  void airTellsTheDewPointOfAShopInSpring() throws IOException {
    Ran ran = run("air", "--temp", "25C", "--rh", "50%", "--json");

    assertThat(ran.exitCode()).isZero();
    // ASHRAE 2017 by way of the house's own air: checked against tables in coatwright.air.
    assertThat(ran.json().path("dewPointC").asDouble()).isBetween(13.85, 13.87);
    assertThat(ran.json().fieldNames())
        .toIterable()
        .contains(
            "airTempC",
            "rhPct",
            "pressurePa",
            "wetBulbC",
            "vapourPressurePa",
            "humidityRatio",
            "absoluteHumidityGm3",
            "enthalpyKjKg",
            "densityKgm3",
            "woodMoisturePct")
        .doesNotContain("frostPointC");
  }

  @Test
  void airTellsAFrostPointWhereThereIsOne() throws IOException {
    assertThat(run("air", "--temp", "5C", "--rh", "40%", "--json").json().has("frostPointC"))
        .isTrue();
  }

  @Test
  void airIsToldInTheUnitsAskedFor() {
    assertThat(run("air", "--temp", "77F", "--rh", "50%", "--units", "us").out())
        .contains("77.0 °F")
        .contains("57.0 °F");
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"25", "25 %", "warm", "-400C"})
  void aTemperatureThatIsNoneIsRefusedInOneLine(String typed) {
    Ran ran = run("air", "--temp", typed, "--rh", "50%");

    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err().lines()).hasSize(1);
    assertThat(ran.err()).contains("\"" + typed + "\"");
  }

  @Test
  void airOutOfTheFormulasRangeSaysTheLimit() {
    Ran ran = run("air", "--temp", "90C", "--rh", "50%");

    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.err()).contains("90").contains("60");
  }

  /**
   * Wood Handbook: Table 4-2 has 8.4 and 11.9 % moisture at 70 °F, 45 and 65 %, Table 13-5 0.00248
   * for flat-sawn cherry; so 300 mm move by 300 × 0.00248 × 3.5 = 2.6 mm.
   */
  @Test
  void woodTellsHowFarAPanelMovesAndWhatThatAsksOfTheFilm() throws IOException {
    String asked =
        "wood --species cherry --width 300mm --from 45% --to 65% --temp 70F --thickness 18mm";
    Ran ran = run((asked + " --json").split(" "));

    assertThat(ran.exitCode()).isZero();
    JsonNode movement = ran.json().path("movement");
    assertThat(movement.path("coefficientPerPct").asDouble()).isEqualTo(0.00248);
    assertThat(movement.path("movementMm").asDouble()).isBetween(2.5, 2.7);
    assertThat(movement.path("film").path("level").asText()).isEqualTo("past yield");
    assertThat(ran.json().path("equalising").path("bothFacesQuickestDays").asDouble())
        .isBetween(7.0, 9.0);
    assertThat(ran.json().has("carriedIn")).isFalse();
    assertThat(run((asked + " --units us").split(" ")).out())
        .startsWith("Black cherry (Prunus serotina), flat-sawn, 0.71 in thick")
        .contains("swells 0.10", "across 11.81 in", "past yield", "70.0 °F")
        .doesNotContain("safe");
  }

  @Test
  void aFilmOverItsBuildIsCountedOneLevelWorse() {
    String asked = "wood --species white-oak --cut quarter --moisture 8%,11% --build ";

    assertThat(run((asked + "90um").split(" ")).out()).contains("stretched by 0.54 %: past yield");
    assertThat(run((asked + "120um").split(" ")).out())
        .contains("stretched by 0.54 %: past break", "one level worse");
  }

  @Test
  void woodTellsWhenABoardCarriedInStandsAboveTheDewPoint() throws IOException {
    String asked = "wood --species ash --thickness 25mm --carried-from 8C --into 20C,60%";
    JsonNode carried = run((asked + " --json").split(" ")).json().path("carriedIn");

    assertThat(carried.path("specificGravity").asDouble()).isEqualTo(0.60);
    assertThat(carried.path("marginK").asDouble()).isBetween(-4.1, -3.9);
    double standing = carried.path("bothFaces").path("aboveMarginMin").asDouble();
    assertThat(carried.path("oneFace").path("aboveMarginMin").asDouble())
        .isGreaterThan(1.5 * standing);
    assertThat(run(asked.split(" ")).out())
        .contains("4.0 K below the dew point: water settles on it, lay no coat")
        .contains("lying on one");
    assertThat(run((asked + " --margin 15K").split(" ")).out())
        .contains("never 15.0 K above the dew point in this air");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "--species teak --from 45% --to 65%              | no sourced figure for the movement of"
            + " teak",
        "--species mahogany --from 45% --to 65%          | enter your own coefficient",
        "--species oak --from 45% --to 65%               | write white oak or red oak",
        "--species bubinga --from 45% --to 65%           | black cherry, black walnut",
        "--species cherry --from 45%                     | --to: is missing",
        "--species cherry --from 10% --to 65%            | known from 6 to 14 %",
        "--species cherry                                | nothing is asked about it",
        "--from 45% --to 65%                             | --species cherry",
        "--species cherry --cut rift --from 45% --to 65% | a board is flat or quarter",
        "--species cherry --moisture 8%                  | write it like 8%,11%",
        "--species cherry --carried-from 8C              | --thickness 18mm",
        "--species cherry --from 45 --to 65%             | needs its unit",
      })
  void woodSaysWhatItLacks(String asked, String because) {
    Ran ran = run(("wood " + asked).split(" "));

    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.err().lines()).hasSize(1);
    assertThat(ran.err()).contains(because);
  }

  @Test
  void woodTakesAFigureOfOnesOwnWhereNoneIsSourced() throws IOException {
    Ran ran =
        run(
            "wood --species teak --coefficient 0.2% --moisture 8%,11% --width 500mm --json"
                .split(" "));

    assertThat(ran.json().path("movement").path("movementMm").asDouble())
        .isCloseTo(500 * 0.002 * 3, within(1e-9));
  }

  /** The five cases the outlook's rules were set by. */
  @ParameterizedTest(name = "{0}: {1}, clouding {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "--air 28C,80% --cut 1.5lb              | hold off  | likely",
        "--air 20C,70% --cut 1.5lb              | take care | possible",
        "--air 20C,60% --cut 1lb                | take care | possible",
        "--air 20C,50% --cut 1.5lb              | brush     | none expected",
        "--air 20C,50% --cut 1.5lb --wood 10C   | hold off  | likely",
      })
  void outlookOfADescribedCoatNeedsNoDaemon(String coat, String summary, String clouding)
      throws IOException {
    Ran ran = run(("outlook --finish shellac-pale --json " + coat).split(" "));

    assertThat(ran.exitCode()).isZero();
    assertThat(ran.json().path("summary").asText()).isEqualTo(summary);
    assertThat(ran.json().path("clouding").path("level").asText()).isEqualTo(clouding);
  }

  @Test
  void holdOffIsAnExitCodeWhereItIsAskedFor() {
    String[] words = "outlook --finish shellac-pale --air 28C,80% --exit-code".split(" ");

    assertThat(run(words).exitCode()).isEqualTo(1);
    assertThat(run(words).out()).startsWith("Hold off: ");
  }

  @Test
  void outlookNeedsAFinishAndAnAirOrAPart() {
    assertThat(run("outlook", "--finish", "shellac-pale").err()).contains("--air");
    assertThat(run("outlook", "--finish", "nitro", "--air", "20C,50%").err())
        .contains("shellac-pale");
    assertThat(run("outlook", "--part", "a/b", "--air", "20C,50%").err())
        .contains("leave one of them out");
  }

  @Test
  void theComingHoursAreThoseOfAPartAJarOrAFinish() {
    assertThat(run("outlook", "--finish", "shellac-pale", "--air", "20C,50%", "--windows").err())
        .contains("leave --air out");
    assertThat(run("outlook", "--finish", "shellac-pale", "--hours", "80").err())
        .contains("give 1 to 72");
  }

  @Test
  void recordedPayloadsAreReadByNamedMappings() throws IOException {
    Path mappings = folder.resolve("mappings.json");
    Files.writeString(
        mappings,
        """
        {"plain": {"payload": "number",
                   "readings": [{"quantity": "air-temperature", "unit": "Cel"}]}}
        """);
    Path heard = folder.resolve("heard.jsonl");
    Files.writeString(
        heard,
        """
        {"id": "a", "profile": "plain", "topic": "t", "raw": "19.84"}
        {"id": "b", "profile": "plain", "topic": "t", "raw": "0x1.5p4"}

        not JSON at all
        """);

    Ran ran =
        run("listen", "--mappings", mappings.toString(), "--from", heard.toString(), "--json");

    assertThat(ran.exitCode()).isZero();
    assertThat(ran.out().lines()).hasSize(3);
    assertThat(ran.out().lines().toList().get(0))
        .contains("\"id\":\"a\"")
        .contains("\"temperatureC\":19.84");
    assertThat(ran.out().lines().toList().get(1)).contains("\"refused\":[{\"");
    assertThat(ran.out().lines().toList().get(2)).contains("is not JSON");
  }

  @Test
  void listensToWhatTheShopKeptBesideWhatItIsReadAs() throws IOException {
    Path settings = Files.createDirectories(folder.resolve("shop"));
    Files.writeString(
        settings.resolve("coatwright.yaml"),
        """
        rooms:
          - name: bench
        brokers:
          house:
            url: tcp://127.0.0.1:1883
        """);
    Files.writeString(
        Files.createDirectories(settings.resolve("sources")).resolve("wall.yaml"),
        """
        source: wall
        transport: mqtt
        broker: house
        filter: shop/bench/temperature
        room: bench
        payload: number
        every: PT1M
        readings:
          - {quantity: air-temperature, unit: Cel}
        """);
    Path data = folder.resolve("kept");
    Instant at = Instant.parse("2026-03-14T15:12:00Z");
    try (SqliteStore store = SqliteStore.open(data, Clock.systemUTC())) {
      store.readings().keep(raw(at, "19.84", "accepted", Optional.empty()));
      store.readings().keep(raw(at.plusSeconds(60), "wet", "refused", Optional.of("not a number")));
      store.readings().flush();
    }

    Ran ran =
        run("--config", settings.toString(), "--data", data.toString(), "listen", "wall", "--json");

    assertThat(ran.exitCode()).as(ran.err()).isZero();
    List<String> lines = ran.out().lines().toList();
    assertThat(lines).hasSize(2);
    assertThat(lines.get(0)).contains("\"temperatureC\":19.84").contains("\"text\":\"19.84\"");
    assertThat(lines.get(1)).contains("\"accepted\":[]").contains("\"refused\":[{");
  }

  private static RawText raw(Instant at, String text, String verdict, Optional<String> reason) {
    return new RawText("wall", "shop/bench/temperature", at, text, verdict, reason);
  }

  @Test
  void aDescribedCaseIsWeighed() throws IOException {
    Path described = folder.resolve("case.json");
    Files.writeString(
        described,
        """
        {"kind": "blush, spirit finish, brushed",
         "conditions": {"finish": "shellac", "method": "brush", "temp": "28 C", "rh": "80 %"},
         "seen": "turned white as it went on"}
        """);

    Ran ran = run("replay", "--case", described.toString(), "--json");

    assertThat(ran.exitCode()).isZero();
    assertThat(ran.json().path("airAtFault").asText()).isEqualTo("yes");
    assertThat(run("replay", "--case", described.toString()).out()).contains("Was it the air? yes");
    assertThat(run("replay").exitCode()).isEqualTo(2);
  }

  @Test
  void aSecondCoatIsToldWithItsIntervalAndOneAnswerRoundsOneWay() {
    String cold =
        run("outlook", "--finish", "waterborne-urethane", "--air", "10C,85%", "--units", "us")
            .out();
    assertThat(cold)
        .contains("Hold off: The film would dry at 49.1 °F")
        .contains("the film comes down to 49.1 °F")
        .contains("to 51.8 °F. Then take care; the film would dry only")
        .doesNotContain("at 0.00 of its speed")
        .doesNotContain("°C")
        .doesNotContain(" K ");

    String second =
        run(("outlook --finish lacquer-nitrocellulose --air 10C,85% --coats-before 1 --interval"
                    + " 4h --units us")
                .split(" "))
            .out();
    assertThat(second)
        .contains("1 coat before, 4.0 h ago.")
        .contains("Solvent vapour is highly flammable")
        .doesNotContain("pirit")
        .doesNotContain("°C");
  }

  @Test
  void aRangeBelowTheDewPointIsToldWithoutSigns() {
    assertThat(run("outlook --finish shellac-pale --air 28C,80% --units us".split(" ")).out())
        .containsPattern("8 in 10 between [0-9.]+ °F and [0-9.]+ °F below\\)")
        .contains("more than one in ten not reached in this air");
  }

  @Test
  void aRecordingIsReplayedByItsMapping() throws IOException {
    Path readings = folder.resolve("r.csv");
    StringBuilder csv = new StringBuilder("time,t,rh\n");
    for (int minute = 0; minute < 90; minute++) {
      csv.append(CLOCK.instant().plusSeconds(60L * minute))
          .append(",20.0")
          .append(minute % 10)
          .append(",50.")
          .append(minute % 7)
          .append('\n');
    }
    Files.writeString(readings, csv);
    Path mapping = folder.resolve("m.yaml");
    Files.writeString(
        mapping,
        """
        source: wall
        payload: columns
        header: true
        every: PT1M
        room: bench
        time: {at: time, form: rfc3339, trust: payload}
        readings:
          - {quantity: air-temperature,   at: t,  unit: Cel}
          - {quantity: relative-humidity, at: rh, unit: "%"}
        """);

    String[] words = {
      "replay",
      "--readings",
      readings.toString(),
      "--mapping",
      mapping.toString(),
      "--schedule",
      "1"
    };
    Ran told = run(words);
    Ran json = run((String.join(" ", words) + " --json").split(" "));

    assertThat(told.out()).contains("90 readings, 90 accepted, 0 refused, 0 gaps");
    assertThat(json.json().path("coats")).hasSize(1);
    assertThat(json.json().path("readings").path("count").asInt()).isEqualTo(90);
  }

  @Test
  void pressureAndAltitudeTogetherAreRefused() {
    Ran ran =
        run("air", "--temp", "20C", "--rh", "50%", "--pressure", "990hPa", "--altitude", "50m");

    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.err()).contains("leave one of them out");
  }

  @Test
  void aFileThatIsNotThereIsToldAsSuch() {
    Ran ran = run("replay", "--case", "no-such-case.json");

    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.err())
        .isEqualToIgnoringNewLines("no-such-case.json is not there; check its name and folder");
  }

  @Test
  void aMissingOptionIsNamed() {
    Ran ran = run("air", "--rh", "50%");

    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.err()).isEqualToIgnoringNewLines("missing: --temp; see coatwright air --help");
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"aire", "--colour", "air --temp"})
  void whatIsNoCommandLineIsAnsweredInOneLine(String line) {
    Ran ran = run(line.split(" "));

    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.err().lines()).hasSize(1);
    assertThat(ran.err()).contains("--help").doesNotContainIgnoringCase("exception");
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {
        "",
        "demo",
        "run",
        "checkup",
        "listen",
        "air",
        "wood",
        "outlook",
        "jar",
        "jar new",
        "jar list",
        "jar show",
        "piece",
        "piece new",
        "piece list",
        "piece show",
        "part",
        "part new",
        "coat",
        "note",
        "strike",
        "due",
        "why",
        "replay",
        "export"
      })
  void everyHelpHasAnExample(String command) {
    Ran ran = run((command + " --help").strip().split(" "));

    assertThat(ran.exitCode()).isZero();
    assertThat(ran.err()).isEmpty();
    assertThat(ran.out()).contains("Example: coatwright " + command.strip());
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {
        "due",
        "why cabinet/left-door",
        "jar list",
        "piece list",
        "piece new cabinet",
        "part new cabinet/left-door",
        "coat cabinet/left-door --jar A",
        "note cabinet/left-door tacky",
        "strike e1 --reason wrong",
        "outlook --part cabinet/left-door",
        "checkup"
      })
  void withoutADaemonTheOthersSayHowToStartOne(String command) throws IOException {
    Ran ran = run((command + " --config " + settingsWithAFreePort()).split(" "));

    assertThat(ran.exitCode()).isEqualTo(3);
    assertThat(ran.err().lines()).hasSize(1);
    assertThat(ran.err()).contains("does not answer").contains("coatwright run");
  }

  @Test
  void settingsWithSeveralFaultsAreAllTold() throws IOException {
    Path file = folder.resolve("coatwright.yaml");
    Files.writeString(file, "shop:\n  altitude: 50\nrooms:\n  - nane: bench\n");

    Ran ran = run("checkup", "--offline", "--config", file.toString());

    assertThat(ran.exitCode()).isEqualTo(1);
    assertThat(ran.out()).contains("line 2").contains("line 4").contains("did you mean name?");
  }

  @Test
  void aCommandThatNeedsTheSettingsEndsWithTheirFaults() throws IOException {
    Path file = folder.resolve("coatwright.yaml");
    Files.writeString(file, "rooms: []\n");

    Ran ran = run("due", "--config", file.toString());

    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.err()).contains("coatwright.yaml, 1 fault").contains("at least one room");
  }

  @Test
  void everySentenceIsToldInTheUnitsAskedForAndJsonStaysAsItIs() throws IOException {
    String[] asked = {
      "outlook", "--finish", "shellac-pale", "--air", "28C,80%", "--wood", "22C", "--units", "us"
    };
    Ran told = run(asked);
    assertThat(told.out())
        .contains("°F", "mil")
        .doesNotContain("°C")
        .doesNotContainPattern("\\d K\\b");
    String[] json = java.util.Arrays.copyOf(asked, asked.length + 1);
    json[asked.length] = "--json";
    assertThat(run(json).json().path("reason").asText()).containsPattern("°C|\\d K\\b");
    assertThat(run("air", "--temp", "77F", "--rh", "50%", "--units", "us").out())
        .contains("gr/ft³")
        .doesNotContain("g/m³");
  }

  @Test
  void aCaseIsNotWalkedBesideARecord() throws IOException {
    Path file = folder.resolve("case.json");
    Files.writeString(file, "{\"conditions\": {\"temp\": \"28 C\"}, \"seen\": \"cloudy\"}");

    Ran ran = run("replay", "--case", file.toString(), "--readings", "june.csv");

    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.err()).contains("--case with --readings").contains("leave one of them out");
  }

  @Test
  void aNumberOfCoatsThatIsNoneIsToldInOurWords() {
    Ran schedule = run("replay", "--readings", "a.csv", "--mapping", "a.yaml", "--schedule", "six");
    assertThat(schedule.exitCode()).isEqualTo(2);
    assertThat(schedule.err()).contains("--schedule \"six\"").contains("write --schedule 6");

    Ran last = run("listen", "--last", "ten");
    assertThat(last.exitCode()).isEqualTo(2);
    assertThat(last.err()).startsWith("--last \"ten\": that is no whole number");
  }

  @Test
  void anUnknownFinishOfACoatListIsToldWithItsLine() throws IOException {
    Path readings = folder.resolve("a.csv");
    Files.writeString(
        readings, "time,t,h\n2026-03-14T09:30:00Z,20,50\n2026-03-14T09:31:00Z,20,50\n");
    Path mapping = folder.resolve("a.yaml");
    Files.writeString(
        mapping,
        """
        source: wall
        payload: columns
        header: true
        time: {at: time, form: rfc3339}
        readings:
          - {quantity: air-temperature, at: t, unit: Cel}
          - {quantity: relative-humidity, at: h, unit: '%'}
        """);
    Path coats = folder.resolve("coats.csv");
    Files.writeString(coats, "id,finish,start\na,shellac-pale,+0min\nb,copal,+1min\n");

    Ran ran =
        run(
            "replay",
            "--readings",
            readings.toString(),
            "--mapping",
            mapping.toString(),
            "--coats",
            coats.toString());

    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.err()).contains("line 3").contains("\"copal\"");
  }

  @Test
  void aMappingFileThatEndsTooSoonIsToldInOneSentence() throws IOException {
    Path mappings = folder.resolve("m.json");
    Files.writeString(mappings, "{\n");
    Path heard = folder.resolve("h.jsonl");
    Files.writeString(heard, "{\"raw\": \"21\", \"profile\": \"x\"}\n");

    Ran ran = run("listen", "--mappings", mappings.toString(), "--from", heard.toString());

    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.err()).contains("is no JSON", "mend it there").doesNotContain("Source");
  }

  @Test
  void whatWasHeardWithoutAnIdIsToldWithoutOne() throws IOException {
    Path mappings = folder.resolve("m.json");
    Files.writeString(mappings, "{}");
    Path heard = folder.resolve("h.jsonl");
    Files.writeString(heard, "{\"raw\": \"21\", \"profile\": \"x\"}\n");

    Ran ran = run("listen", "--mappings", mappings.toString(), "--from", heard.toString());

    assertThat(ran.json().has("id")).isFalse();
    assertThat(ran.json().has("refused")).isTrue();
  }

  @Test
  void aCheckupSaysWhenTheDatabaseWasLastCopied() throws IOException {
    Path data = Files.createDirectories(folder.resolve("data"));
    String[] checkup = {
      "checkup", "--offline", "--config", settingsWithAFreePort(), "--data", data.toString()
    };
    coatwright.store.SqliteStore.open(data, CLOCK).close();
    assertThat(run(checkup).out()).contains("backup: none yet; to make one, stop Coatwright");

    Path copy = Files.createDirectories(data.resolve("backups")).resolve("before-update-1.db");
    Files.writeString(copy, "a copy");
    Files.setLastModifiedTime(
        copy, java.nio.file.attribute.FileTime.from(Instant.parse("2026-03-01T08:00:30Z")));
    assertThat(run(checkup).out()).contains("backup: the last was made at 2026-03-01T08:00:00Z");
  }

  @Test
  void aCheckupWithoutADaemonLooksAtSettingsAndDatabase() throws IOException {
    Ran ran =
        run(
            "checkup",
            "--offline",
            "--json",
            "--config",
            settingsWithAFreePort(),
            "--data",
            folder.resolve("data").toString());

    assertThat(ran.json().path("checks"))
        .extracting(check -> check.path("what").asText())
        .containsExactly("settings", "finishes", "database", "sensors");
  }

  @Test
  void anAirOutsideTheModelIsRefusedWithWhatToDo() {
    Ran ran = run("air", "--temp", "20C", "--rh", "50%", "--pressure", "3inHg");
    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.err())
        .isEqualTo(
            "air pressure is 10159.2 Pa; this model holds from 50000.0 to 110000.0 Pa; check the"
                + " number and its unit\n");
  }

  @Test
  void aReplaySaysItsWarningsByTheShopsClockAndCountsInPlainWords() throws IOException {
    Path mapping = folder.resolve("wall.yaml");
    Files.writeString(
        mapping,
        """
        source: wall
        room: finishing room
        payload: columns
        header: true
        every: PT1M
        time: {at: time, form: rfc3339, trust: payload}
        readings:
          - {quantity: air-temperature, at: t, unit: Cel}
          - {quantity: relative-humidity, at: rh, unit: "%"}
        """);
    StringBuilder csv = new StringBuilder("time,t,rh\n");
    for (int minute = 0; minute < 240; minute++) {
      if (minute < 60 || minute > 150) {
        Instant at = Instant.parse("2026-03-18T09:00:00Z").plusSeconds(60L * minute);
        csv.append(at).append(",20.").append(minute % 7).append(",50.").append(minute % 5);
        csv.append('\n');
      }
    }
    Path readings = folder.resolve("march.csv");
    Files.writeString(readings, csv);
    Ran ran = run("replay", "--readings", readings.toString(), "--mapping", mapping.toString());
    assertThat(ran.err()).isEmpty();
    assertThat(ran.out()).contains("149 readings, 149 accepted, 0 refused, 1 gap\n");
    assertThat(ran.out().lines().filter(line -> line.contains("wall")))
        .singleElement()
        .asString()
        .startsWith("Wed 18 Mar 1");
  }

  private String settingsWithAFreePort() throws IOException {
    try (ServerSocket free = new ServerSocket(0)) {
      Path file = folder.resolve("coatwright.yaml");
      Files.writeString(
          file, "rooms:\n  - name: bench\nweb:\n  port: " + free.getLocalPort() + "\n");
      return file.toString();
    }
  }
}
