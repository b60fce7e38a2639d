package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import coatwright.climate.Role;
import coatwright.quantity.Fault;
import coatwright.quantity.RefusedInput;
import coatwright.sensors.serial.SerialSettings;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MappingReaderTest {
  private static List<String> faults(String json) {
    RefusedInput refused =
        catchThrowableOfType(RefusedInput.class, () -> MappingReader.read(Mappings.setting(json)));
    assertThat(refused).as("refusal of %s", json).isNotNull();
    return refused.faults().stream().map(Fault::sentence).toList();
  }

  @Test
  void readsASourceWithAllItSays() {
    SourceMapping mapping =
        Mappings.source(
            """
            {'source': 'bench-board', 'transport': 'serial', 'device': 'by-id/usb-uart-port0',
             'line': '115200 8N1', 'settle': 'PT2S', 'room': 'bench room', 'chip': 'SHT31',
             'payload': 'pattern', 'charset': 'iso-8859-1', 'every': 'PT10S',
             'pattern': '^(?<t>[+-]?\\\\d{1,3}),(?<h>\\\\d{1,3})$',
             'readings': [{'quantity': 'air-temperature', 'at': 't', 'unit': 'Cel'},
                          {'quantity': 'relative-humidity', 'at': 'h', 'unit': '%'}],
             'correct': [{'quantity': 'relative-humidity', 'gain': 1.04, 'offset': -2.1,
                          'from': '2026-03-01', 'note': 'two salts'}]}
            """);

    assertThat(mapping.source()).isEqualTo("bench-board");
    assertThat(mapping.transport().orElseThrow())
        .isEqualTo(
            new Transport.Serial(
                "by-id/usb-uart-port0",
                new SerialSettings(115_200, 8, SerialSettings.Parity.NONE, 1),
                Duration.ofSeconds(2)));
    assertThat(mapping.placing().role()).isEqualTo(Role.ROOM);
    assertThat(mapping.placing().chip().rhErrorPct()).isEqualTo(2);
    assertThat(mapping.every()).isEqualTo(Duration.ofSeconds(10));
    assertThat(mapping.corrections())
        .containsExactly(
            new Correction(
                Quantity.RELATIVE_HUMIDITY,
                1.04,
                -2.1,
                Instant.parse("2026-03-01T00:00:00Z"),
                "two salts"));
  }

  @Test
  void reportsEveryFaultAtOnce() {
    List<String> faults =
        faults(
            """
            {'source': 'a', 'transport': 'mqtt', 'filter': '#', 'payload': 'json', 'every': '1m',
             'chip': 'BME281', 'readings': [{'quantity': 'air-temperatur', 'at': 't', 'unit': 'C'}]}
            """);

    assertThat(faults)
        .anySatisfy(each -> assertThat(each).contains("everything the broker carries"))
        .anySatisfy(each -> assertThat(each).contains("room: is missing"))
        .anySatisfy(each -> assertThat(each).contains("did you mean air-temperature?"))
        .anySatisfy(each -> assertThat(each).contains("did you mean bme280?"))
        .anySatisfy(each -> assertThat(each).contains("not an ISO 8601 duration"))
        .anySatisfy(each -> assertThat(each).contains("not a JSON Pointer"))
        .anySatisfy(each -> assertThat(each).contains("unit \"C\"").contains("UCUM"));
  }

  @ParameterizedTest
  @CsvSource({"fliter, filter", "evry, every", "reedings, readings", "sensorat, sensorAt"})
  void suggestsTheNearestWordForAnUnknownOne(String typed, String meant) {
    assertThat(faults("{'source': 'a', '%s': 'x', 'payload': 'number'}".formatted(typed)))
        .anySatisfy(
            each -> assertThat(each).contains(typed).contains("did you mean " + meant + "?"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"senml", "hex", "modbus-rtu", "word"})
  void refusesTheFormsOfALaterVersionAndNamesThoseOfThisOne(String form) {
    assertThat(faults("{'source': 'a', 'payload': '%s', 'start': 1}".formatted(form)))
        .singleElement()
        .asString()
        .contains("is not in this version; use number, json, pattern or columns");
  }

  @Test
  void saysTheLineAFaultStandsOn() {
    Setting setting =
        new Setting.MapOf(
            Map.of(
                "source", new Setting.Text("a", 1),
                "payload", new Setting.Text("jsn", 7)),
            1);
    RefusedInput refused =
        catchThrowableOfType(RefusedInput.class, () -> MappingReader.read(setting));

    assertThat(refused.faults())
        .anySatisfy(
            fault -> {
              assertThat(fault.input()).contains("payload \"jsn\"");
              assertThat(fault.line()).hasValue(7);
            });
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a(?<t>\\\\d+)",
        "^(?<t>(\\\\d+)+)$",
        "^(?<t>\\\\d)\\\\1$",
        "^(?<t>\\\\d)(?=x)",
        "^(?<t>[0-9]$"
      })
  void refusesAPatternThatCouldHangOrMatchAnywhere(String pattern) {
    assertThat(
            faults(
                """
                {'source': 'a', 'transport': 'mqtt', 'filter': 'a/b', 'room': 'r',
                 'payload': 'pattern', 'pattern': '%s',
                 'readings': [{'quantity': 'air-temperature', 'at': 't', 'unit': 'Cel'}]}
                """
                    .formatted(pattern)))
        .anySatisfy(each -> assertThat(each).contains("pattern"));
  }

  @Test
  void refusesAPlaceThatIsNoGroupOfThePattern() {
    assertThat(
            faults(
                """
                {'source': 'a', 'transport': 'mqtt', 'filter': 'a/b', 'room': 'r',
                 'payload': 'pattern', 'pattern': '^(?<t>[0-9]{1,3})$',
                 'readings': [{'quantity': 'air-temperature', 'at': 'temp', 'unit': 'Cel'}]}
                """))
        .singleElement()
        .asString()
        .contains("name it (?<temp>...)");
  }

  @Test
  void letsLimitsBeOverriddenOnlyInOrder() {
    SourceMapping mapping =
        Mappings.recorded(
            """
            {'payload': 'number', 'limits': {'air-temperature': {'plausible': [-30, 50]}},
             'readings': [{'quantity': 'air-temperature', 'unit': 'Cel'}]}
            """);

    assertThat(mapping.limits().get(Quantity.AIR_TEMPERATURE))
        .isEqualTo(new Limits(-40, 85, -30, 50));
    assertThat(
            faults(
                """
                {'source': 'a', 'transport': 'mqtt', 'filter': 'a/b', 'room': 'r',
                 'payload': 'number', 'limits': {'air-temperature': {'plausible': [-60, 50]}},
                 'readings': [{'quantity': 'air-temperature', 'unit': 'Cel'}]}
                """))
        .singleElement()
        .asString()
        .contains("limits must nest");
  }
}
