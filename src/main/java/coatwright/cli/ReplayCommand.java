package coatwright.cli;

import coatwright.cli.Hall.ReplayWish;
import coatwright.json.Json;
import coatwright.quantity.Fault;
import coatwright.quantity.RefusedInput;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Walks recorded readings and coats through the house. */
@Command(
    name = "replay",
    description = "Walk recorded readings, and coats if there are any, through the whole house.",
    footer = {
      "",
      "Example: coatwright replay --readings june.csv --mapping june.yaml --coats coats.csv"
    })
final class ReplayCommand implements Callable<Integer> {
  /** Refused lines shown to a person; a bad hour must not push the answer off the screen. */
  private static final int MOST_REFUSED = 20;

  @Option(names = "--readings", paramLabel = "FILE", description = "Readings, CSV.")
  @Nullable Path readings;

  @Option(names = "--mapping", paramLabel = "FILE", description = "How to read them, YAML.")
  @Nullable Path mapping;

  @Option(names = "--coats", paramLabel = "FILE", description = "Coats, CSV or JSON.")
  @Nullable Path coats;

  @Option(
      names = "--schedule",
      paramLabel = "N",
      description = "Lay N coats of the reference job from the first reading.")
  @Nullable String schedule;

  @Option(
      names = "--case",
      paramLabel = "FILE",
      description = "Or a described case, JSON: conditions, materials, what was seen.")
  @Nullable Path described;

  @Mixin Help help = new Help();
  private final Shared shared;

  ReplayCommand(Shared shared) {
    this.shared = shared;
  }

  @Override
  public Integer call() {
    if (described != null) {
      refuseBesideACase();
      tell(shared.hall.describedCase(shared.place(), described));
      return 0;
    }
    if (readings == null || mapping == null) {
      throw RefusedInput.of(
          "replay",
          "it needs --readings and --mapping, or --case",
          "write it like replay --readings june.csv --mapping june.yaml");
    }
    ReplayWish wish = new ReplayWish(readings, mapping, Optional.ofNullable(coats), scheduled());
    tell(shared.hall.replay(shared.place(), wish));
    return 0;
  }

  private void refuseBesideACase() {
    Map<String, @Nullable Object> others = new LinkedHashMap<>();
    others.put("--readings", readings);
    others.put("--mapping", mapping);
    others.put("--coats", coats);
    others.put("--schedule", schedule);
    List<Fault> faults =
        others.entrySet().stream()
            .filter(option -> option.getValue() != null)
            .map(
                option ->
                    Fault.of(
                        "--case with " + option.getKey(),
                        "a case is told in words, a record is walked",
                        "leave one of them out"))
            .toList();
    if (!faults.isEmpty()) {
      throw new RefusedInput(faults);
    }
  }

  private OptionalInt scheduled() {
    if (schedule == null) {
      return OptionalInt.empty();
    }
    if (!schedule.matches("[0-9]{1,9}")) {
      throw RefusedInput.of(
          "--schedule \"" + schedule + "\"", "is no number of coats", "write --schedule 6");
    }
    return OptionalInt.of(Integer.parseInt(schedule));
  }

  private void tell(Object answer) {
    if (shared.json) {
      shared.printJson(answer);
      return;
    }
    JsonNode tree = Json.mapper().valueToTree(answer);
    if (tree.has("causes")) {
      printCase(tree);
    } else {
      print(tree);
    }
  }

  private void printCase(JsonNode answer) {
    shared.out.println("Was it the air? " + answer.path("airAtFault").asText());
    if (answer.has("clouding")) {
      shared.out.println("Clouding: " + answer.path("clouding").path("level").asText());
    }
    for (JsonNode cause : answer.path("causes")) {
      shared.out.printf(
          "  %3.0f %%  %s%n",
          100 * cause.path("probability").asDouble(), cause.path("cause").asText());
    }
    answer.path("advice").forEach(line -> shared.out.println("- " + shared.told(line)));
    answer.path("questions").forEach(line -> shared.out.println("? " + shared.told(line)));
  }

  private void print(JsonNode answer) {
    JsonNode counted = answer.path("readings");
    shared.out.printf(
        "%s, %d accepted, %d refused, %s%n",
        counted(counted.path("count").asInt(), "reading"),
        counted.path("accepted").asLong(),
        counted.path("refused").size(),
        counted(counted.path("gaps").size(), "gap"));
    int told = 0;
    for (JsonNode refused : counted.path("refused")) {
      if (told++ == MOST_REFUSED) {
        shared.out.printf(
            "  and %d more; --json names every one%n",
            counted.path("refused").size() - MOST_REFUSED);
        break;
      }
      shared.out.printf(
          "  line %d: %s%n", refused.path("line").asLong(), shared.told(refused.path("reason")));
    }
    for (JsonNode coat : answer.path("coats")) {
      shared.out.printf("%n%s%n", coat.path("id").asText());
      new OutlookText(shared.out, shared.unitSystem()).verdict(coat.path("outlook"));
      for (JsonNode milestone : coat.path("milestones")) {
        String when = milestone.has("p50") ? when(milestone.path("p50")) : "not reached";
        shared.out.printf("  %-16s %s%n", milestone.path("name").asText(), when);
      }
    }
    for (JsonNode warning : answer.path("warnings")) {
      shared.out.printf(
          "%s  %s%n", when(warning.path("from")), shared.told(warning.path("message")));
    }
  }

  private String when(JsonNode time) {
    return Times.shown(time.asText(), shared.now());
  }

  private static String counted(int many, String what) {
    return many + " " + what + (many == 1 ? "" : "s");
  }
}
