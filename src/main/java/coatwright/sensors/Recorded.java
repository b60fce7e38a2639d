package coatwright.sensors;

import coatwright.json.Json;
import coatwright.quantity.RefusedInput;
import coatwright.sensors.MappedPayload.HeldBack;
import coatwright.sensors.MappedPayload.Refused;
import coatwright.sensors.MappedPayload.Values;
import coatwright.sensors.serial.LineAssembler;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads recorded inputs, each by itself, as {@code listen --mappings FILE --from FILE.jsonl} does.
 *
 * <p>One JSON object a line: {@code id}, {@code profile} (the mapping's name), {@code raw} (the
 * bytes, one character each), and where known {@code transport}, {@code topic}, {@code
 * received_at}, {@code flags.retain} and {@code context}, which tells in plain phrases what came
 * before (see {@link ToldBefore}). A serial recording gives one verdict a line of its stream, any
 * other one verdict.
 */
public final class Recorded {
  private static final String ALTERNATING = "two alternating populations";

  private final Map<String, SourceMapping> usable;
  private final Map<String, RefusedInput> refused;
  private final Clock clock;

  /**
   * @param clock gives the arrival where a recording has none
   */
  public Recorded(MappingReader.RecordedMappings mappings, Clock clock) {
    this.usable = mappings.usable();
    this.refused = mappings.refused();
    this.clock = clock;
  }

  /**
   * The verdicts on one recorded line.
   *
   * @throws RefusedInput when the line is not such an object
   */
  public List<MappedPayload> judge(String jsonLine) {
    JsonNode line;
    try {
      line = Json.mapper().readTree(jsonLine);
    } catch (JsonProcessingException e) {
      throw RefusedInput.of("recorded line", "is not JSON", "write one object a line");
    }
    if (!line.isObject() || !line.path("raw").isTextual()) {
      throw RefusedInput.of("recorded line", "has no raw text", "give id, profile and raw");
    }
    String id = line.path("id").asText("");
    String profile = line.path("profile").asText("");
    SourceMapping mapping = usable.get(profile);
    if (mapping == null) {
      return List.of(only(id, noMapping(profile)));
    }
    return judge(line, mapping).stream().map(verdict -> verdict.named(id)).toList();
  }

  private String noMapping(String profile) {
    RefusedInput faults = refused.get(profile);
    return faults == null
        ? "no mapping is named \"%s\"".formatted(profile)
        : faults.faults().get(0).sentence();
  }

  private static MappedPayload only(String id, String reason) {
    return new MappedPayload(
        id, List.of(), List.of(), List.of(new Refused(Optional.empty(), reason)));
  }

  private List<MappedPayload> judge(JsonNode line, SourceMapping mapping) {
    Instant arrivedAt = arrival(line);
    String topic = line.path("topic").asText("");
    ToldBefore before = new ToldBefore(line.path("context"), arrivedAt);
    Neighbours neighbours = new Neighbours();
    Intake intake = new Intake(before.withRoom(mapping), neighbours);
    boolean stream = line.path("transport").asText("").equals("serial");
    RawReading.Way way = stream ? RawReading.Way.LINE : RawReading.Way.MESSAGE;
    if (line.path("flags").path("retain").asBoolean(false)) {
      way = RawReading.Way.RETAINED;
    }
    RawReading whole = RawReading.of(topic, bytes(line.path("raw").textValue()), arrivedAt, way);
    before.tell(intake, neighbours, whole);
    return stream
        ? lines(intake, whole, before.partialFirstLine())
        : List.of(intake.take(whole).verdict());
  }

  private Instant arrival(JsonNode line) {
    try {
      return line.has("received_at")
          ? Instant.parse(line.path("received_at").asText())
          : clock.instant();
    } catch (DateTimeException e) {
      throw RefusedInput.of(
          "received_at \"" + line.path("received_at").asText() + "\"",
          "is not a time",
          "write it like 2026-03-14T09:30:00Z");
    }
  }

  /** Characters up to 255 are bytes; a recording with others was kept as text. */
  private static byte[] bytes(String raw) {
    boolean octets = raw.chars().allMatch(c -> c <= 0xFF);
    return raw.getBytes(octets ? StandardCharsets.ISO_8859_1 : StandardCharsets.UTF_8);
  }

  private static List<MappedPayload> lines(
      Intake intake, RawReading whole, boolean partialFirstLine) {
    LineAssembler assembler = new LineAssembler(false);
    List<MappedPayload> verdicts = new ArrayList<>();
    boolean first = partialFirstLine;
    for (LineAssembler.Line line : assembler.take(whole.octets())) {
      if (line.overlong()) {
        verdicts.add(
            only(
                "",
                "line longer than %d bytes: no line end for a long time; wrong speed?"
                    .formatted(LineAssembler.LONGEST)));
      } else if (first) {
        verdicts.add(only("", "first line after open is partial"));
      } else {
        RawReading raw =
            new RawReading(whole.channel(), line.octets(), whole.arrivedAt(), whole.way());
        verdicts.add(intake.take(raw).verdict());
      }
      first = false;
    }
    if (verdicts.isEmpty()) {
      verdicts.add(only("", "unfinished line: no line end came"));
    }
    return holdBackIfTwoStreams(verdicts);
  }

  /** A recording is judged as a whole: if it proves to be two streams, none of it is believed. */
  private static List<MappedPayload> holdBackIfTwoStreams(List<MappedPayload> verdicts) {
    Optional<String> reason =
        verdicts.stream()
            .flatMap(verdict -> verdict.heldBack().stream())
            .map(HeldBack::reason)
            .filter(each -> each.startsWith(ALTERNATING))
            .findFirst();
    return reason.isEmpty()
        ? verdicts
        : verdicts.stream().map(verdict -> held(verdict, reason.get())).toList();
  }

  private static MappedPayload held(MappedPayload verdict, String reason) {
    List<HeldBack> held = new ArrayList<>();
    for (Values values : verdict.accepted()) {
      held.add(
          new HeldBack(
              values.sensor(),
              values.temperatureC(),
              values.rhPct(),
              values.surfaceTemperatureC(),
              values.battery(),
              values.time(),
              values.flags(),
              reason));
    }
    held.addAll(verdict.heldBack());
    return new MappedPayload(verdict.id(), List.of(), held, verdict.refused());
  }
}
