package coatwright.web;

import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Overlaps;
import coatwright.journal.PartPath;
import coatwright.json.Json;
import coatwright.outlook.NextCoat;
import coatwright.outlook.Outlook;
import coatwright.quantity.Fault;
import coatwright.quantity.RefusedInput;
import coatwright.web.Answers.EntryView;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The routes that write. A body is the command's option names with text, each value with its unit;
 * the answer is the written entry.
 */
final class Writes {
  /** A form is a few lines of text. */
  static final int LONGEST_BODY_BYTES = 64 * 1024;

  /** A coat laid at most this long ago is answered with the air it was laid in. */
  private static final Duration JUST_LAID = Duration.ofMinutes(15);

  private static final Logger LOG = LoggerFactory.getLogger(Writes.class);

  private final WebRooms rooms;
  private final ShopJson json;
  private final SentOnce sentOnce = new SentOnce();

  Writes(WebRooms rooms, ShopJson json) {
    this.rooms = rooms;
    this.json = json;
  }

  void addTo(RoutesConfig routes) {
    String api = WebServer.API;
    routes.post(api + "/pieces", ctx -> write(ctx, rooms.forms()::piece));
    routes.post(api + "/parts", ctx -> write(ctx, rooms.forms()::part));
    routes.post(api + "/jars", ctx -> write(ctx, rooms.forms()::jar));
    routes.post(api + "/coats", ctx -> write(ctx, rooms.forms()::coat));
    routes.post(api + "/notes", ctx -> write(ctx, rooms.forms()::note));
    routes.post(api + "/strikes", ctx -> write(ctx, rooms.forms()::strike));
    routes.post(api + "/calibrations", this::calibration);
    routes.post(api + "/outlook", this::outlook);
  }

  private void write(Context ctx, Function<Map<String, String>, List<Entry>> form) {
    String body = body(ctx);
    Map<String, String> words = words(body);
    String answer =
        sentOnce.answer(
            Optional.ofNullable(ctx.header("Idempotency-Key")),
            ctx.path() + "\n" + body,
            () -> json.line(written(form.apply(words))));
    ctx.status(201).contentType("application/json; charset=utf-8").result(answer);
  }

  private void calibration(Context ctx) {
    String body = body(ctx);
    Map<String, String> words = words(body);
    String answer =
        sentOnce.answer(
            Optional.ofNullable(ctx.header("Idempotency-Key")),
            ctx.path() + "\n" + body,
            () -> json.line(new CalibrationViews(rooms).written(rooms.saltBook().write(words))));
    ctx.status(201).contentType("application/json; charset=utf-8").result(answer);
  }

  private EntryView written(List<Entry> entries) {
    List<EntryView> views = entries.stream().map(EntryView::of).toList();
    if (views.isEmpty()) {
      throw new IllegalStateException("a form was taken and nothing was written");
    }
    return views
        .get(0)
        .with(
            airAt(entries.get(0)),
            overlaps(entries),
            views.size() > 1 ? Optional.of(views) : Optional.empty());
  }

  /** A coat that cannot be as written is kept, and told at once, while it is easily put right. */
  private Optional<String> overlaps(List<Entry> entries) {
    List<String> sentences =
        entries.stream()
            .filter(entry -> entry.body() instanceof Coat)
            .flatMap(entry -> Overlaps.sentence(rooms.journal(), entry).stream())
            .toList();
    return sentences.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", sentences));
  }

  /**
   * The air a coat was just laid in. The coat is on paper by now, so trouble here must not sound
   * like a coat that was lost.
   */
  private Optional<Outlook> airAt(Entry entry) {
    Instant longAgo = rooms.clock().instant().minus(JUST_LAID);
    if (!(entry.body() instanceof Coat coat) || coat.start().isBefore(longAgo)) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          rooms.outlooks().ofPart(NextCoat.on(coat.part(), coat.room()), coat.start()));
    } catch (RuntimeException unanswered) {
      LOG.warn("coat {} is written, but its air could not be reckoned", entry.id(), unanswered);
      return Optional.empty();
    }
  }

  private void outlook(Context ctx) {
    Map<String, String> words = words(body(ctx));
    Outlook answer =
        words.containsKey("part")
            ? ofPart(words)
            : rooms.outlooks().of(rooms.outlookForm().apply(words, rooms.finishes()));
    ctx.contentType("application/json; charset=utf-8").result(json.line(answer));
  }

  private Outlook ofPart(Map<String, String> words) {
    List<Fault> faults = new ArrayList<>();
    for (String key : words.keySet()) {
      if (!Set.of("part", "room", "jar").contains(key)) {
        faults.add(
            Fault.of(
                key + " \"" + words.get(key) + "\"",
                "with a part, the coat comes from its jar and the air from the room",
                "leave " + key + " out, or describe the coat without part"));
      }
    }
    if (!faults.isEmpty()) {
      throw new RefusedInput(faults);
    }
    Optional<String> room = Optional.ofNullable(words.get("room"));
    room.filter(name -> !rooms.climate().rooms().contains(name))
        .ifPresent(
            name -> {
              throw Unknown.of("room", name, rooms.climate().rooms());
            });
    PartPath part = PartPath.parse(words.getOrDefault("part", ""));
    Optional<String> jar = Optional.ofNullable(words.get("jar"));
    return rooms.outlooks().ofPart(new NextCoat(part, room, jar), rooms.clock().instant());
  }

  private static String body(Context ctx) {
    try {
      byte[] bytes = ctx.bodyInputStream().readNBytes(LONGEST_BODY_BYTES + 1);
      if (bytes.length > LONGEST_BODY_BYTES) {
        throw new Problem.Thrown(
            Problem.of(
                413,
                "too-long",
                "Too long",
                "a form holds at most " + LONGEST_BODY_BYTES / 1024 + " KiB; send less"));
      }
      return new String(bytes, java.nio.charset.StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("a form broke off while it was being sent", e);
    }
  }

  private static Map<String, String> words(String body) {
    JsonNode tree;
    try {
      tree = Json.mapper().readTree(body);
    } catch (JsonProcessingException unreadable) {
      throw RefusedInput.of(
          "the body",
          "it cannot be read as JSON: " + unreadable.getOriginalMessage(),
          "send one object such as {\"part\": \"cabinet/left-door\"}");
    }
    if (tree == null || !tree.isObject()) {
      throw RefusedInput.of(
          "the body",
          "a form is one JSON object",
          "send one such as {\"part\": \"cabinet/left-door\"}");
    }
    Map<String, String> words = new LinkedHashMap<>();
    List<Fault> faults = new ArrayList<>();
    tree.properties()
        .forEach(
            field -> {
              JsonNode value = field.getValue();
              if (value.isTextual() || value.isBoolean()) {
                words.put(field.getKey(), value.asText());
              } else {
                faults.add(
                    Fault.of(
                        field.getKey() + " " + value,
                        "every value is text with its unit",
                        "write it in quotes, for example \"20min\" or \"27C\""));
              }
            });
    if (!faults.isEmpty()) {
      throw new RefusedInput(faults);
    }
    return words;
  }
}
