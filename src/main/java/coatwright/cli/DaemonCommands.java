package coatwright.cli;

import coatwright.cli.Hall.DemoWish;
import coatwright.quantity.Quantities;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The two commands that stay. */
final class DaemonCommands {
  private static final int LAST_PORT = 65_535;

  private DaemonCommands() {}

  /** The daemon for a real shop. */
  @Command(
      name = "run",
      description = "Run the daemon for your shop, until it is told to stop.",
      footer = {"", "Example: coatwright run --config config/coatwright.yaml"})
  static final class Run implements Callable<Integer> {
    @Mixin Help help = new Help();
    private final Shared shared;

    Run(Shared shared) {
      this.shared = shared;
    }

    @Override
    public Integer call() {
      shared.hall.run(shared.place(), shared::say);
      return 0;
    }
  }

  /** The demo. */
  @Command(
      name = "demo",
      description = {
        "Run an invented shop: its own MQTT broker, simulated sensors, weeks of history,",
        "a piece in progress and a clouded batch to look into. Nothing in it is measured."
      },
      footer = {"", "Example: coatwright demo"})
  static final class Demo implements Callable<Integer> {
    @Option(names = "--port", paramLabel = "N", description = "Port of the pages. Default: 8410.")
    @Nullable String port;

    @Option(
        names = "--broker-port",
        paramLabel = "N",
        description = "Port of its broker. Default: 18883, or the next free one.")
    @Nullable String brokerPort;

    @Option(names = "--stop-after", paramLabel = "TIME", hidden = true)
    @Nullable String stopAfter;

    @Mixin Help help = new Help();
    private final Shared shared;

    Demo(Shared shared) {
      this.shared = shared;
    }

    @Override
    public Integer call() {
      Optional<Duration> after =
          Optional.ofNullable(stopAfter).map(text -> Quantities.duration("--stop-after", text));
      DemoWish wish = new DemoWish(port("--port", port), port("--broker-port", brokerPort), after);
      shared.hall.demo(shared.place(), wish, shared::say);
      return 0;
    }

    private static OptionalInt port(String option, @Nullable String text) {
      if (text == null) {
        return OptionalInt.empty();
      }
      if (text.matches("\\d{1,5}") && Integer.parseInt(text) <= LAST_PORT) {
        return OptionalInt.of(Integer.parseInt(text));
      }
      throw new Stop(
          Stop.BAD_INPUT,
          option + " \"" + text + "\": a port is a number from 1 to 65535; write it like 8410");
    }
  }

  /** A start and a stop, so that the launcher can keep the classes they need in an archive. */
  @Command(name = "rehearse", hidden = true, description = "Start the demo and stop it again.")
  static final class Rehearse implements Callable<Integer> {
    private static final Duration SHORT = Duration.ofSeconds(2);

    private final Shared shared;

    Rehearse(Shared shared) {
      this.shared = shared;
    }

    @Override
    public Integer call() {
      DemoWish wish = new DemoWish(OptionalInt.of(0), OptionalInt.of(0), Optional.of(SHORT));
      shared.hall.demo(shared.place(), wish, line -> {});
      return 0;
    }
  }
}
