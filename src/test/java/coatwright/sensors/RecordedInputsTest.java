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
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Recorded raw inputs with the verdict a careful person would give: a believed value, a value held
 * back, a refusal. The inputs are made up after the faults real senders show.
 */
class RecordedInputsTest {
  private static final double CLOSE = 0.011;
  private static final Recorded CORPUS = reading("/sensors/profiles.json");
  private static final Recorded VARIANTS = reading("/sensors/variants-profiles.json");

  private static Recorded reading(String profiles) {
    MappingReader.RecordedMappings mappings =
        MappingReader.readForRecordings(Setting.of(json(text(profiles))));
    assertThat(mappings.refused()).isEmpty();
    return new Recorded(
        mappings, Clock.fixed(Instant.parse("2026-03-14T09:30:00Z"), ZoneOffset.UTC));
  }

  @ParameterizedTest
  @MethodSource("inputs")
  void givesTheVerdictThatWasExpected(JsonNode input) {
    judge(CORPUS, input);
  }

  @ParameterizedTest
  @MethodSource("variants")
  void givesTheVerdictThatWasExpectedOnOtherInputsOfTheseKinds(JsonNode input) {
    judge(VARIANTS, input);
  }

  private static void judge(Recorded recorded, JsonNode input) {
    List<MappedPayload> verdicts = recorded.judge(input.toString());
    JsonNode expected = input.path("expected");
    String shown = input.path("id").asText() + " " + verdicts;
    if (expected.isArray()) {
      assertThat(verdicts).as(shown).hasSize(expected.size());
      for (int i = 0; i < expected.size(); i++) {
        check(expected.get(i), List.of(verdicts.get(i)), shown);
      }
    } else {
      check(expected, verdicts, shown);
    }
  }

  @Test
  void readsAllOfThem() {
    assertThat(inputs().count()).isEqualTo(140);
    assertThat(variants().count()).isGreaterThan(190);
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
      assertThat(accepted).as(shown).hasSize(1);
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

  static Stream<JsonNode> variants() {
    return text("/sensors/variants.jsonl").lines().map(RecordedInputsTest::json);
  }

  static Stream<JsonNode> inputs() {
    return text("/sensors/corpus.jsonl").lines().map(RecordedInputsTest::json);
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
