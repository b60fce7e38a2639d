package coatwright.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Says what is due. */
@Command(
    name = "due",
    description = "What is due: the test to make and when, for each part, with its range.",
    footer = {"", "Example: coatwright due cabinet"})
final class DueCommand implements Callable<Integer> {
  @Parameters(arity = "0..1", paramLabel = "PIECE", description = "One piece; without: all.")
  @Nullable String piece;

  @Mixin Help help = new Help();
  private final Shared shared;

  DueCommand(Shared shared) {
    this.shared = shared;
  }

  @Override
  public Integer call() {
    JsonNode answer =
        shared.daemon().get(piece == null ? "due" : "due?piece=" + DaemonLine.step(piece));
    if (shared.json) {
      shared.printJson(answer);
    } else {
      print(answer.path("due"), shared);
    }
    return 0;
  }

  static void print(JsonNode due, Shared shared) {
    if (due.isEmpty()) {
      shared.out.println("Nothing is due.");
    }
    String part = "";
    for (JsonNode one : due) {
      if (!one.path("part").asText().equals(part)) {
        part = one.path("part").asText();
        shared.out.println(part);
      }
      shared.out.printf("  %-16s %s%n", one.path("milestone").asText(), when(one, shared));
      after(one, "until", "    ready until ", shared);
      moved(one, shared);
      if (one.has("test")) {
        shared.out.println("    test: " + shared.told(one.path("test")));
      }
    }
  }

  private static String when(JsonNode one, Shared shared) {
    if (one.path("cantTell").asBoolean()) {
      return "can't tell: " + shared.told(one.path("reason"));
    }
    if (!one.has("p50")) {
      return one.has("p10")
          ? "not before " + Times.shown(one.path("p10").asText(), shared.now())
          : "will not get there in this air";
    }
    String range =
        one.has("p10") && one.has("p90")
            ? " (%s to %s)"
                .formatted(
                    Times.shown(one.path("p10").asText(), shared.now()),
                    Times.shown(one.path("p90").asText(), shared.now()))
            : "";
    String guess = one.path("estimate").asBoolean() ? ", an estimate: the test decides" : "";
    return Times.shown(one.path("p50").asText(), shared.now()) + range + guess;
  }

  private static void after(JsonNode one, String key, String words, Shared shared) {
    if (one.has(key)) {
      shared.out.println(words + Times.shown(one.path(key).asText(), shared.now()));
    }
  }

  private static void moved(JsonNode one, Shared shared) {
    if (one.has("was")) {
      String reason = one.has("reason") ? ": " + shared.told(one.path("reason")) : "";
      shared.out.println("    was " + Times.shown(one.path("was").asText(), shared.now()) + reason);
    }
  }
}
