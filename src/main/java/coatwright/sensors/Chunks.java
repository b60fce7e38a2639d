package coatwright.sensors;

import coatwright.quantity.RefusedInput;
import coatwright.sensors.serial.LineAssembler;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The bytes of a recording, as they came: in one piece, or in pieces with pauses between them. They
 * stand in {@code raw}, in {@code hex} as digits, or piece by piece in {@code chunks}: texts, or
 * objects of a text ({@code raw}) or digits ({@code hex}) and the pause before it ({@code after_s}
 * or {@code after_ms}) or its moment ({@code at_s} or {@code at_ms}).
 */
record Chunks(List<Chunk> chunks) {
  /** A device that falls silent for so long in the middle of a line will not end it. */
  private static final Duration REST_DROPPED_AFTER = Duration.ofSeconds(2);

  private static final List<String> TEXTS = List.of("raw", "text", "data", "bytes");
  private static final Map<String, Double> PAUSES =
      Map.ofEntries(
          Map.entry("after_s", 1e3),
          Map.entry("after_ms", 1.0),
          Map.entry("pause_s", 1e3),
          Map.entry("pause_ms", 1.0),
          Map.entry("delay_s", 1e3),
          Map.entry("delay_ms", 1.0),
          Map.entry("wait_s", 1e3),
          Map.entry("wait_ms", 1.0),
          Map.entry("gap_s", 1e3),
          Map.entry("gap_ms", 1.0));
  private static final Map<String, Double> MOMENTS =
      Map.of("at_s", 1e3, "at_ms", 1.0, "t_s", 1e3, "t_ms", 1.0);

  /** A piece and the pause before it. */
  private record Chunk(String octets, Duration pause) {}

  Chunks {
    chunks = List.copyOf(chunks);
  }

  /**
   * @throws RefusedInput when the recording has no bytes
   */
  static Chunks of(JsonNode line) {
    List<Chunk> chunks = new ArrayList<>();
    Duration last = Duration.ZERO;
    for (JsonNode piece : line.path("chunks")) {
      Optional<String> octets = octets(piece);
      if (octets.isPresent()) {
        Optional<Duration> moment = duration(piece, MOMENTS);
        Duration pause =
            moment.isPresent()
                ? moment.get().minus(last)
                : duration(piece, PAUSES).orElse(Duration.ZERO);
        last = moment.orElse(last);
        chunks.add(new Chunk(octets.get(), pause));
      }
    }
    if (chunks.isEmpty()) {
      String whole =
          octets(line)
              .orElseThrow(
                  () ->
                      RefusedInput.of(
                          "recorded line", "has no raw text", "give id, profile and raw"));
      chunks.add(new Chunk(whole, Duration.ZERO));
    }
    return new Chunks(chunks);
  }

  private static Optional<String> octets(JsonNode node) {
    if (node.isTextual()) {
      return Optional.of(octets(node.textValue()));
    }
    if (node.path("hex").isTextual()) {
      Optional<List<Integer>> bytes = HexForm.bytes(node.path("hex").textValue());
      if (bytes.isPresent()) {
        return Optional.of(new String(ofBytes(bytes.get()), StandardCharsets.ISO_8859_1));
      }
    }
    return TEXTS.stream()
        .map(node::path)
        .filter(JsonNode::isTextual)
        .map(text -> octets(text.textValue()))
        .findFirst();
  }

  /** Numbers from 0 to 255 as bytes. */
  static byte[] ofBytes(List<Integer> numbers) {
    byte[] bytes = new byte[numbers.size()];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = numbers.get(i).byteValue();
    }
    return bytes;
  }

  /** Characters up to 255 are bytes; a recording with others was kept as text. */
  private static String octets(String raw) {
    boolean bytes = raw.chars().allMatch(c -> c <= 0xFF);
    return bytes
        ? raw
        : new String(raw.getBytes(StandardCharsets.UTF_8), StandardCharsets.ISO_8859_1);
  }

  private static Optional<Duration> duration(JsonNode piece, Map<String, Double> names) {
    return names.entrySet().stream()
        .filter(each -> piece.path(each.getKey()).isNumber())
        .map(
            each ->
                Duration.ofMillis(
                    Math.round(piece.path(each.getKey()).asDouble() * each.getValue())))
        .findFirst();
  }

  /** All bytes, one character each. */
  String octets() {
    StringBuilder all = new StringBuilder();
    chunks.forEach(chunk -> all.append(chunk.octets()));
    return all.toString();
  }

  /** The lines they complete. */
  List<LineAssembler.Line> lines() {
    LineAssembler assembler = new LineAssembler(false);
    List<LineAssembler.Line> lines = new ArrayList<>();
    for (Chunk chunk : chunks) {
      if (chunk.pause().compareTo(REST_DROPPED_AFTER) > 0) {
        assembler.dropRest();
      }
      lines.addAll(assembler.take(chunk.octets()));
    }
    return lines;
  }
}
