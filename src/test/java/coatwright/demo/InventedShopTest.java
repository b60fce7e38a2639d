package coatwright.demo;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.air.MoistAir;
import coatwright.config.Settings;
import coatwright.config.SettingsFolder;
import coatwright.sensors.SourceMapping;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class InventedShopTest {
  private static final ZoneId ZONE = ZoneId.of("Europe/Lisbon");
  private static final Instant NOW = Instant.parse("2026-03-20T15:12:00Z");

  @TempDir Path folder;

  @Test
  void itsSettingsAreReadLikeAnyOther() throws IOException {
    Settings settings = SettingsFolder.read(InventedShop.writeSettings(folder));

    assertThat(settings.rooms())
        .extracting(Settings.Room::name)
        .containsExactly("bench room", "finishing room");
    assertThat(settings.sources())
        .extracting(SourceMapping::source)
        .containsExactlyInAnyOrder("finishing-wall", "bench-wall", "rack-board", "wood-probe");
  }

  @Test
  void everyPayloadComesFromASourceOfItsSettings() throws IOException {
    Settings settings = SettingsFolder.read(InventedShop.writeSettings(folder));

    assertThat(new InventedShop(NOW, ZONE).payloads(NOW))
        .extracting(InventedShop.Payload::source)
        .containsExactlyInAnyOrderElementsOf(
            settings.sources().stream().map(SourceMapping::source).toList());
  }

  @Test
  void theSameInstantGivesTheSameShop() {
    Instant from = NOW.minus(Duration.ofHours(2));
    List<InventedShop.Payload> once = new ArrayList<>();
    List<InventedShop.Payload> again = new ArrayList<>();
    new InventedShop(NOW, ZONE).payloads(from, NOW, once::add);
    InventedShop other = new InventedShop(NOW, ZONE);
    other.payloads(NOW);
    other.payloads(from, NOW, again::add);

    assertThat(once).hasSize(480).isEqualTo(again);
  }

  @Test
  void theFoggyEveningBringsTheFinishingRoomWhereShellacClouds() {
    InventedShop shop = new InventedShop(NOW, ZONE);
    Instant fog = InventedJournal.fogFrom(NOW, ZONE);
    InventedAir air = air(fog);

    InventedAir.RoomMoment evening = air.at(fog.plus(Duration.ofMinutes(100))).finishing();
    InventedAir.RoomMoment dayAfter = air.at(fog.plus(Duration.ofHours(21))).finishing();

    assertThat(shop.entries()).isNotEmpty();
    assertThat(evening.rhPct()).isBetween(80.0, 95.0);
    assertThat(evening.airTempC()).isBetween(18.0, 21.0);
    assertThat(dayAfter.rhPct()).isLessThan(65);
  }

  @Test
  void itsAirStaysWithinWhatAShopHas() {
    InventedAir air = air(InventedJournal.fogFrom(NOW, ZONE));
    for (Instant at = NOW.minus(InventedShop.HISTORY);
        at.isBefore(NOW.plus(Duration.ofDays(3)));
        at = at.plus(Duration.ofMinutes(13))) {
      InventedAir.RoomMoment room = air.at(at).finishing();
      assertThat(room.airTempC()).isBetween(11.0, 23.0);
      assertThat(room.rhPct()).isBetween(30.0, 97.0);
      assertThat(MoistAir.of(room.airTempC(), room.rhPct()).dewPointC())
          .isLessThan(air.at(at).woodTempC() + 1);
    }
  }

  @Test
  void entriesAreOldestFirstAndNoneIsOfTheFuture() {
    List<InventedEntry> entries = new InventedShop(NOW, ZONE).entries();

    assertThat(entries).extracting(InventedEntry::at).isSorted();
    assertThat(entries.get(entries.size() - 1).at()).isBeforeOrEqualTo(NOW);
    assertThat(entries.get(0).at()).isBefore(NOW.minus(Duration.ofDays(26)));
  }

  private static InventedAir air(Instant fog) {
    return new InventedAir(
        InventedShop.SEED,
        NOW.minus(InventedShop.HISTORY).minus(Duration.ofDays(1)),
        ZONE,
        NOW.minus(Duration.ofHours(6)),
        fog,
        fog.plus(Duration.ofHours(6)));
  }
}
