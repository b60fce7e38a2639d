package coatwright;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.climate.AirPoint;
import coatwright.climate.RawText;
import coatwright.outlook.Outlook;
import coatwright.outlook.SessionOutlook;
import coatwright.watch.Warning;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Read this first, then {@link OneCoatTest}. One reading walks through the house: payload, mapping,
 * screen, climate, outlook, watch, bell.
 */
class OneReadingTest {
  private static final Instant MORNING = Instant.parse("2026-03-20T09:00:00Z");

  @TempDir Path folder;

  @Test
  void aPayloadBecomesTheRoomsAir() throws IOException {
    try (SmallShop quay = new SmallShop(folder, MORNING)) {
      RawText kept = quay.hears("{\"temperature\": 20.00, \"humidity\": 50.0}");

      AirPoint air = quay.shop.climate().now(SmallShop.ROOM).air().orElseThrow();
      assertThat(kept.verdict()).isEqualTo("accepted");
      assertThat(air.airTempC()).isEqualTo(20.0);
      assertThat(air.rhPct()).isBetween(49.99, 50.01);
      // ASHRAE Handbook Fundamentals 2017, chapter 1: 20 °C at 50 % has its dew point at 9.3 °C.
      assertThat(air.dewPointC()).isBetween(9.2, 9.3);
    }
  }

  @Test
  void whatTheSensorCannotMeanIsKeptAndNotBelieved() throws IOException {
    try (SmallShop quay = new SmallShop(folder, MORNING)) {
      RawText kept = quay.hears("{\"temperature\": \"unavailable\", \"humidity\": 50.0}");
      quay.shop.store().readings().flush();

      assertThat(kept.reason()).isPresent();
      assertThat(quay.shop.climate().now(SmallShop.ROOM).air()).isEmpty();
      assertThat(quay.shop.store().readings().raw("wall", 10))
          .extracting(RawText::text)
          .containsExactly("{\"temperature\": \"unavailable\", \"humidity\": 50.0}");
    }
  }

  @Test
  void theAirBecomesAnAnswerAtTheBench() throws IOException {
    try (SmallShop quay = new SmallShop(folder, MORNING)) {
      quay.breathes(20, 50, Duration.ofHours(4));

      SessionOutlook session =
          quay.meaning.outlooks().session(SmallShop.ROOM, quay.clock.instant());

      assertThat(session.finish()).isEqualTo("shellac-pale");
      assertThat(session.outlook().summary())
          .isIn(Outlook.Summary.BRUSH, Outlook.Summary.TAKE_CARE);
      assertThat(session.outlook().clouding().orElseThrow().level())
          .isEqualTo(Outlook.CloudingLevel.NONE_EXPECTED);
    }
  }

  @Test
  void fogOverAWetFilmIsSaidOnceByTheBell() throws IOException {
    try (SmallShop quay = new SmallShop(folder, MORNING)) {
      quay.breathes(20, 60, Duration.ofHours(4));
      quay.shop.forms(quay.clock).piece(Map.of("name", "frame", "room", SmallShop.ROOM));
      quay.shop.forms(quay.clock).part(Map.of("part", "frame/front"));
      quay.shop
          .forms(quay.clock)
          .jar(Map.of("name", "A", "finish", "shellac-pale", "cut", "1.5lb"));
      quay.breathes(20, 84, Duration.ofMinutes(4));
      quay.shop.forms(quay.clock).coat(Map.of("part", "frame/front", "jar", "A"));
      quay.breathes(20, 88, Duration.ofMinutes(2));
      for (int look = 0; look < 3; look++) {
        quay.meaning.outlooks().refresh(quay.clock.instant(), "the fog");
        quay.meaning.watch().judge(quay.clock.instant());
      }

      assertThat(quay.rung).extracting(Warning::kind).containsOnlyOnce("clouding");
      assertThat(quay.meaning.watch().open()).extracting(Warning::kind).contains("clouding");
    }
  }
}
