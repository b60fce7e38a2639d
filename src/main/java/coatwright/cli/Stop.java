package coatwright.cli;

/** Ends a command with one clear line and an exit code. */
public final class Stop extends RuntimeException {
  /** Usage or bad input. */
  public static final int BAD_INPUT = 2;

  /** The daemon cannot be reached. */
  public static final int NOT_REACHABLE = 3;

  /** We cannot go on, and it is not the person's doing. */
  public static final int INTERNAL = 70;

  private final int exitCode;

  /** Ends with the code after printing the line. */
  public Stop(int exitCode, String line) {
    super(line);
    this.exitCode = exitCode;
  }

  /** Ends with the code after printing the line; the cause goes to the log. */
  public Stop(int exitCode, String line, Throwable cause) {
    super(line, cause);
    this.exitCode = exitCode;
  }

  /** The exit code. */
  public int exitCode() {
    return exitCode;
  }
}
