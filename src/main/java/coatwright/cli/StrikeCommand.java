package coatwright.cli;

import com.fasterxml.jackson.databind.JsonNode;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Strikes an entry out. */
@Command(
    name = "strike",
    description = "Strike out an entry: it stays readable and no longer counts.",
    footer = {"", "Example: coatwright strike e41 --reason \"wrong door\""})
final class StrikeCommand extends FormCommand {
  @Parameters(paramLabel = "ENTRY", description = "The entry: e41.")
  String entry = "";

  @Option(names = "--reason", required = true, paramLabel = "T", description = "Why.")
  String reason = "";

  @Option(names = "--who", paramLabel = "W", description = "Who strikes it.")
  @Nullable String who;

  StrikeCommand(Shared shared) {
    super(shared, "strikes");
  }

  @Override
  void fill() {
    put("entry", entry);
    put("reason", reason);
    put("who", who);
  }

  @Override
  String readBack(JsonNode written) {
    return "%s: %s is struck out".formatted(written.path("entry").asText(), entry);
  }
}
