package coatwright.cli;

import picocli.CommandLine.Option;

/** The one way to ask what a command does. */
final class Help {
  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Say what this does, and stop.")
  boolean asked;
}
