package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.climate.Reading;
import coatwright.sensors.serial.Socat;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole way in from a serial line, which is unplugged meanwhile. */
class SerialSensorsIT {
  private static final Duration SOON = Duration.ofSeconds(20);

  @TempDir Path directory;

  private final List<Reading> readings = new CopyOnWriteArrayList<>();

  @Test
  void readsAgainAfterTheAdapterWasPulledOutAndPutBack() {
    try (Socat pair = new Socat(directory);
        Sensors sensors =
            new Sensors(
                List.of(Mappings.serial("bench-board", pair.device().toString())),
                Map.of(),
                Clock.systemUTC(),
                readings::add,
                doubt -> {},
                raw -> {},
                System::nanoTime,
                Duration.ofMillis(200))) {
      sensors.start();
      printUntilRead(pair, "T=21.5;RH=48.3", 21.5);

      pair.pullOut();
      Eventually.within(
          SOON,
          "loss told",
          () -> sensors.statuses().get(0).trouble().orElse("").contains("device"));
      pair.plugIn();
      printUntilRead(pair, "T=21.7;RH=48.1", 21.7);

      assertThat(sensors.statuses().get(0).trouble()).isEmpty();
      assertThat(readings.get(0).source()).isEqualTo("bench-board");
    }
  }

  private void printUntilRead(Socat pair, String line, double t) {
    Eventually.within(
        SOON,
        line,
        () -> {
          pair.print("\r\n" + line + "\r\n");
          return readings.stream().anyMatch(each -> each.temperatureC().orElse(0) == t);
        });
  }
}
