package coatwright;

import coatwright.climate.RawText;
import coatwright.config.Settings;
import coatwright.config.SettingsFolder;
import coatwright.sensors.Intake;
import coatwright.sensors.RawReading;
import coatwright.store.SqliteStore;
import coatwright.watch.Bell;
import coatwright.watch.Warning;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A shop of one room and one sensor, as its settings say, over a real data file. */
final class SmallShop implements AutoCloseable {
  static final String ROOM = "finishing room";

  final SetClock clock;
  final Shop shop;
  final Shop.Meaning meaning;
  final List<Warning> rung = new ArrayList<>();
  private final SqliteStore store;
  private final Intake wall;

  SmallShop(Path folder, Instant now) throws IOException {
    clock = new SetClock(now);
    Settings settings = SettingsFolder.read(written(folder));
    store = SqliteStore.open(folder.resolve("data"), clock);
    shop = new Shop(settings, store, clock);
    wall = Intake.alone(settings.sources().get(0), shop.upkeep());
    Bells bells = new Bells();
    bells.add(
        new Bell() {
          @Override
          public void ring(Warning warning) {
            rung.add(warning);
          }

          @Override
          public void end(Warning warning) {}
        });
    meaning = shop.meaning(List::of, bells);
  }

  private static Path written(Path folder) throws IOException {
    Files.createDirectories(folder.resolve("sources"));
    Files.writeString(
        folder.resolve("sources/wall.yaml"),
        """
        source: wall
        transport: mqtt
        broker: house
        filter: shop/finishing/air
        room: finishing room
        payload: json
        every: PT1M
        chip: sht31
        readings:
          - {quantity: air-temperature,   at: /temperature, unit: Cel}
          - {quantity: relative-humidity, at: /humidity,    unit: "%"}
        """);
    Path file = folder.resolve("coatwright.yaml");
    Files.writeString(
        file,
        """
        shop:
          name: quay
          zone: Europe/Lisbon
        rooms:
          - name: finishing room
        brokers:
          house:
            url: tcp://127.0.0.1:1883
        """);
    return file;
  }

  /** One payload comes in by the wall sensor, now. */
  RawText hears(String payload) {
    Intake.Taken taken =
        wall.take(
            RawReading.of(
                "shop/finishing/air",
                payload.getBytes(StandardCharsets.UTF_8),
                clock.instant(),
                RawReading.Way.MESSAGE));
    store.readings().keep(taken.raw());
    taken.readings().forEach(shop.climate()::accept);
    return taken.raw();
  }

  /** The wall sensor says the same air every minute, with the last digit alive, for so long. */
  void breathes(double temperatureC, double rhPct, Duration howLong) {
    for (long minute = 0; minute < howLong.toMinutes(); minute++) {
      clock.forward(Duration.ofMinutes(1));
      hears(
          String.format(
              Locale.ROOT,
              "{\"temperature\": %.2f, \"humidity\": %.2f}",
              temperatureC + 0.01 * (minute % 5),
              rhPct + 0.02 * (minute % 7)));
    }
  }

  @Override
  public void close() {
    store.close();
  }
}
