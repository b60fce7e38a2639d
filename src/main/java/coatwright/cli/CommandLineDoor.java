package coatwright.cli;

import coatwright.quantity.OutOfRange;
import coatwright.quantity.RefusedInput;
import java.io.PrintWriter;
import java.time.Clock;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Runs one command line and answers with its exit code. */
public final class CommandLineDoor {
  private static final Logger LOG = LoggerFactory.getLogger(CommandLineDoor.class);

  private CommandLineDoor() {}

  /**
   * Runs one command.
   *
   * @return 0 fine; 1 hold off, not ready or fault found; 2 bad input; 3 daemon not reachable; 70
   *     we cannot go on
   */
  public static int run(String[] args, Hall hall, Clock clock, PrintWriter out, PrintWriter err) {
    Shared shared = new Shared(hall, clock, out);
    CommandLine door =
        new CommandLine(new Top(shared))
            .addSubcommand(new DaemonCommands.Demo(shared))
            .addSubcommand(new DaemonCommands.Run(shared))
            .addSubcommand(new CheckupCommand(shared))
            .addSubcommand(new ListenCommand(shared))
            .addSubcommand(new CalibrateCommand(shared))
            .addSubcommand(new AirCommand(shared))
            .addSubcommand(new WoodCommand(shared))
            .addSubcommand(new OutlookCommand(shared))
            .addSubcommand(jar(shared))
            .addSubcommand(piece(shared))
            .addSubcommand(
                new CommandLine(new PartCommand()).addSubcommand(new PartCommand.New(shared)))
            .addSubcommand(new CoatCommand(shared))
            .addSubcommand(new NoteCommand(shared))
            .addSubcommand(new StrikeCommand(shared))
            .addSubcommand(new DueCommand(shared))
            .addSubcommand(new WhyCommand(shared))
            .addSubcommand(new ReplayCommand(shared))
            .addSubcommand(new ExportCommand(shared))
            .addSubcommand(new DaemonCommands.Rehearse(shared))
            .setOut(out)
            .setErr(err)
            .setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF))
            .setUsageHelpAutoWidth(true)
            .setParameterExceptionHandler((wrong, given) -> wrongUsage(wrong, err))
            .setExecutionExceptionHandler((trouble, command, parsed) -> trouble(trouble, err));
    int code = door.execute(args);
    out.flush();
    err.flush();
    return code;
  }

  private static CommandLine jar(Shared shared) {
    return new CommandLine(new JarCommand())
        .addSubcommand(new JarCommand.New(shared))
        .addSubcommand(new JarCommand.Listing(shared))
        .addSubcommand(new JarCommand.Showing(shared))
        .addSubcommand(new JarMix(shared))
        .addSubcommand(new JarThin(shared))
        .addSubcommand(new JarResidue(shared))
        .addSubcommand(new JarCup(shared))
        .addSubcommand(new JarStrength(shared))
        .addSubcommand(new JarRetard(shared))
        .addSubcommand(new JarCoverage(shared))
        .addSubcommand(new JarVapour(shared));
  }

  private static CommandLine piece(Shared shared) {
    return new CommandLine(new PieceCommand())
        .addSubcommand(new PieceCommand.New(shared))
        .addSubcommand(new PieceCommand.Listing(shared))
        .addSubcommand(new PieceCommand.Showing(shared));
  }

  private static int wrongUsage(ParameterException wrong, PrintWriter err) {
    String command = wrong.getCommandLine().getCommandSpec().qualifiedName();
    err.println(sentence(wrong) + "; see " + command + " --help");
    return Stop.BAD_INPUT;
  }

  /** picocli's findings in our own words. */
  private static String sentence(ParameterException wrong) {
    if (wrong instanceof MissingParameterException missing) {
      String names =
          String.join(
              ", ",
              missing.getMissing().stream()
                  .map(
                      arg ->
                          arg.isOption()
                              ? ((CommandLine.Model.OptionSpec) arg).longestName()
                              : arg.paramLabel())
                  .toList());
      return "missing: " + names;
    }
    if (wrong instanceof UnmatchedArgumentException unmatched) {
      return "\"" + String.join(" ", unmatched.getUnmatched()) + "\": no such command or option";
    }
    if (wrong instanceof OverwrittenOptionException twice) {
      return twice.getOverwritten() instanceof CommandLine.Model.OptionSpec option
          ? option.longestName() + " is given twice"
          : "an option is given twice";
    }
    if (wrong.getArgSpec() instanceof CommandLine.Model.OptionSpec option
        && wrong.getValue() != null) {
      return "%s \"%s\": that is no %s; write it like %s %s"
          .formatted(
              option.longestName(),
              wrong.getValue(),
              option.type() == int.class ? "whole number" : option.paramLabel(),
              option.longestName(),
              option.type() == int.class ? "20" : option.paramLabel());
    }
    String message = String.valueOf(wrong.getMessage());
    return message.lines().findFirst().orElse("this cannot be read");
  }

  private static int trouble(Exception trouble, PrintWriter err) {
    if (trouble instanceof Stop stop) {
      LOG.debug("stopped", stop);
      err.println(stop.getMessage());
      return stop.exitCode();
    }
    if (trouble instanceof OutOfRange outside) {
      err.println(outside.sentence());
      return Stop.BAD_INPUT;
    }
    if (trouble instanceof RefusedInput) {
      err.println(trouble.getMessage());
      return Stop.BAD_INPUT;
    }
    LOG.error("this should not have happened", trouble);
    err.println("Coatwright cannot go on: " + trouble + "; the log above says where");
    return Stop.INTERNAL;
  }

  /** The program's name alone: says what there is. */
  @Command(
      name = "coatwright",
      synopsisSubcommandLabel = "COMMAND",
      description = "Watches the shop's air, keeps the coat-by-coat log, and says when to brush.",
      footer = {
        "",
        "A quantity always carries its unit: 27C 80F 65%% 2lb 240g/L 3mil 75um 8floz 20min.",
        "A part is piece/part or piece/part/face. A time is 16:20, \"yesterday 16:20\",",
        "2026-03-14T16:20 or -20min.",
        "",
        "Exit codes: 0 fine; 1 hold off, not ready or fault found; 2 bad input;",
        "3 the daemon is not reachable; 70 it cannot go on.",
        "",
        "Example: coatwright outlook --finish shellac-pale --air 28C,80%% --cut 1.5lb"
      })
  static final class Top implements Runnable {
    @Mixin Shared shared;
    @Mixin Help help = new Help();

    @CommandLine.Spec CommandLine.Model.CommandSpec spec = CommandLine.Model.CommandSpec.create();

    Top(Shared shared) {
      this.shared = shared;
    }

    @Override
    public void run() {
      throw new ParameterException(spec.commandLine(), "no command given");
    }
  }
}
