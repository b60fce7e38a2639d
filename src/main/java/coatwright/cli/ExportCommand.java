package coatwright.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Writes everything out as plain files. */
@Command(
    name = "export",
    description = "Write readings and entries to a folder, as files other programs read.",
    footer = {"", "Example: coatwright export march"})
final class ExportCommand implements Callable<Integer> {
  @Parameters(paramLabel = "DIR", description = "The folder to write to; made if not there.")
  Path folder = Path.of("");

  @Mixin Help help = new Help();
  private final Shared shared;

  ExportCommand(Shared shared) {
    this.shared = shared;
  }

  @Override
  public Integer call() {
    List<Path> files = shared.hall.export(shared.place(), folder);
    if (shared.json) {
      shared.printJson(Map.of("files", files.stream().map(Path::toString).toList()));
    } else {
      files.forEach(file -> shared.out.println("written: " + file));
    }
    return 0;
  }
}
