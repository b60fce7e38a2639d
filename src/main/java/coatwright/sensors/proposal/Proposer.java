package coatwright.sensors.proposal;

import coatwright.json.Json;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.StrictNumber;
import coatwright.sensors.Intake;
import coatwright.sensors.MappedPayload;
import coatwright.sensors.MappingReader;
import coatwright.sensors.RawReading;
import coatwright.sensors.Setting;
import coatwright.sensors.SourceMapping;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Makes a proposal of what was overheard: which form the payloads have, which of their numbers may
 * be readings, and in what unit. Every proposal is tried on what was heard before it is shown.
 */
public final class Proposer {
  private static final int MOST_SOURCES = 8;
  private static final int MOST_TRIALS = 6;
  private static final int MOST_HEARD = 200;
  private static final Duration APART = Duration.ofMinutes(1);
  private static final Instant TRIED_AT = Instant.parse("2026-03-14T09:30:00Z");
  private static final ObjectMapper STRICT =
      Json.mapper().copy().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

  private final Origin origin;
  private final String name;
  private final Optional<String> room;

  /**
   * @param name of the source to be
   * @param room it stands in, where it is known
   */
  public Proposer(Origin origin, String name, Optional<String> room) {
    this.origin = origin;
    this.name = name;
    this.room = room;
  }

  /** What can be made of these payloads; never throws for what a sender may send. */
  public Proposal propose(List<Overheard> heard) {
    List<String> remarks = new ArrayList<>();
    if (heard.isEmpty()) {
      return new Proposal("", 0, List.of(), List.of(), List.of(silence()));
    }
    List<Draft> drafts = new ArrayList<>();
    Map<String, List<Overheard>> byChannel = new LinkedHashMap<>();
    heard.forEach(
        each -> byChannel.computeIfAbsent(each.channel(), any -> new ArrayList<>()).add(each));
    Map<String, Draft> numbers = new LinkedHashMap<>();
    byChannel.forEach(
        (channel, payloads) -> {
          List<Overheard> some = payloads.subList(0, Math.min(payloads.size(), MOST_HEARD));
          if (areNumbers(some)) {
            number(channel, some, numbers, remarks);
          } else {
            one(channel, some, remarks).ifPresent(drafts::add);
          }
        });
    numbers.values().stream().filter(draft -> !draft.isEmpty()).forEach(drafts::add);
    return written(drafts, remarks);
  }

  private String silence() {
    if (origin instanceof Origin.Device) {
      return "Nothing was said on the line. A sender on RS-485 speaks only when asked: write"
          + " payload: modbus-rtu with its address, function, base, start and count. Else"
          + " check the plug and the speed (--line \"115200 8N1\").";
    }
    return origin instanceof Origin.Broker
        ? "Nothing came. Check that the sender is on and that the topic filter is right; listen "
            + "longer with --for 5min."
        : "The file holds no payload; write one a line.";
  }

  private static boolean areNumbers(List<Overheard> payloads) {
    return payloads.stream()
        .allMatch(
            each -> {
              String text = each.octets().strip();
              return StrictNumber.parse(text, '.').isPresent()
                  || StrictNumber.parse(text, ',').isPresent();
            });
  }

  /** Topics that carry one number each, gathered by what stands before their last level. */
  private void number(
      String topic, List<Overheard> payloads, Map<String, Draft> drafts, List<String> remarks) {
    Guess.Numbers numbers =
        Guess.Numbers.of(payloads.stream().map(each -> each.octets().strip()).toList())
            .orElseThrow();
    Optional<Guess> guess = Guess.of(topic, Optional.empty(), numbers);
    boolean named = !topic.isEmpty() && !(origin instanceof Origin.Device);
    if (guess.isEmpty() && !named) {
      guess = Guess.unnamedTemperature(numbers);
    }
    if (guess.isEmpty()) {
      remarks.add(
          "%s = %s was left out: its name does not say what it is. If it is a reading, write it under "
                  .formatted(topic, Guess.shown(numbers.last()))
              + "filters with its quantity and unit.");
      return;
    }
    int level = topic.lastIndexOf('/');
    String parent = level < 0 ? "" : topic.substring(0, level);
    Draft draft = drafts.computeIfAbsent(parent, any -> begun("number"));
    draft.heard().addAll(payloads);
    if (named) {
      draft.filter(topic, guess.get());
    } else {
      draft.readingWithoutPlace(guess.get());
    }
  }

  private static Draft begun(String form) {
    Draft draft = new Draft(List.of());
    draft.word("payload", form);
    return draft;
  }

  private Optional<Draft> one(String channel, List<Overheard> payloads, List<String> remarks) {
    Draft draft = new Draft(payloads);
    List<JsonNode> json = payloads.stream().map(Proposer::json).flatMap(Optional::stream).toList();
    boolean found;
    if (!json.isEmpty() && json.size() * 2 >= payloads.size()) {
      found = new JsonShape(json, draft).propose();
    } else {
      found = new LineShape(payloads.stream().map(Overheard::octets).toList(), draft).propose();
    }
    String where = channel.isEmpty() ? "" : channel + ": ";
    if (!found) {
      remarks.add(where + nothing(payloads.get(payloads.size() - 1).octets(), draft));
      return Optional.empty();
    }
    if (origin instanceof Origin.Broker) {
      draft.word("filter", channel);
    }
    return Optional.of(draft);
  }

