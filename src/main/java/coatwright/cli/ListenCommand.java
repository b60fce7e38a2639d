package coatwright.cli;

import coatwright.cli.Hall.Heard;
import coatwright.quantity.RefusedInput;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows what came in beside what became of it. */
@Command(
    name = "listen",
    description = {
      "What a sensor sent beside what became of it, and why anything was refused:",
      "the texts the shop kept, or those of a file read by the mappings of another."
    },
    footer = {
      "",
      "Example: coatwright listen finishing-wall",
      "         coatwright listen --mappings sensors.json --from heard.jsonl --json"
    })
final class ListenCommand implements Callable<Integer> {
  @Parameters(arity = "0..1", paramLabel = "SOURCE", description = "One sensor; without: all.")
  @Nullable String source;

  @Option(names = "--mappings", paramLabel = "FILE", description = "Mappings by name, JSON.")
  @Nullable Path mappings;

  @Option(names = "--from", paramLabel = "FILE", description = "What was heard, JSON lines.")
  @Nullable Path from;

  @Option(
      names = "--last",
      paramLabel = "N",
      defaultValue = "20",
      description = "How many of the newest texts to show. Default: 20.")
  int last;

  @Mixin Help help = new Help();
  private final Shared shared;

  ListenCommand(Shared shared) {
    this.shared = shared;
  }

  @Override
  public Integer call() {
    if ((mappings == null) != (from == null)) {
      throw RefusedInput.of("listen", "--mappings and --from go together", "give both, or neither");
    }
    if (mappings != null && from != null) {
      shared.hall.listen(mappings, from, shared::printJson);
    } else {
      kept();
    }
    return 0;
  }

  private void kept() {
    List<Heard> texts = new ArrayList<>(shared.hall.kept(shared.place(), source, last));
    if (texts.isEmpty() && !shared.json) {
      shared.out.println("Nothing was heard yet.");
    }
    for (Heard text : texts) {
      if (shared.json) {
        shared.printJson(text);
      } else {
        shared.out.printf(
            "%s  %-16s %-9s %s%s%n",
            text.arrivedAt(),
            text.source(),
            text.verdict(),
            text.text().strip(),
            text.reason().map(reason -> "   <- " + shared.told(reason)).orElse(""));
      }
    }
  }
}
