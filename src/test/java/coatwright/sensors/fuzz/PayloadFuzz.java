package coatwright.sensors.fuzz;

import coatwright.json.Json;
import coatwright.sensors.Intake;
import coatwright.sensors.MappedPayload;
import coatwright.sensors.MappingReader;
import coatwright.sensors.RawReading;
import coatwright.sensors.Setting;
import coatwright.sensors.SourceMapping;
import coatwright.sensors.proposal.Origin;
import coatwright.sensors.proposal.Overheard;
import coatwright.sensors.proposal.Proposer;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a coverage-guided fuzzer calls, thousands of times a second, with bytes of its own
 * invention: the first chooses a mapping, the rest is the payload. Nothing may be thrown, and no
 * number may be believed that does not stand in the payload. {@code src/bench/fuzz} runs it for as
 * long as wanted; the seeds are run by a test.
 */
public final class PayloadFuzz {
  private static final Instant AT = Instant.parse("2026-03-14T09:30:00Z");
  private static final List<SourceMapping> MAPPINGS = mappings();
  private static final boolean TIMED = Boolean.getBoolean("coatwright.fuzz.timed");
  private static final long SLOW_NANOS = 50_000_000;

  private PayloadFuzz() {}

  /** One input of the fuzzer. */
  public static void fuzzerTestOneInput(byte[] input) {
    if (input.length == 0) {
      return;
    }
    SourceMapping mapping = MAPPINGS.get((input[0] & 0xFF) % MAPPINGS.size());
    byte[] payload = Arrays.copyOfRange(input, 1, input.length);
    check(mapping, payload);
    if (TIMED && quickestNanos(mapping, payload) > SLOW_NANOS) {
      throw new AssertionError("slower than 50 ms, three times over: " + mapping.source());
    }
  }

  /** Only the fuzzer's own long runs look at the clock; a build never fails for being slow. */
  private static long quickestNanos(SourceMapping mapping, byte[] payload) {
    long quickest = Long.MAX_VALUE;
    for (int i = 0; i < 3 && quickest > SLOW_NANOS; i++) {
      long from = System.nanoTime();
      Object unused =
          Intake.alone(mapping)
              .take(RawReading.of("works/hall/t", payload, AT, RawReading.Way.LINE));
      quickest = Math.min(quickest, System.nanoTime() - from);
    }
    return quickest;
  }

  static int mappingCount() {
    return MAPPINGS.size();
  }

  /** Reads the payload and, three times over, what a sender may repeat. */
  private static void check(SourceMapping mapping, byte[] payload) {
    Intake intake = Intake.alone(mapping);
    for (int i = 0; i < 3; i++) {
      RawReading raw =
          RawReading.of("works/hall/t", payload, AT.plusSeconds(60L * i), RawReading.Way.LINE);
      MappedPayload verdict = intake.take(raw).verdict();
      for (MappedPayload.Values values : verdict.accepted()) {
        believe(mapping, payload, values.temperatureC());
        believe(mapping, payload, values.rhPct());
        believe(mapping, payload, values.surfaceTemperatureC());
      }
      if (verdict.accepted().isEmpty() && verdict.reason().isEmpty()) {
        throw new AssertionError("refused without a reason by " + mapping.source());
      }
    }
    if (!mapping.equals(MAPPINGS.get(0))) {
      return;
    }
    Object unused =
        new Proposer(new Origin.File(), "new", Optional.of("hall"))
            .propose(List.of(new Overheard("a", new String(payload, StandardCharsets.ISO_8859_1))));
  }

  private static void believe(SourceMapping mapping, byte[] payload, OptionalDouble value) {
    if (value.isPresent() && !SentNumbers.hold(payload, value.getAsDouble())) {
      throw new AssertionError(
          "%s believes %s, which does not stand in %s"
              .formatted(
                  mapping.source(),
                  value.getAsDouble(),
                  new String(payload, StandardCharsets.ISO_8859_1)));
    }
  }

  private static List<SourceMapping> mappings() {
    List<SourceMapping> mappings = new ArrayList<>();
    for (String resource : List.of("/sensors/profiles.json", "/sensors/variants-profiles.json")) {
      MappingReader.RecordedMappings read =
          MappingReader.readForRecordings(Setting.of(json(resource)));
      read.usable().keySet().stream().sorted().map(read.usable()::get).forEach(mappings::add);
    }
    return List.copyOf(mappings);
  }

  private static JsonNode json(String resource) {
    try (var in = Objects.requireNonNull(PayloadFuzz.class.getResourceAsStream(resource))) {
      return Json.mapper().readTree(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
