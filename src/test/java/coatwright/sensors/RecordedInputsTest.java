package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.json.Json;
import coatwright.sensors.MappedPayload.HeldBack;
import coatwright.sensors.MappedPayload.Values;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Recorded raw inputs with the verdict a careful person would give: a believed value, a value held
 * back, a refusal. The inputs are made up after the faults real senders show.
 */
class RecordedInputsTest {
  /** Forms of payload that this version does not read; their inputs must be refused by name. */
  private static final Set<String> OF_A_LATER_VERSION =
      Set.of(
          "senml",
          "presence",
          "ble-raw",
          "ble-raw-mi",
          "modbus-input-1-2",
          "modbus-input-hundredths",
          "modbus-holding-0-1",
          "modbus-holding-t-first",
          "modbus-float-hw",
          "modbus-float-lw");

  private static final double CLOSE = 0.011;
  private static final Recorded RECORDED =
      new Recorded(
          MappingReader.readForRecordings(Setting.of(json(text("/sensors/profiles.json")))),
          Clock.fixed(Instant.parse("2026-03-14T09:30:00Z"), ZoneOffset.UTC));

  static Stream<JsonNode> inputsReadNow() {
    return inputs().filter(input -> !OF_A_LATER_VERSION.contains(profile(input)));
  }

  static Stream<JsonNode> inputsReadLater() {
    return inputs().filter(input -> OF_A_LATER_VERSION.contains(profile(input)));
  }

  @ParameterizedTest
  @MethodSource("inputsReadNow")
  void givesTheVerdictThatWasExpected(JsonNode input) {
    List<MappedPayload> verdicts = RECORDED.judge(input.toString());
    JsonNode expected = input.path("expected");
    String shown = input.path("id").asText() + " " + verdicts;
    if (expected.isArray() && input.path("transport").asText().equals("serial")) {
      assertThat(verdicts).as(shown).hasSize(expected.size());
      for (int i = 0; i < expected.size(); i++) {
        check(expected.get(i), List.of(verdicts.get(i)), shown);
      }
    } else if (expected.isArray()) {
      List<Values> accepted = verdicts.get(0).accepted();
      assertThat(accepted).as(shown).hasSize(expected.size());
      for (int i = 0; i < expected.size(); i++) {
        checkValues(expected.get(i), accepted.get(i), shown);
      }
    } else {
      check(expected, verdicts, shown);
    }
  }

  @ParameterizedTest
  @MethodSource("inputsReadLater")
  void refusesAFormOfALaterVersionByName(JsonNode input) {
    List<MappedPayload> verdicts = RECORDED.judge(input.toString());

    assertThat(verdicts).allSatisfy(verdict -> assertThat(verdict.accepted()).isEmpty());
    assertThat(verdicts.get(0).refused().get(0).reason())
        .contains("not in this version; use number, json, pattern or columns");
  }

  @Test
  void countsWhatItLeavesToALaterVersion() {
    Set<String> forms =
        inputsReadLater()
            .map(input -> json(text("/sensors/profiles.json")).path(profile(input)))
            .map(profile -> profile.path("payload").asText())
            .collect(Collectors.toCollection(TreeSet::new));

    assertThat(forms).containsExactly("hex", "modbus-rtu", "senml", "word");
    assertThat(inputsReadLater().count()).isEqualTo(23);
    assertThat(inputsReadNow().count()).isEqualTo(117);
  }

  private static void check(JsonNode expected, List<MappedPayload> verdicts, String shown) {
    List<Values> accepted = verdicts.stream().flatMap(v -> v.accepted().stream()).toList();
    List<HeldBack> held = verdicts.stream().flatMap(v -> v.heldBack().stream()).toList();
    List<Values> readings = accepted.stream().filter(Values::hasReading).toList();
    if (expected.has("quarantine")) {
      assertThat(readings).as(shown).isEmpty();
      assertThat(held).as(shown).isNotEmpty();
      assertThat(held.get(0).reason()).as(shown).isNotBlank();
      checkHeld(expected.path("value"), held.get(0), shown);
      return;
    }
    assertThat(held).as(shown).isEmpty();
    if (expected.has("reject")) {
      assertThat(readings).as(shown).isEmpty();
      assertThat(verdicts).as(shown).allSatisfy(v -> assertThat(v.refused()).isNotEmpty());
    } else {
      assertThat(readings.size() + (expected.has("battery") ? 1 : 0)).as(shown).isPositive();
      checkValues(expected, accepted.get(0), shown);
    }
    if (expected.has("battery")) {
      checkBattery(expected.path("battery"), accepted.get(0), shown);
    }
    List<String> fields = new ArrayList<>();
    expected.path("reject_fields").fieldNames().forEachRemaining(fields::add);
    List<String> refused =
        verdicts.stream()
            .flatMap(v -> v.refused().stream())
            .flatMap(no -> no.field().stream())
            .toList();
    assertThat(refused)
        .as(shown)
        .containsAll(
            fields.stream().map(f -> f.equals("rh_pct") ? "rhPct" : "temperatureC").toList());
  }

  private static void checkHeld(JsonNode expected, HeldBack held, String shown) {
    if (expected.has("temperature_C")) {
      assertThat(held.temperatureC().orElseThrow())
          .as(shown)
          .isCloseTo(expected.path("temperature_C").asDouble(), within(CLOSE));
    }
  }

  private static void checkValues(JsonNode expected, Values values, String shown) {
    if (expected.has("temperature_C")) {
      double found =
          values.temperatureC().isPresent()
              ? values.temperatureC().getAsDouble()
              : values.surfaceTemperatureC().orElseThrow();
      assertThat(found)
          .as(shown)
          .isCloseTo(expected.path("temperature_C").asDouble(), within(CLOSE));
    } else {
      assertThat(values.temperatureC()).as(shown).isEmpty();
    }
    if (expected.has("rh_pct")) {
      assertThat(values.rhPct().orElseThrow())
          .as(shown)
          .isCloseTo(expected.path("rh_pct").asDouble(), within(CLOSE));
    } else {
      assertThat(values.rhPct()).as(shown).isEmpty();
    }
    if (expected.has("sensor")) {
      assertThat(values.sensor()).as(shown).contains(expected.path("sensor").asText());
    }
    if (expected.has("time")) {
      assertThat(values.time()).as(shown).contains(Instant.parse(expected.path("time").asText()));
    }
    expected
        .path("flags")
        .forEach(flag -> assertThat(values.flags()).as(shown).contains(flag.asText()));
  }

  private static void checkBattery(JsonNode expected, Values values, String shown) {
    var battery = values.battery().orElseThrow();
    if (expected.has("fraction")) {
      assertThat(battery.fraction().orElseThrow())
          .as(shown)
          .isCloseTo(expected.path("fraction").asDouble(), within(1e-9));
    }
    if (expected.has("voltage_V")) {
      assertThat(battery.voltageV().orElseThrow())
          .as(shown)
          .isCloseTo(expected.path("voltage_V").asDouble(), within(1e-9));
    }
    if (expected.has("low")) {
      assertThat(battery.low()).as(shown).contains(expected.path("low").asBoolean());
    }
  }

  private static Stream<JsonNode> inputs() {
    return text("/sensors/corpus.jsonl").lines().map(RecordedInputsTest::json);
  }

  private static String profile(JsonNode input) {
    return input.path("profile").asText();
  }

  private static JsonNode json(String text) {
    try {
      return Json.mapper().readTree(text);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String text(String resource) {
    try (var in = Objects.requireNonNull(RecordedInputsTest.class.getResourceAsStream(resource))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
