package coatwright.cli;

import coatwright.cli.Hall.ReplayWish;
import coatwright.json.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
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
  @Option(
      names = "--readings",
      required = true,
      paramLabel = "FILE",
      description = "Readings, CSV.")
  Path readings = Path.of("");

  @Option(
      names = "--mapping",
      required = true,
      paramLabel = "FILE",
      description = "How to read them, YAML.")
  Path mapping = Path.of("");

  @Option(names = "--coats", paramLabel = "FILE", description = "Coats, CSV or JSON.")
  @Nullable Path coats;

  @Option(
      names = "--schedule",
      paramLabel = "N",
      description = "Lay N coats of the reference job from the first reading.")
  @Nullable Integer schedule;

  @Mixin Help help = new Help();
  private final Shared shared;

  ReplayCommand(Shared shared) {
    this.shared = shared;
  }

  @Override
  public Integer call() {
    ReplayWish wish =
        new ReplayWish(
            readings,
            mapping,
            Optional.ofNullable(coats),
            schedule == null ? OptionalInt.empty() : OptionalInt.of(schedule));
    Object answer = shared.hall.replay(shared.place(), wish);
    if (shared.json) {
      shared.printJson(answer);
    } else {
      print(Json.mapper().valueToTree(answer));
    }
    return 0;
  }

  private void print(JsonNode answer) {
    JsonNode counted = answer.path("readings");
    shared.out.printf(
        "%d readings, %d accepted, %d refused, %d gaps%n",
        counted.path("count").asLong(),
        counted.path("accepted").asLong(),
        counted.path("refused").size(),
        counted.path("gaps").size());
    for (JsonNode refused : counted.path("refused")) {
      shared.out.printf(
          "  line %d: %s%n", refused.path("line").asLong(), refused.path("reason").asText());
    }
    for (JsonNode coat : answer.path("coats")) {
      shared.out.printf("%n%s%n", coat.path("id").asText());
      new OutlookText(shared.out, shared.unitSystem()).verdict(coat.path("outlook"));
      for (JsonNode milestone : coat.path("milestones")) {
        String when =
            milestone.has("p50")
                ? Times.shown(milestone.path("p50").asText(), shared.now())
                : "not reached";
        shared.out.printf("  %-16s %s%n", milestone.path("name").asText(), when);
      }
    }
    for (JsonNode warning : answer.path("warnings")) {
      shared.out.printf(
          "%s  %s%n", warning.path("from").asText(), warning.path("message").asText());
    }
  }
}
