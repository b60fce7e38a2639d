package coatwright;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coatwright.cli.Hall.EarWish;
import coatwright.cli.Hall.Place;
import coatwright.cli.Hall.Proposed;
import coatwright.cli.Stop;
import coatwright.config.Settings;
import coatwright.config.SettingsFolder;
import coatwright.sensors.Mosquitto;
import coatwright.sensors.PayloadKind;
import coatwright.sensors.Publisher;
import coatwright.sensors.SourceMapping;
import coatwright.sensors.serial.Socat;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A sensor nobody has seen before is set up with {@code listen} alone. */
class SetUpAidIT {
  private static final Duration SPAN = Duration.ofSeconds(3);

  @TempDir private Path folder;

  private final House house = new House(Clock.systemUTC());
  private final List<String> shown = new ArrayList<>();

  private Place shop(String brokers) throws IOException {
    Path settings = folder.resolve("coatwright.yaml");
    Files.writeString(settings, "rooms:\n  - {name: hall}\n" + brokers);
    return new Place(Optional.of(settings), Optional.of(folder.resolve("data")));
  }

  private SourceMapping kept(Place place) {
    Settings settings = SettingsFolder.read(place.config().orElseThrow());
    assertThat(settings.sources()).hasSize(1);
    return settings.sources().get(0);
  }

  @Test
  void setsUpASensorOfABroker() throws IOException {
    try (Mosquitto broker = new Mosquitto(folder)) {
      Place place = shop("brokers:\n  house: {url: '%s'}\n".formatted(broker.url()));
      Publisher.leave(
          broker.url(), "works/knot", "{\"clim\":{\"tempC\":20.4,\"relHum\":51.2},\"up\":7}");

      Proposed proposed =
          house.propose(
              place,
              new EarWish(
                  Optional.empty(),
                  Optional.empty(),
                  Optional.of("house"),
                  List.of("works/#"),
                  Optional.empty(),
                  "9600 8N1",
                  SPAN),
              "knot",
              Optional.empty(),
              shown::add);

      assertThat(shown).singleElement().asString().startsWith("works/knot  {");
      assertThat(proposed.sources()).as(proposed.toString()).isEqualTo(1);
      assertThat(proposed.unsure()).isEmpty();
      Path file = house.accept(place, "knot", proposed.yaml());
      SourceMapping mapping = kept(place);
      assertThat(mapping.source()).isEqualTo("knot");
      assertThat(mapping.placing().room()).contains("hall");
      assertThat(mapping.payload().readings()).hasSize(2);

      String before = Files.readString(file);
      assertThatThrownBy(() -> house.accept(place, "knot", "other"))
          .isInstanceOf(Stop.class)
          .hasMessageContaining("is there already and is not written over");
      assertThat(Files.readString(file)).isEqualTo(before);
    }
  }

  @Test
  void setsUpABoardOnASerialLine() throws IOException, InterruptedException {
    AtomicBoolean done = new AtomicBoolean();
    try (Socat line = new Socat(folder)) {
      Place place = shop("");
      Thread board =
          new Thread(
              () -> {
                for (int i = 0; !done.get(); i++) {
                  line.print("air 2%d.4C damp 48.%d%%\r\n".formatted(i % 4, i % 10));
                  java.util.concurrent.locks.LockSupport.parkNanos(100_000_000);
                }
              });
      board.start();
      Proposed proposed =
          house.propose(
              place,
              new EarWish(
                  Optional.empty(),
                  Optional.empty(),
                  Optional.empty(),
                  List.of(),
                  Optional.of(line.device().toString()),
                  "9600 8N1",
                  SPAN),
              "board",
              Optional.of("hall"),
              shown::add);
      done.set(true);
      board.join();

      assertThat(proposed.sources()).as(proposed.toString()).isEqualTo(1);
      house.accept(place, "board", proposed.yaml());
      assertThat(kept(place).payload().kind()).isEqualTo(PayloadKind.PATTERN);
    }
  }
}
