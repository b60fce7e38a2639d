package coatwright.cli;

import com.fasterxml.jackson.databind.JsonNode;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes coats down. */
@Command(
    name = "coat",
    description = "Write down a coat, on one part or several.",
    footer = {
      "",
      "Example: coatwright coat cabinet/left-door,cabinet/right-door --jar A --start 16:20"
    })
final class CoatCommand extends FormCommand {
  @Parameters(paramLabel = "PART[,PART...]", description = "What was coated.")
  String part = "";

  @Option(
      names = "--jar",
      paramLabel = "J",
      description = "The jar it came from; with --same, the last coat's.")
  @Nullable String jar;

  @Option(names = "--start", paramLabel = "TIME", description = "Brush loaded. Default: now.")
  @Nullable String start;

  @Option(names = "--end", paramLabel = "TIME", description = "Brush put down.")
  @Nullable String end;

  @Option(names = "--room", paramLabel = "R", description = "Default: the piece's room.")
  @Nullable String room;

  @Option(names = "--wet-film", paramLabel = "X", description = "Wet film: 3mil, 75um.")
  @Nullable String wetFilm;

  @Option(names = "--wood", paramLabel = "T", description = "Wood temperature: 19C.")
  @Nullable String wood;

  @Option(
      names = "--method",
      paramLabel = "brush|pad|wipe|spray",
      description = "How it went on. Default: brush.")
  @Nullable String method;

  @Option(names = "--who", paramLabel = "W", description = "Whose coat it is.")
  @Nullable String who;

  @Option(names = "--same", description = "All else as the coat written last.")
  boolean same;

  CoatCommand(Shared shared) {
    super(shared, "coats");
  }

  @Override
  void fill() {
    put("part", part);
    put("jar", jar);
    put("start", start);
    put("end", end);
    put("room", room);
    put("wetFilm", wetFilm);
    put("wood", wood);
    put("method", method);
    put("who", who);
    put("same", same ? "true" : null);
  }

  @Override
  String readBack(JsonNode entry) {
    return "%s: coat on %s at %s"
        .formatted(
            entry.path("entry").asText(),
            entry.path("part").asText(),
            Times.shown(entry.path("at").asText(), shared.now()));
  }
}
