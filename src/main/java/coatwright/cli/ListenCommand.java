package coatwright.cli;

import coatwright.cli.Hall.EarWish;
import coatwright.cli.Hall.Heard;
import coatwright.cli.Hall.Proposed;
import coatwright.json.Json;
import coatwright.quantity.RefusedInput;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows what came in beside what became of it, and helps to set up what is new. */
@Command(
    name = "listen",
    description = {
      "What a sensor sent beside what became of it, and why anything was refused:",
      "the texts the shop kept, or those of a file read by the mappings of another.",
      "With --propose it listens where no mapping is yet and proposes one."
    },
    footer = {
      "",
      "Example: coatwright listen finishing-wall --follow",
      "         coatwright listen --mappings sensors.json --from heard.jsonl --json",
      "         coatwright listen --propose --broker shop --filter 'shop/#' --for 1min",
      "         coatwright listen --propose --device /dev/ttyUSB0 --accept bench-board"
    })
final class ListenCommand implements Callable<Integer> {
  private static final Duration LOOK_EVERY = Duration.ofSeconds(1);
  private static final int LOOK_BACK = 200;

  @Parameters(arity = "0..1", paramLabel = "SOURCE", description = "One sensor; without: all.")
  @Nullable String source;

  @Option(
      names = "--mappings",
      paramLabel = "FILE",
      description = "Mappings by name, JSON or YAML.")
  @Nullable Path mappings;

  @Option(names = "--from", paramLabel = "FILE", description = "What was heard, a line each.")
  @Nullable Path from;

  @Option(
      names = "--last",
      paramLabel = "N",
      defaultValue = "20",
      description = "How many of the newest texts to show. Default: 20.")
  int last;

  @Option(names = "--follow", description = "Go on showing what comes, until stopped.")
  boolean follow;

  @Option(names = "--propose", description = "Propose a mapping from what is heard.")
  boolean propose;

  @Option(names = "--broker", paramLabel = "NAME", description = "Hear a broker of the settings.")
  @Nullable String broker;

  @Option(
      names = "--filter",
      paramLabel = "TOPIC",
      description = "Topics to hear; + is one level, # the rest. Default: #.")
  @Nullable List<String> filters;

  @Option(names = "--device", paramLabel = "PATH", description = "Hear a serial device.")
  @Nullable String device;

  @Option(
      names = "--line",
      paramLabel = "LINE",
      defaultValue = "9600 8N1",
      description = "Its speed and form. Default: 9600 8N1.")
  String line = "9600 8N1";

  @Option(
      names = "--for",
      paramLabel = "SPAN",
      defaultValue = "30s",
      description = "How long to listen, like 30s or 5min. Default: 30s.")
  String span = "30s";

  @Option(names = "--room", paramLabel = "ROOM", description = "The room the sensor stands in.")
  @Nullable String room;

  @Option(
      names = "--accept",
      paramLabel = "NAME",
      description = "Keep the proposal as the source NAME; never writes over one.")
  @Nullable String accept;

  @Mixin Help help = new Help();
  private final Shared shared;

  ListenCommand(Shared shared) {
    this.shared = shared;
  }

  @Override
  public Integer call() {
    if (propose || broker != null || device != null || accept != null) {
      return proposed();
    }
    if ((mappings == null) != (from == null)) {
      throw RefusedInput.of(
          "listen",
          "--mappings and --from go together",
          "give both, or --propose with --from alone");
    }
    if (mappings != null && from != null) {
      shared.hall.listen(mappings, from, shared::printJson);
    } else if (follow) {
      follow();
    } else {
      kept();
    }
    return 0;
  }

  private int proposed() {
    int ways = (broker == null ? 0 : 1) + (device == null ? 0 : 1);
    int texts = (source == null ? 0 : 1) + (from == null ? 0 : 1);
    boolean one = texts == 0 ? ways == 1 : texts == 1 && ways <= (from == null ? 0 : 1);
    if (!one) {
      throw RefusedInput.of(
          "listen --propose",
          "needs one place to listen",
          "give --broker NAME, --device PATH, --from FILE or the name of a source");
    }
    if (accept != null && !accept.matches("[A-Za-z0-9][A-Za-z0-9_-]{0,62}")) {
      throw RefusedInput.of(
          "--accept \"" + accept + "\"", "is no name", "use letters, digits and dashes");
    }
    if (!shared.json && (broker != null || device != null)) {
      shared.say("Listening for " + span + " ...");
    }
    Proposed proposed =
        shared.hall.propose(
            shared.place(),
            new EarWish(
                Optional.ofNullable(source),
                Optional.ofNullable(from),
                Optional.ofNullable(broker),
                filters == null ? List.of("#") : filters,
                Optional.ofNullable(device),
                line,
                span(span)),
            accept == null ? "new-sensor" : accept,
            Optional.ofNullable(room),
            heard -> {
              if (!shared.json) {
                shared.say("  " + heard);
              }
            });
    if (shared.json) {
      shared.printJson(proposed);
    } else {
      show(proposed);
    }
    return proposed.sources() == 0 ? 1 : keep(proposed);
  }

