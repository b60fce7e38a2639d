package coatwright.cli;

import com.fasterxml.jackson.databind.JsonNode;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes down what was seen or tested. */
@Command(
    name = "note",
    description = {
      "Write down what was seen or tested on a part, or on one coat of it:",
      "clouded=0..5, cleared, tacky, rubbed-out=fine|not-fine, or a bench test with its outcome:",
      "touch|thumbnail|powder|smell|print=pass|fail; or weighed=3.2%%, what of the film's mass is",
      "still solvent by weighing the part, or a slip of glass coated with it, until it stays;",
      "or carried-in=8C, how warm the wood was where it was stored before it came into the room."
    },
    footer = {"", "Example: coatwright note cabinet/left-door thumbnail=pass --at -20min"})
final class NoteCommand extends FormCommand {
  @Parameters(index = "0", paramLabel = "PART|COAT", description = "cabinet/left-door, or e41.")
  String target = "";

  @Parameters(index = "1", paramLabel = "WHAT", description = "What was seen.")
  String what = "";

  @Option(names = "--at", paramLabel = "TIME", description = "When. Default: now.")
  @Nullable String at;

  @Option(names = "--text", paramLabel = "T", description = "In your own words.")
  @Nullable String text;

  @Option(names = "--who", paramLabel = "W", description = "Who saw it.")
  @Nullable String who;

  NoteCommand(Shared shared) {
    super(shared, "notes");
  }

  @Override
  void fill() {
    put(target.contains("/") ? "part" : "coat", target);
    put("what", what);
    put("at", at);
    put("text", text);
    put("who", who);
  }

  @Override
  String readBack(JsonNode entry) {
    return "%s: %s on %s at %s"
        .formatted(
            entry.path("entry").asText(),
            what,
            entry.path("part").asText(target),
            Times.shown(entry.path("at").asText(), shared.now()));
  }
}
