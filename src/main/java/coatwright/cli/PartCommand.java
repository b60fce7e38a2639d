package coatwright.cli;

import com.fasterxml.jackson.databind.JsonNode;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Parts of a piece. */
@Command(
    name = "part",
    synopsisSubcommandLabel = "new",
    description = "Parts of a piece, and their faces: write one down.",
    footer = {"", "Example: coatwright part new cabinet/left-door --thickness 19mm"})
final class PartCommand {
  @Mixin Help help = new Help();

  /** Writes a part down. */
  @Command(
      name = "new",
      description = "Write down a part that takes coats of its own.",
      footer = {
        "",
        "Example: coatwright part new cabinet/left-door/front --area 0.4m2 --thickness 19mm"
            + " --species cherry"
      })
  static final class New extends FormCommand {
    @Parameters(paramLabel = "PART", description = "piece/part or piece/part/face.")
    String part = "";

    @Option(names = "--area", paramLabel = "A", description = "Its area: 0.4m2, 4ft2.")
    @Nullable String area;

    @Option(names = "--thickness", paramLabel = "L", description = "Its thickness: 19mm.")
    @Nullable String thickness;

    @Option(names = "--species", paramLabel = "S", description = "Its wood: cherry.")
    @Nullable String species;

    @Option(names = "--who", paramLabel = "W", description = "Who writes this.")
    @Nullable String who;

    New(Shared shared) {
      super(shared, "parts");
    }

    @Override
    void fill() {
      put("part", part);
      put("area", area);
      put("thickness", thickness);
      put("species", species);
      put("who", who);
    }

    @Override
    String readBack(JsonNode entry) {
      return "%s: part %s written down".formatted(entry.path("entry").asText(), part);
    }
  }
}