  private void show(Proposed proposed) {
    JsonNode trials = Json.mapper().valueToTree(proposed.trials());
    if (!trials.isEmpty()) {
      shared.say("");
      shared.say("Read by the proposal below:");
    }
    trials.forEach(
        trial ->
            shared.say(
                "  %-9s %s   <- %s"
                    .formatted(
                        trial.path("verdict").asText(),
                        shared.told(trial.path("says").asText()),
                        trial.path("text").asText().strip())));
    if (!proposed.yaml().isEmpty()) {
      shared.say("");
      shared.out.print(proposed.yaml());
      shared.out.flush();
    }
    if (!proposed.unsure().isEmpty()) {
      shared.say("");
      shared.say("Unsure, please look:");
      proposed.unsure().forEach(each -> shared.say("  - " + shared.told(each)));
    }
    if (!proposed.remarks().isEmpty()) {
      shared.say("");
      proposed.remarks().forEach(each -> shared.say("  " + each));
    }
  }

  private int keep(Proposed proposed) {
    if (accept == null) {
      if (!shared.json) {
        shared.say("");
        shared.say("Nothing was written. To keep it, run this again with --accept NAME.");
      }
      return 0;
    }
    if (!proposed.yaml().contains("\ntransport: ")) {
      throw new Stop(
          Stop.BAD_INPUT,
          "kept texts and files do not say how the sensor is reached; add --broker NAME or --device"
              + " PATH");
    }
    boolean roomOpen = proposed.yaml().contains("room: CHANGE-ME");
    if (roomOpen) {
      throw new Stop(
          Stop.BAD_INPUT,
          "the room is not said; add --room with one of: "
              + (proposed.rooms().isEmpty()
                  ? "(the settings name no room; add one to coatwright.yaml)"
                  : String.join(", ", proposed.rooms())));
    }
    Path file = shared.hall.accept(shared.place(), accept, proposed.yaml());
    if (!shared.json) {
      shared.say("");
      shared.say("Written to " + file + ". It is read when coatwright run starts again.");
    }
    return 0;
  }

  private static Duration span(String text) {
    java.util.regex.Matcher match =
        java.util.regex.Pattern.compile("^(\\d{1,5}) ?(s|sec|min|h)$").matcher(text.strip());
    if (!match.matches()) {
      throw RefusedInput.of("--for \"" + text + "\"", "is no span", "write it like 30s or 5min");
    }
    long size = Long.parseLong(match.group(1));
    Duration span =
        switch (match.group(2)) {
          case "min" -> Duration.ofMinutes(size);
          case "h" -> Duration.ofHours(size);
          default -> Duration.ofSeconds(size);
        };
    if (span.compareTo(Duration.ofHours(24)) > 0) {
      throw RefusedInput.of("--for \"" + text + "\"", "is more than a day", "listen shorter");
    }
    return span;
  }

  private void kept() {
    List<Heard> texts = new ArrayList<>(shared.hall.kept(shared.place(), source, last));
    if (texts.isEmpty() && !shared.json) {
      shared.out.println("Nothing was heard yet.");
    }
    texts.forEach(this::show);
  }

  /** What the running shop keeps, as it comes: the texts are looked up again every second. */
  private void follow() {
    Set<String> shown = new HashSet<>();
    boolean first = true;
    while (!Thread.currentThread().isInterrupted()) {
      Set<String> there = new HashSet<>();
      List<Heard> texts =
          shared.hall.kept(shared.place(), source, first ? Math.max(last, 1) : LOOK_BACK);
      for (Heard text : texts) {
        String id = text.id() + " " + text.channel();
        there.add(id);
        if (first || !shown.contains(id)) {
          show(text);
        }
      }
      shared.out.flush();
      if (!first) {
        shown.retainAll(there);
      }
      shown.addAll(there);
      first = false;
      try {
        Thread.sleep(LOOK_EVERY.toMillis());
      } catch (InterruptedException stopped) {
        Thread.currentThread().interrupt();
      }
    }
  }

  private void show(Heard text) {
    if (shared.json) {
      shared.printJson(text);
      return;
    }
    shared.out.printf(
        "%s  %-16s %-9s %s%s%n",
        text.arrivedAt(),
        text.source(),
        text.verdict(),
        text.text().strip(),
        text.reason().map(reason -> "   <- " + shared.told(reason)).orElse(""));
  }
}
