package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import coatwright.climate.Role;
import coatwright.quantity.Fault;
import coatwright.quantity.RefusedInput;
import coatwright.sensors.modbus.ModbusRequest;
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

  private static final String REGISTERS =
      """
      {'source': 'wall', 'transport': 'serial', 'device': 'by-id/a', 'room': 'bench room',
       'payload': 'modbus-rtu', 'address': 1, %s, 'readings': [
        {'quantity': 'air-temperature', 'at': 0, 'type': 'int16', 'scale': 0.1, 'unit': 'Cel'},
        {'quantity': 'relative-humidity', 'at': 1, 'type': 'uint16', 'scale': 0.1, 'unit': '%%'}]}
      """;

  @ParameterizedTest
  @CsvSource({"0, 4, 1", "1, 4, 2", "30001, 4, 30002", "40001, 3, 40002"})
  void countsRegistersFromTheBaseThatIsSaid(int base, int function, int start) {
    String asked =
        "'base': %d, 'function': %d, 'start': %d, 'count': 2".formatted(base, function, start);
    SourceMapping mapping = Mappings.source(REGISTERS.formatted(asked));

    assertThat(mapping.payload().modbus().orElseThrow().request())
        .contains(new ModbusRequest(1, function, 1, 2));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "'function': 4, 'start': 1, 'count': 2|base: is missing; say how the maker's sheet counts",
        "'base': 30000, 'function': 4, 'start': 1, 'count': 2|is not a way of counting registers",
        "'base': 40001, 'function': 4, 'start': 40001, 'count': 2|belongs to function 3",
        "'base': 0, 'function': 4, 'start': 30002, 'count': 2|looks like a number of the maker's",
        "'base': 1, 'function': 4, 'start': 0, 'count': 2|is below its base 1",
        "'base': 0, 'function': 6, 'start': 0, 'count': 2|is neither 3 nor 4",
        "'base': 0, 'function': 4, 'start': 0, 'count': 1|lies behind the registers read",
        "'base': 0, 'function': 4, 'start': 0|count: is missing; write how many registers"
      })
  void refusesRegistersThatAreNotSaidWhole(String asked, String said) {
    assertThat(faults(REGISTERS.formatted(asked)))
        .anySatisfy(each -> assertThat(each).contains(said));
  }

  @Test
  void asksForTheOrderOfWordsWhereANumberHasTwo() {
    assertThat(
            faults(
                REGISTERS
                    .formatted("'base': 0, 'function': 3, 'start': 0, 'count': 4")
                    .replace("'int16'", "'float32'")))
        .anySatisfy(each -> assertThat(each).contains("words").contains("high-first or low-first"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "'payload': 'json', 'count': 2|count \"2\": belongs to payload modbus-rtu",
        "'payload': 'json', 'layout': 'fixed'|belongs to payload hex",
        "'payload': 'json', 'records': []|belongs to payload senml",
        "'payload': 'senml', 'readings': []|has no place in payload senml",
        "'payload': 'senml'|records: is missing",
        "'payload': 'word'|presence: is missing",
        "'payload': 'hex'|layout: is missing",
        "'payload': 'hex', 'layout': 'mine'|is not a layout described in the docs",
        "'payload': 'hex', 'layout': 'tag byte 0x04 = T'|is not a layout described in the docs"
      })
  void refusesWordsThatBelongToAnotherForm(String words, String said) {
    assertThat(faults("{'source': 'a', %s}".formatted(words)))
        .anySatisfy(each -> assertThat(each).contains(said));
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