  private static String nothing(String octets, Draft draft) {
    String text = octets.strip();
    long odd = text.chars().filter(c -> c != '\t' && (c < ' ' || c > 0x7E)).count();
    if (odd * 3 > text.length()) {
      return "bytes that are no text were heard; on a serial line try another speed "
          + "(--line \"115200 8N1\"), on a topic name its layout with payload: hex";
    }
    if (text.length() >= 8 && text.length() % 2 == 0 && text.matches("[0-9A-Fa-f]+")) {
      return "hexadecimal digits were heard; their layout is not guessed: write payload: hex with "
          + "layout: bthome-2, a description of its tags, or fixed offsets";
    }
    String shown = text.length() > 60 ? text.substring(0, 60) + "..." : text;
    String rest = draft.notes().isEmpty() ? "" : " " + String.join(" ", draft.notes());
    return "no temperature or humidity was found in \"%s\"; name the place yourself in readings.%s"
        .formatted(shown, rest);
  }

  private static Optional<JsonNode> json(Overheard payload) {
    try {
      String text =
          new String(
              payload.octets().getBytes(StandardCharsets.ISO_8859_1), StandardCharsets.UTF_8);
      JsonNode node = STRICT.readTree(text.startsWith("\uFEFF") ? text.substring(1) : text);
      return node != null && node.isContainerNode() ? Optional.of(node) : Optional.empty();
    } catch (JsonProcessingException e) {
      return Optional.empty();
    }
  }

  private Proposal written(List<Draft> drafts, List<String> remarks) {
    StringBuilder yaml = new StringBuilder();
    List<String> unsure = new ArrayList<>();
    List<Proposal.Trial> trials = new ArrayList<>();
    int count = 0;
    if (drafts.size() > MOST_SOURCES) {
      remarks.add(
          "%d senders were heard, the first %d are shown; listen with a narrower filter."
              .formatted(drafts.size(), MOST_SOURCES));
    }
    for (Draft draft : drafts.subList(0, Math.min(drafts.size(), MOST_SOURCES))) {
      String source = count == 0 ? name : name + "-" + (count + 1);
      Draft whole = headed(draft, source);
      try {
        trials.addAll(tried(whole, source));
      } catch (RefusedInput refused) {
        remarks.add(
            "%s could not be made into a mapping: %s"
                .formatted(source, refused.faults().get(0).sentence()));
        continue;
      }
      yaml.append(count == 0 ? HEAD : "---\n").append(Yaml.of(whole));
      whole.doubts().stream().filter(each -> !each.isEmpty()).forEach(unsure::add);
      if (room.isEmpty()) {
        unsure.add("the room the sensor stands in (--room)");
      }
      count++;
    }
    return new Proposal(
        yaml.toString(), count, unsure.stream().distinct().toList(), trials, remarks);
  }

  private static final String HEAD =
      "# Proposed from what was heard. Read it, mend what is unsure, then it is yours.\n";

  /** The draft with the words that say whose it is on top. */
  private Draft headed(Draft draft, String source) {
    Draft whole = new Draft(draft.heard());
    whole.word("source", source);
    origin.words().forEach(whole::word);
    if (origin instanceof Origin.File) {
      whole.note("Add transport: mqtt with its filter, or transport: serial with its device.");
    }
    Object filter = draft.words().get("filter");
    if (filter != null) {
      whole.word("filter", filter);
    }
    whole.word("room", room.orElse("CHANGE-ME"));
    if (draft.onlyWood()) {
      whole.word("role", "piece");
    }
    draft.words().forEach(whole::word);
    whole.takeFrom(draft);
    return whole;
  }

  /** Reads what was heard by the proposal, as the running house would. */
  private static List<Proposal.Trial> tried(Draft draft, String source) {
    Map<String, Object> tree = new LinkedHashMap<>(draft.words());
    // Whether its link works is not tried here, only what it says.
    List.of("transport", "broker", "device", "line", "filter").forEach(tree::remove);
    if (!draft.readings().isEmpty()) {
      tree.put("senml".equals(tree.get("payload")) ? "records" : "readings", draft.readings());
    }
    if (!draft.filters().isEmpty()) {
      tree.put("filters", draft.filters());
    }
    SourceMapping mapping =
        MappingReader.read(Setting.of(Json.mapper().valueToTree(tree)), source, false);
    Intake intake = Intake.alone(mapping);
    List<Proposal.Trial> trials = new ArrayList<>();
    Instant at = TRIED_AT;
    for (Overheard each : draft.heard()) {
      at = at.plus(APART);
      Intake.Taken taken =
          intake.take(new RawReading(each.channel(), each.octets(), at, RawReading.Way.LINE));
      MappedPayload verdict = taken.verdict();
      boolean news =
          trials.size() < MOST_TRIALS
              || trials.stream().noneMatch(trial -> trial.verdict().equals(verdict.verdict()));
      if (news && !taken.harmless()) {
        trials.add(
            new Proposal.Trial(
                source, each.channel(), taken.raw().text(), verdict.verdict(), says(verdict)));
      }
    }
    return trials;
  }

  private static String says(MappedPayload verdict) {
    List<String> says = new ArrayList<>();
    verdict
        .accepted()
        .forEach(
            values -> {
              values.sensor().ifPresent(says::add);
              values.temperatureC().ifPresent(t -> says.add(Guess.shown(t) + " °C"));
              values
                  .surfaceTemperatureC()
                  .ifPresent(t -> says.add("wood " + Guess.shown(t) + " °C"));
              values.rhPct().ifPresent(rh -> says.add(Guess.shown(rh) + " %"));
            });
    verdict.reason().ifPresent(says::add);
    return String.join(", ", says);
  }
}
