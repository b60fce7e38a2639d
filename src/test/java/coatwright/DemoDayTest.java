package coatwright;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.config.Settings;
import coatwright.config.SettingsFolder;
import coatwright.demo.InventedEntry;
import coatwright.demo.InventedShop;
import coatwright.json.Json;
import coatwright.replay.Replay;
import coatwright.replay.Replayed;
import coatwright.review.Why;
import coatwright.sensors.MappingReader;
import coatwright.sensors.Setting;
import coatwright.sensors.SourceMapping;
import coatwright.store.SqliteStore;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * One day of the demo, the foggy one, walked as the demo walks it and as {@code replay} walks a
 * recording of the same sensor: both believe the same readings and lay the clouding at the same
 * door.
 */
class DemoDayTest {
  private static final ZoneId ZONE = ZoneId.of("Europe/Lisbon");
  private static final Instant NOW = Instant.parse("2026-03-20T15:12:00Z");
  private static final Instant DAY = Instant.parse("2026-03-11T05:01:00Z");
  private static final Instant DAY_AFTER = DAY.plus(Duration.ofHours(23));
  private static final String SENSOR = "finishing-wall";
  private static final String ROOM = "finishing room";

  @TempDir Path folder;

  @Test
  void theDemosWalkAndAReplayOfTheSameDayAgree() throws IOException {
    InventedShop invented = new InventedShop(NOW, ZONE);
    List<InventedShop.Payload> day = new ArrayList<>();
    invented.payloads(
        DAY,
        DAY_AFTER,
        payload -> {
          if (payload.source().equals(SENSOR)) {
            day.add(payload);
          }
        });
    InventedEntry coat = cloudedCoat(invented);

    Settings settings = SettingsFolder.read(InventedShop.writeSettings(folder.resolve("settings")));
    Replayed replayed = replayed(settings, day, coat);
    SetClock clock = new SetClock(DAY_AFTER);
    try (SqliteStore store = SqliteStore.open(folder.resolve("data"), clock)) {
      Shop shop = new Shop(settings, store, clock);
      walk(shop, day, coat);
      Why walked = shop.meaning(List::of, new Bells()).reviews().why("picture-frames/large");

      assertThat(replayed.readings().count()).isEqualTo(day.size()).isEqualTo(23 * 60);
      assertThat(replayed.readings().accepted())
          .isEqualTo(store.readings().readings(ROOM, DAY, DAY_AFTER).size());
      Why replay = replayed.review().get(0);
      assertThat(walked.airAtFault()).isEqualTo(Why.AirAtFault.YES);
      assertThat(replay.airAtFault()).isEqualTo(walked.airAtFault());
      Why.Saw saw = walked.model().orElseThrow();
      Why.Saw seenAgain = replay.model().orElseThrow();
      assertThat(seenAgain.level()).isEqualTo(saw.level()).isEqualTo("likely");
      assertThat(seenAgain.waterPeakPct().orElseThrow())
          .isCloseTo(saw.waterPeakPct().orElseThrow(), within(0.05));
      assertThat(seenAgain.filmLowC()).isCloseTo(saw.filmLowC(), within(0.05));
    }
  }

  private static InventedEntry cloudedCoat(InventedShop invented) {
    return invented.entries().stream()
        .filter(entry -> entry.kind().equals("coat"))
        .filter(entry -> entry.form().get("part").equals("picture-frames/large"))
        .findFirst()
        .orElseThrow();
  }

  private static void walk(Shop shop, List<InventedShop.Payload> day, InventedEntry coat) {
    HistoryWriter.Payloads way = HistoryWriter.mapped(shop, DAY);
    day.forEach(payload -> way.take(payload, shop.climate()::accept));
    shop.store().readings().flush();
    SetClock then = new SetClock(coat.at());
    shop.forms(then).piece(Map.of("name", "picture-frames", "room", ROOM));
    shop.forms(then).part(Map.of("part", "picture-frames/large"));
    shop.forms(then)
        .jar(Map.of("name", "A", "finish", "shellac-pale", "cut", "1.5lb", "strength", "95%"));
    shop.forms(then).coat(Map.of("part", "picture-frames/large", "jar", "A", "start", start(coat)));
    then.forward(Duration.ofMinutes(7));
    shop.forms(then).note(Map.of("part", "picture-frames/large", "what", "clouded=4"));
  }

  private static String start(InventedEntry coat) {
    return coat.form().get("start");
  }

  private static Replayed replayed(
      Settings settings, List<InventedShop.Payload> day, InventedEntry coat) throws IOException {
    StringBuilder csv = new StringBuilder("time,t,rh\n");
    for (InventedShop.Payload payload : day) {
      JsonNode said = Json.mapper().readTree(payload.text());
      csv.append(payload.at())
          .append(',')
          .append(said.path("temperature").decimalValue())
          .append(',')
          .append(said.path("humidity").decimalValue())
          .append('\n');
    }
    String coats =
        """
        id,part,start,cut,strength,seen
        clouded,picture-frames/large,%s,1.5lb,95%%,clouded=4
        """
            .formatted(start(coat));
    return new Replay(settings.finishes(), Shop.outlookSettings(settings))
        .run(csv.toString(), byTheMinute(), Optional.of(coats), OptionalInt.empty());
  }

  private static SourceMapping byTheMinute() throws JsonProcessingException {
    String mapping =
        """
        {"source": "finishing-wall", "payload": "columns", "header": true, "every": "PT1M",
         "room": "finishing room", "chip": "sht31",
         "time": {"at": "time", "form": "rfc3339", "trust": "payload"},
         "readings": [{"quantity": "air-temperature", "at": "t", "unit": "Cel"},
                      {"quantity": "relative-humidity", "at": "rh", "unit": "%"}]}
        """;
    return MappingReader.read(Setting.of(Json.mapper().readTree(mapping)), "recording", false);
  }
}
