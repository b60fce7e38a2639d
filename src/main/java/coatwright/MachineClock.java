package coatwright;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.function.Supplier;

/**
 * The clocks of this machine: the one a person can set, the steady one that runs from the start of
 * the machine and stands still while it sleeps, and the one that runs on meanwhile.
 *
 * @param wall may be set at any time
 * @param steady since the start of the machine, without its sleep
 * @param sinceBoot since the start of the machine, sleep and all
 * @param network whether the first follows network time
 * @param boot the system's name for this run of the machine
 */
record MachineClock(
    Clock wall,
    Supplier<Duration> steady,
    Supplier<Duration> sinceBoot,
    Supplier<NetworkTime.Sync> network,
    String boot) {
  private static final Path BOOT_ID = Path.of("/proc/sys/kernel/random/boot_id");
  private static final Path UPTIME = Path.of("/proc/uptime");

  /** This machine's own. */
  static MachineClock ofThisMachine(Clock wall) {
    return new MachineClock(
        wall,
        () -> Duration.ofNanos(System.nanoTime()),
        MachineClock::uptime,
        NetworkTime::ask,
        bootId());
  }

  private static String bootId() {
    try {
      return Files.readString(BOOT_ID).strip();
    } catch (IOException notLinux) {
      // Then each start of the program counts as one of the machine: nothing is joined wrongly.
      return "start-" + ProcessHandle.current().pid() + "-" + System.nanoTime();
    }
  }

  private static Duration uptime() {
    try {
      String seconds = Files.readString(UPTIME).split(" ", 2)[0];
      return Duration.ofMillis(Math.round(Double.parseDouble(seconds) * 1000));
    } catch (IOException | NumberFormatException notLinux) {
      return Duration.ofNanos(System.nanoTime());
    }
  }

  Instant now() {
    return wall.instant();
  }
}
