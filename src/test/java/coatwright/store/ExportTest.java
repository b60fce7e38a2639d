package coatwright.store;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.climate.Readings;
import coatwright.journal.FinishNames;
import coatwright.journal.LiveJournal;
import coatwright.journal.ShopForms;
import coatwright.json.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ExportTest {
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
  private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-14T12:00:00Z"), BERLIN);

  @TempDir Path folder;

  @Test
  void writesTheWholeLogForAnySpreadsheet() throws Exception {
    Path out = folder.resolve("out");
    try (SqliteStore store = SqliteStore.open(folder, CLOCK)) {
      ShopForms forms =
          new ShopForms(
              new LiveJournal(store.ledger()),
              CLOCK,
              BERLIN,
              FinishNames.ofSpirit("shellac-pale"),
              List.of("bench"),
              "bench");
      forms.piece(Map.of("name", "cabinet"));
      forms.part(Map.of("part", "cabinet/left-door", "area", "0.5m2"));
      forms.jar(Map.of("name", "J1", "finish", "shellac-pale"));
      forms.coat(Map.of("part", "cabinet/left-door", "jar", "J1", "start", "11:00", "wood", "-5C"));
      forms.note(
          Map.of("part", "e4", "what", "clouded=2", "text", "=cmd|' /C calc'!A0, he said \"no\""));
      forms.strike(Map.of("entry", "e5", "reason", "other part"));
      store.readings().append(Readings.air("wall", "bench", CLOCK.instant(), -2.5, 60));
      List<Export.Written> written = new Export(store, BERLIN).to(out);
      assertThat(written)
          .extracting(Export.Written::rows)
          .containsExactly(6L, 1L, 1L, 1L, 1L, 1L, 1L, 7L);
    }
    assertThat(Files.readString(out.resolve("coats.csv")))
        .hasLineCount(2)
        .startsWith(
            "entry,at,writtenAt,who,struckBy,part,jar,jarEntry,start,end,room,method,wetFilmUm,woodTempC\r\n")
        .endsWith(
            "e4,2026-03-14T11:00:00+01:00,2026-03-14T13:00:00+01:00,,,cabinet/left-door,J1,e3,2026-03-14T11:00:00+01:00,,bench,brush,,-5.0\r\n");
    assertThat(Files.readString(out.resolve("notes.csv")))
        .as("struck, kept, and no formula")
        .startsWith(
            "entry,at,writtenAt,who,struckBy,part,coat,what,grade,passed,text,residuePct,storedTempC\r\n")
        .contains(
            "e5,2026-03-14T13:00:00+01:00,2026-03-14T13:00:00+01:00,,e6,cabinet/left-door,e4,clouded,2,,")
        .endsWith("\"'=cmd|' /C calc'!A0, he said \"\"no\"\"\",,\r\n");
    assertThat(Files.readString(out.resolve("readings.csv")))
        .contains("wall,wall,room,bench,,2026-03-14T13:00:00+01:00,-2.5,60.0,,0.3,2.0,,,,\r\n");
    JsonNode log = Json.mapper().readTree(out.resolve("log.json").toFile());
    assertThat(log.at("/entries/3/body/part/piece").asText()).isEqualTo("cabinet");
    assertThat(log.at("/entries/4/struckBy").asText()).isEqualTo("e6");
    assertThat(log.at("/readings/0/temperatureC").asDouble()).isEqualTo(-2.5);
  }

  @Test
  void quotesAndGuardsCells() {
    assertThat(Csv.text("plain")).isEqualTo("plain");
    assertThat(Csv.text("a,b")).isEqualTo("\"a,b\"");
    assertThat(Csv.text("say \"x\"")).isEqualTo("\"say \"\"x\"\"\"");
    assertThat(Csv.text("two\nlines")).isEqualTo("\"two\nlines\"");
    for (String start : List.of("=", "+", "-", "@", "\t")) {
      assertThat(Csv.text(start + "1")).isEqualTo("'" + start + "1");
    }
    assertThat(Csv.text("")).isEmpty();
  }
}
