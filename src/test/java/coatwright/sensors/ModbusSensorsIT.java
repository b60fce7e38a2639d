package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coatwright.climate.RawText;
import coatwright.climate.Reading;
import coatwright.quantity.RefusedInput;
import coatwright.sensors.serial.ModbusStation;
import coatwright.sensors.serial.ModbusStation.Manner;
import coatwright.sensors.serial.Socat;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two stations on one serial line that is as bad as such lines are. */
class ModbusSensorsIT {
  private static final Duration SOON = Duration.ofSeconds(20);

  @TempDir Path directory;

  private final List<Reading> readings = new CopyOnWriteArrayList<>();
  private final List<RawText> raw = new CopyOnWriteArrayList<>();

  private static SourceMapping station(String name, Path device, String line, String question) {
    return Mappings.source(
        """
        {'source': '%s', 'transport': 'serial', 'device': '%s', 'line': '%s',
         'room': 'bench room', 'payload': 'modbus-rtu', 'every': 'PT1S', 'base': 0, %s,
         'readings': [
          {'quantity': 'air-temperature', 'at': 0, 'type': 'int16', 'scale': 0.1, 'unit': 'Cel'},
          {'quantity': 'relative-humidity', 'at': 1, 'type': 'uint16', 'scale': 0.1, 'unit': '%%'}]}
        """
            .formatted(name, device, line, question));
  }

  private static List<SourceMapping> both(Path device) {
    return List.of(
        station("one", device, "9600 8N1", "'address': 1, 'function': 4, 'start': 1, 'count': 2"),
        station("two", device, "9600 8N1", "'address': 2, 'function': 3, 'start': 0, 'count': 2"));
  }

  private Sensors sensors(List<SourceMapping> mappings) {
    return new Sensors(
        mappings,
        Map.of(),
        Clock.systemUTC(),
        readings::add,
        doubt -> {},
        raw::add,
        System::nanoTime,
        Duration.ofMillis(200));
  }

  private void reads(ModbusStation station, double one, double two) {
    station.holds(1, 4, 0, (int) Math.round(one * 10), 462);
    station.holds(2, 3, (int) Math.round(two * 10), 455);
    Eventually.within(SOON, one + " and " + two, () -> last("one") == one && last("two") == two);
  }

  private double last(String source) {
    return readings.stream()
        .filter(each -> each.source().equals(source))
        .reduce((a, b) -> b)
        .map(each -> Math.round(each.temperatureC().orElse(0) * 10) / 10.0)
        .orElse(0.0);
  }

  private static String trouble(Sensors sensors, int source) {
    return sensors.statuses().get(source).trouble().orElse("");
  }

  @Test
  void readsTwoStationsThroughPiecesEchoNoiseSilenceRefusalAndAnUnpluggedAdapter() {
    try (Socat pair = new Socat(directory);
        ModbusStation station = new ModbusStation(pair.far());
        Sensors sensors = sensors(both(pair.device()))) {
      sensors.start();
      reads(station, 21.5, 20.5);
      station.behave(Manner.IN_TWO_PIECES);
      reads(station, 21.6, 20.6);
      station.behave(Manner.WITH_ECHO);
      reads(station, 21.7, 20.7);
      station.behave(Manner.AFTER_A_NOISE_BYTE);
      reads(station, 21.8, 20.8);
      assertThat(station.overlapping()).as("one question at a time").isZero();

      station.behave(Manner.SILENT);
      int before = station.asked();
      Eventually.within(
          SOON,
          "silence named",
          () ->
              trouble(sensors, 0).contains("does not answer")
                  && trouble(sensors, 1).contains("does not answer"));
      assertThat(station.asked() - before).as("three tries each").isGreaterThanOrEqualTo(6);
      assertThat(trouble(sensors, 0))
          .contains("station 1 on " + pair.device())
          .contains("its address, the two wires (they may be crossed) and the speed");

      station.behave(Manner.REFUSING);
      Eventually.within(SOON, "refusal named", () -> trouble(sensors, 1).contains("exception 02"));
      station.behave(Manner.WITH_A_WRONG_CHECKSUM);
      Eventually.within(
          SOON,
          "checksum named",
          () -> trouble(sensors, 1).toLowerCase(java.util.Locale.ROOT).contains("c"));
      station.behave(Manner.WELL);
      reads(station, 21.9, 20.9);
      assertThat(trouble(sensors, 0)).isEmpty();

      pair.pullOut();
      Eventually.within(
          SOON,
          "loss named",
          () -> trouble(sensors, 0).contains("device") && trouble(sensors, 1).contains("device"));
      pair.plugIn();
      reads(station, 22.0, 21.0);
      assertThat(trouble(sensors, 1)).isEmpty();
      assertThat(readings)
          .as("nothing invented")
          .allSatisfy(each -> assertThat(each.temperatureC().orElseThrow()).isBetween(20.4, 22.1));
    }
  }

  @Test
  void refusesTwoSpeedsOnOneLineAndABoardBesideStations() {
    Path device = directory.resolve("near");
    assertThatThrownBy(
            () ->
                sensors(
                    List.of(
                        both(device).get(0),
                        station(
                            "fast",
                            device,
                            "19200 8N1",
                            "'address': 3, 'function': 4, 'start': 0, 'count': 2"))))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("is used at 9600 8N1 by source one and at 19200 8N1 here");
    assertThatThrownBy(
            () ->
                sensors(List.of(both(device).get(0), Mappings.serial("board", device.toString()))))
        .hasMessageContaining("is read by source one already");
  }
}
