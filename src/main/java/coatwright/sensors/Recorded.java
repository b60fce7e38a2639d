package coatwright.sensors;

import coatwright.json.Json;
import coatwright.quantity.RefusedInput;
import coatwright.sensors.MappedPayload.HeldBack;
import coatwright.sensors.MappedPayload.Refused;
import coatwright.sensors.MappedPayload.Values;
import coatwright.sensors.serial.LineAssembler;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Reads recorded inputs, each by itself, as {@code listen --mappings FILE --from FILE.jsonl} does.
 *
 * <p>One JSON object a line: {@code id}, {@code profile} (the mapping's name), {@code raw} (the
 * bytes, one character each; {@code hex} or {@code chunks} may stand for it, see {@link Chunks}),
 * and where known {@code transport}, {@code topic}, {@code received_at}, {@code charset}, {@code
 * flags.retain} and {@code context}, which tells in plain phrases what came before (see {@link
 * ToldBefore}). A serial recording gives one verdict a line of its stream, one of several sensors
 * one verdict a sensor, any other one verdict.
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
    if (!line.isObject()) {
      throw RefusedInput.of("recorded line", "is not an object", "give id, profile and raw");
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

  private List<MappedPayload> judge(JsonNode line, SourceMapping profile) {
    Instant arrivedAt = arrival(line);
    String topic = line.path("topic").asText("");
    Chunks chunks = Chunks.of(line);
    SourceMapping mapping = inItsCharset(line, profile);
    ToldBefore before = new ToldBefore(line.path("context"), arrivedAt);
    Neighbours neighbours = new Neighbours();
    Intake intake = new Intake(before.withRoom(mapping), neighbours);
    boolean serial = line.path("transport").asText("").equals("serial");
    RawReading.Way way = serial ? RawReading.Way.LINE : RawReading.Way.MESSAGE;
    if (isRetained(line.path("flags"))) {
      way = RawReading.Way.RETAINED;
    }
    RawReading whole = new RawReading(topic, chunks.octets(), arrivedAt, way);
    before.tell(intake, neighbours, whole);
    boolean lines = serial && !mapping.payload().kind().binary();
    return lines
        ? lines(intake, whole, chunks, before.partialFirstLine())
        : intake.take(whole).bySensor();
  }

  /** The flags of a delivery, written as named values or as a list of those that are set. */
  private static boolean isRetained(JsonNode flags) {
    boolean listed = false;
    for (JsonNode each : flags) {
      listed |= flags.isArray() && each.asText("").startsWith("retain");
    }
    return listed
        || flags.path("retain").asBoolean(false)
        || flags.path("retained").asBoolean(false);
  }

  /** A recording may name the charset of its bytes; a remark about them is for the reader. */
  private static SourceMapping inItsCharset(JsonNode line, SourceMapping mapping) {
    String name = line.path("charset").asText("");
    try {
      return name.matches("[A-Za-z0-9._:-]+") && Charset.isSupported(name)
          ? mapping.withPayload(mapping.payload().in(Charset.forName(name)))
          : mapping;
    } catch (IllegalCharsetNameException e) {
      return mapping;
    }
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

  private static List<MappedPayload> lines(
      Intake intake, RawReading whole, Chunks chunks, boolean partialFirstLine) {
    List<MappedPayload> verdicts = new ArrayList<>();
    boolean first = partialFirstLine;
    for (LineAssembler.Line line : chunks.lines()) {
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
        verdicts.addAll(intake.take(raw).bySensor());
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
            .findFirst()
            .or(() -> toAndFro(verdicts));
    return reason.isEmpty()
        ? verdicts
        : verdicts.stream().map(verdict -> held(verdict, reason.get())).toList();
  }

  /** Every line of an untagged stream goes back to where the one before the last was. */
  private static Optional<String> toAndFro(List<MappedPayload> verdicts) {
    List<History.Pair> pairs = new ArrayList<>();
    for (MappedPayload verdict : verdicts) {
      verdict.accepted().stream()
          .filter(values -> values.sensor().isEmpty())
          .forEach(values -> pair(values.temperatureC(), values.rhPct()).ifPresent(pairs::add));
      verdict.heldBack().stream()
          .filter(values -> values.sensor().isEmpty())
          .forEach(values -> pair(values.temperatureC(), values.rhPct()).ifPresent(pairs::add));
    }
    boolean always = pairs.size() >= 3;
    for (int i = 2; always && i < pairs.size(); i++) {
      always = StepRules.alternates(pairs.get(i - 2), pairs.get(i - 1), pairs.get(i));
    }
    return always
        ? Optional.of(
            ALTERNATING + " on an untagged stream: two sensors or two programs; give each a tag")
        : Optional.empty();
  }

  private static Optional<History.Pair> pair(OptionalDouble t, OptionalDouble rh) {
    return t.isPresent() && rh.isPresent()
        ? Optional.of(new History.Pair(t.getAsDouble(), rh.getAsDouble(), Instant.EPOCH, false))
        : Optional.empty();
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
