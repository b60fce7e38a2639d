package coatwright.sensors.fuzz;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import coatwright.json.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * No payload breaks a reader, and no number is invented. The inputs are fixed: recorded ones, what
 * the fuzzer once found, and changes to both by a seeded chance. The time limit is against a hang,
 * not a measure of speed.
 */
class PayloadFuzzTest {
  private static final int ROUNDS = 6;
  private static final int MOST_CHANGES = 4;
  private static final int EVERY = 7;
  private static final String SPICE = "0123456789.,-+eE{}[]:;\"\\/ %\n\t\0\u00ff";

  @Test
  @Timeout(value = 5, unit = TimeUnit.MINUTES)
  void readsEveryRecordedPayloadByEveryMapping() {
    List<byte[]> payloads = recorded();
    assertThat(payloads).hasSizeGreaterThan(300);
    for (byte[] payload : payloads) {
      for (int mapping = 0; mapping < PayloadFuzz.mappingCount(); mapping++) {
        assertThatCode(harmless(mapping, payload)).doesNotThrowAnyException();
      }
    }
  }

  @Test
  @Timeout(value = 5, unit = TimeUnit.MINUTES)
  void readsWhatTheFuzzerOnceFound() {
    List<String> seeds =
        text("/sensors/fuzz/seeds.txt").lines().filter(s -> !s.startsWith("#")).toList();
    assertThat(seeds).isNotEmpty();
    for (String seed : seeds) {
      assertThatCode(() -> PayloadFuzz.fuzzerTestOneInput(Base64.getDecoder().decode(seed)))
          .as(seed)
          .doesNotThrowAnyException();
    }
  }

  @Test
  @Timeout(value = 5, unit = TimeUnit.MINUTES)
  void readsRecordedPayloadsThatWereDamagedOnTheWay() {
    Random chance = new Random(20261125);
    for (byte[] payload : recorded()) {
      for (int round = 0; round < ROUNDS; round++) {
        byte[] damaged = damaged(payload, chance);
        for (int m = chance.nextInt(EVERY); m < PayloadFuzz.mappingCount(); m += EVERY) {
          assertThatCode(harmless(m, damaged))
              .as(new String(damaged, StandardCharsets.ISO_8859_1))
              .doesNotThrowAnyException();
        }
      }
    }
  }

  @Property(tries = 2000, seed = "20261125")
  void readsAnyBytes(@ForAll @Size(max = 200) byte[] input) {
    assertThatCode(() -> PayloadFuzz.fuzzerTestOneInput(input)).doesNotThrowAnyException();
  }

  private static org.assertj.core.api.ThrowableAssert.ThrowingCallable harmless(
      int mapping, byte[] payload) {
    byte[] input = new byte[payload.length + 1];
    input[0] = (byte) mapping;
    System.arraycopy(payload, 0, input, 1, payload.length);
    return () -> PayloadFuzz.fuzzerTestOneInput(input);
  }

  private static byte[] damaged(byte[] payload, Random chance) {
    List<Byte> bytes = new ArrayList<>();
    for (byte each : payload) {
      bytes.add(each);
    }
    int changes = 1 + chance.nextInt(MOST_CHANGES);
    for (int i = 0; i < changes; i++) {
      int at = bytes.isEmpty() ? 0 : chance.nextInt(bytes.size());
      byte spice = (byte) SPICE.charAt(chance.nextInt(SPICE.length()));
      switch (chance.nextInt(4)) {
        case 0 -> bytes.add(at, spice);
        case 1 -> {
          if (!bytes.isEmpty()) {
            bytes.remove(at);
          }
        }
        case 2 -> {
          if (!bytes.isEmpty()) {
            bytes.set(at, spice);
          }
        }
        default ->
            bytes.addAll(at, List.copyOf(bytes.subList(at, Math.min(bytes.size(), at + 20))));
      }
    }
    byte[] damaged = new byte[bytes.size()];
    for (int i = 0; i < damaged.length; i++) {
      damaged[i] = bytes.get(i);
    }
    return damaged;
  }

  private static List<byte[]> recorded() {
    List<byte[]> payloads = new ArrayList<>();
    for (String resource : List.of("/sensors/corpus.jsonl", "/sensors/variants.jsonl")) {
      text(resource)
          .lines()
          .map(PayloadFuzzTest::json)
          .forEach(
              line -> {
                if (line.path("raw").isTextual()) {
                  payloads.add(line.path("raw").textValue().getBytes(StandardCharsets.ISO_8859_1));
                } else if (line.path("hex").isTextual()) {
                  payloads.add(
                      HexFormat.of().parseHex(line.path("hex").textValue().replace(" ", "")));
                }
              });
    }
    return payloads;
  }

  private static JsonNode json(String line) {
    try {
      return Json.mapper().readTree(line);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String text(String resource) {
    try (var in = Objects.requireNonNull(PayloadFuzzTest.class.getResourceAsStream(resource))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
