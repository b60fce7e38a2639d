package coatwright;

import coatwright.cli.CommandLineDoor;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.List;

/** The program's front door. */
public final class Coatwright {
  private static final List<String> DAEMONS = List.of("run", "demo");

  private Coatwright() {}

  /** Runs one command. */
  public static void main(String[] args) {
    chooseLog(args);
    PrintWriter out = new PrintWriter(System.out, false, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    System.exit(
        CommandLineDoor.run(args, new House(Clock.systemUTC()), Clock.systemUTC(), out, err));
  }

  /** Before the first log line: a daemon tells what it does, a command only what went wrong. */
  private static void chooseLog(String[] args) {
    if (List.of(args).stream().anyMatch(DAEMONS::contains)) {
      setUnlessSet("coatwright.log.level", "INFO");
      setUnlessSet("coatwright.log.to", "System.out");
    }
  }

  private static void setUnlessSet(String key, String value) {
    if (System.getProperty(key) == null) {
      System.setProperty(key, value);
    }
  }
}
