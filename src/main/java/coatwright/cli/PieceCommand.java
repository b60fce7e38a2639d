package coatwright.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Pieces of furniture in the shop. */
@Command(
    name = "piece",
    synopsisSubcommandLabel = "(new | list | show)",
    description = "Pieces in the shop: write one down, list them, show one.",
    footer = {"", "Example: coatwright piece new cabinet --room \"finishing room\""})
final class PieceCommand {
  @Mixin Help help = new Help();

  /** Writes a piece down. */
  @Command(
      name = "new",
      description = "Write down a piece that came into the shop.",
      footer = {
        "",
        "Example: coatwright piece new cabinet --room \"finishing room\" --promise 2026-04-30"
      })
  static final class New extends FormCommand {
    @Parameters(paramLabel = "NAME", description = "What you call it: cabinet.")
    String name = "";

    @Option(names = "--room", paramLabel = "R", description = "The room it stands in.")
    @Nullable String room;

    @Option(names = "--promise", paramLabel = "DATE", description = "Day it is promised for.")
    @Nullable String promise;

    @Option(names = "--who", paramLabel = "W", description = "Who writes this.")
    @Nullable String who;

    New(Shared shared) {
      super(shared, "pieces");
    }

    @Override
    void fill() {
      put("name", name);
      put("room", room);
      put("promise", promise);
      put("who", who);
    }

    @Override
    String readBack(JsonNode entry) {
      return "%s: piece %s written down".formatted(entry.path("entry").asText(), name);
    }
  }

  /** Lists the pieces. */
  @Command(
      name = "list",
      description = "List the pieces and how many coats their parts have.",
      footer = {"", "Example: coatwright piece list"})
  static final class Listing implements Callable<Integer> {
    @Mixin Help help = new Help();
    private final Shared shared;

    Listing(Shared shared) {
      this.shared = shared;
    }

    @Override
    public Integer call() {
      JsonNode answer = shared.daemon().get("pieces");
      if (shared.json) {
        shared.printJson(answer);
        return 0;
      }
      if (answer.path("pieces").isEmpty()) {
        shared.out.println("No piece is written down yet; begin with: coatwright piece new NAME");
      }
      answer.path("pieces").forEach(piece -> print(piece, shared));
      return 0;
    }

    static void print(JsonNode piece, Shared shared) {
      StringBuilder line = new StringBuilder(piece.path("name").asText());
      if (piece.has("room")) {
        line.append(", ").append(piece.path("room").asText());
      }
      if (piece.has("promise")) {
        line.append(", promised for ").append(piece.path("promise").asText());
      }
      shared.out.println(line);
      for (JsonNode part : piece.path("parts")) {
        String last =
            part.has("lastCoatAt")
                ? ", last " + Times.shown(part.path("lastCoatAt").asText(), shared.now())
                : "";
        shared.out.printf(
            "  %-34s %s%s%n", part.path("part").asText(), coats(part.path("coats").asInt()), last);
      }
    }

    private static String coats(int count) {
      return count == 1 ? "1 coat" : count + " coats";
    }
  }

  /** Shows one piece. */
  @Command(
      name = "show",
      description = "Show a piece: its parts, their coats and what is due.",
      footer = {"", "Example: coatwright piece show cabinet"})
  static final class Showing implements Callable<Integer> {
    @Parameters(paramLabel = "PIECE", description = "Its name.")
    String name = "";

    @Mixin Help help = new Help();
    private final Shared shared;

    Showing(Shared shared) {
      this.shared = shared;
    }

    @Override
    public Integer call() {
      JsonNode pieces = shared.daemon().get("pieces").path("pieces");
      for (JsonNode piece : pieces) {
        if (piece.path("name").asText().equals(name)) {
          show(piece);
          return 0;
        }
      }
      throw new Stop(
          Stop.BAD_INPUT, "no piece \"%s\"; coatwright piece list names them".formatted(name));
    }

    private void show(JsonNode piece) {
      if (shared.json) {
        shared.printJson(piece);
        return;
      }
      Listing.print(piece, shared);
      JsonNode due = shared.daemon().get("due?piece=" + DaemonLine.step(name));
      DueCommand.print(due.path("due"), shared);
    }
  }
}
