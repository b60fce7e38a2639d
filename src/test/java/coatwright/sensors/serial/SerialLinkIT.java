package coatwright.sensors.serial;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.sensors.Eventually;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A serial line through real pseudo-terminals, unplugged and brought back. */
class SerialLinkIT {
  private static final Duration SOON = Duration.ofSeconds(20);
  private static final Duration REOPEN = Duration.ofMillis(200);

  @TempDir Path directory;

  private final List<String> lines = new CopyOnWriteArrayList<>();
  private final List<Boolean> settling = new CopyOnWriteArrayList<>();
  private final AtomicInteger overlong = new AtomicInteger();
  private final AtomicInteger changes = new AtomicInteger();

  private SerialLink link(Path device, Duration settle) {
    return new SerialLink(
        device.toString(),
        SerialSettings.USUAL,
        settle,
        REOPEN,
        new SerialListener() {
          @Override
          public void line(String octets, boolean boot) {
            lines.add(octets);
            settling.add(boot);
          }

          @Override
          public void overlong() {
            overlong.incrementAndGet();
          }

          @Override
          public void changed() {
            changes.incrementAndGet();
          }
        });
  }

  @Test
  void dropsThePartialFirstLineAndJoinsSplitOnes() {
    try (Socat pair = new Socat(directory);
        SerialLink link = link(pair.device(), Duration.ZERO)) {
      link.start();
      Eventually.within(SOON, "open", link::isOpen);
      pair.print("idity: 46.30\r\nT=21");
      pair.print(".5;RH=48.3\r\nT=21.6;RH=48.2\rT=21.7");
      Eventually.within(SOON, "two lines", () -> lines.size() == 2);

      assertThat(lines).containsExactly("T=21.5;RH=48.3", "T=21.6;RH=48.2");
      assertThat(settling).containsExactly(false, false);
    }
  }

  @Test
  void marksWhatABoardSaysWhileItSettles() {
    try (Socat pair = new Socat(directory);
        SerialLink link = link(pair.device(), Duration.ofMinutes(1))) {
      link.start();
      Eventually.within(SOON, "open", link::isOpen);
      pair.print("half\r\ntime_ms,temp_c,rh\r\n");
      Eventually.within(SOON, "line", () -> lines.size() == 1);

      assertThat(settling).containsExactly(true);
    }
  }

  @Test
  void resumesWhenTheDeviceComesBackUnderAnotherNumberWithoutABusyLoop() {
    try (Socat pair = new Socat(directory);
        Socat other = holdsTheOldNumber();
        SerialLink link = link(pair.device(), Duration.ZERO)) {
      link.start();
      Eventually.within(SOON, "open", link::isOpen);
      pair.print("\r\nT=21.5;RH=48.3\r\n");
      Eventually.within(SOON, "first line", () -> lines.size() == 1);
      Path before = pair.number();

      pair.pullOut();
      Eventually.within(SOON, "loss noticed", () -> !link.isOpen() && link.trouble().isPresent());
      assertThat(link.trouble().orElseThrow()).contains(pair.device().toString());
      long readsAtLoss = link.reads();
      other.pullOut();
      other.plugIn();
      pair.plugIn();
      Eventually.within(SOON, "open again", () -> link.opens() >= 2 && link.isOpen());
      assertThat(pair.number()).isNotEqualTo(before);
      Eventually.within(
          SOON,
          "a line after the return",
          () -> {
            pair.print("\r\nT=21.7;RH=48.1\r\n");
            return lines.size() >= 2;
          });

      assertThat(lines).contains("T=21.7;RH=48.1");
      assertThat(link.trouble()).isEmpty();
      assertThat(changes.get()).as("events").isLessThan(20);
      assertThat(link.reads() - readsAtLoss).as("reads since the loss").isLessThan(20_000);
    }
  }

  /** Takes the numbers just freed, so that the pair cannot come back under its own. */
  private Socat holdsTheOldNumber() {
    Path elsewhere = directory.resolve("other");
    assertThat(elsewhere.toFile().mkdirs()).isTrue();
    return new Socat(elsewhere);
  }

  @Test
  void dropsALineWithoutAnEndAndReadsTheNext() {
    try (Socat pair = new Socat(directory);
        SerialLink link = link(pair.device(), Duration.ZERO)) {
      link.start();
      Eventually.within(SOON, "open", link::isOpen);
      pair.print("\r\n" + "x".repeat(3000));
      Eventually.within(SOON, "overlong", () -> overlong.get() == 1);
      pair.print("\r\nT=21.5;RH=48.3\r\n");
      Eventually.within(SOON, "next line", () -> lines.size() == 1);

      assertThat(lines).containsExactly("T=21.5;RH=48.3");
    }
  }

  @Test
  void waitsForADeviceThatIsNotThereYet() {
    Path device = directory.resolve("near");
    try (SerialLink link = link(device, Duration.ZERO)) {
      link.start();
      Eventually.within(SOON, "trouble named", () -> link.trouble().isPresent());
      assertThat(link.trouble().orElseThrow())
          .contains("is not there; is it plugged in, and is the path right?");
      try (Socat pair = new Socat(directory)) {
        Eventually.within(SOON, "opened at last", link::isOpen);
        assertThat(pair.device()).isEqualTo(device);
      }
    }
  }

  @Test
  void waitsWhileAnotherProgramHoldsTheDeviceAndSaysSo() throws Exception {
    try (Socat pair = new Socat(directory);
        SerialLink link = link(pair.device(), Duration.ZERO)) {
      Process other =
          new ProcessBuilder(
                  "flock", "--exclusive", pair.number().toString(), "sh", "-c", "echo held; cat")
              .start();
      try (BufferedReader said = other.inputReader(StandardCharsets.UTF_8)) {
        assertThat(said.readLine()).isEqualTo("held");
        link.start();
        Eventually.within(SOON, "named", () -> link.trouble().isPresent());
        assertThat(link.trouble().orElseThrow())
            .contains("is busy: another program has it open")
            .contains("fuser " + pair.device());
        assertThat(link.isOpen()).isFalse();

        other.getOutputStream().close();
        Eventually.within(SOON, "open when it is free", link::isOpen);
        assertThat(link.trouble()).isEmpty();
      } finally {
        other.destroyForcibly();
      }
    }
  }

  @Test
  void keepsASecondReaderOut() throws Exception {
    try (Socat pair = new Socat(directory);
        SerialLink first = link(pair.device(), Duration.ZERO)) {
      first.start();
      Eventually.within(SOON, "open", first::isOpen);
      Process second = lonely(List.of(), pair.device());
      try (BufferedReader said = second.inputReader(StandardCharsets.UTF_8)) {
        assertThat(said.readLine()).contains("is busy: another program has it open");
        pair.print("\r\nT=21.5;RH=48.3\r\n");
        Eventually.within(SOON, "the first hears it all", () -> lines.size() == 1);
        assertThat(lines).containsExactly("T=21.5;RH=48.3");
      } finally {
        second.destroyForcibly();
      }
    }
  }

  /** Another program that would listen to the device. */
  private static Process lonely(List<String> before, Path device) throws IOException {
    List<String> words = new ArrayList<>(before);
    words.addAll(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            LonelySerial.class.getName(),
            device.toString()));
    return new ProcessBuilder(words).redirectError(ProcessBuilder.Redirect.DISCARD).start();
  }

  @Test
  void tellsBytesWithoutLinesFromNoSensor() {
    try (Socat pair = new Socat(directory);
        SerialLink link = link(pair.device(), Duration.ZERO)) {
      link.start();
      Eventually.within(SOON, "open", link::isOpen);
      Eventually.within(
          SOON,
          "named",
          () -> {
            pair.print("\u00fe\u0080\u00f8".repeat(20));
            return link.trouble().isPresent();
          });

      assertThat(link.trouble().orElseThrow())
          .contains("bytes but no lines at 9600 8N1; the speed is probably wrong");
      assertThat(lines).isEmpty();
    }
  }

  /** As root without its right to open everything, or as the user who runs the tests. */
  @Test
  void namesTheGroupWhenTheUserMayNotOpenTheDevice() throws Exception {
    try (Socat pair = new Socat(directory)) {
      Files.setPosixFilePermissions(pair.number(), Set.of());
      boolean root = "root".equals(System.getProperty("user.name"));
      Process child =
          lonely(
              root
                  ? List.of("setpriv", "--bounding-set=-dac_override,-dac_read_search")
                  : List.of(),
              pair.device());
      try (BufferedReader said = child.inputReader(StandardCharsets.UTF_8)) {
        String group =
            Files.readAttributes(pair.number(), PosixFileAttributes.class).group().getName();
        assertThat(said.readLine())
            .contains("may not be opened by " + System.getProperty("user.name"))
            .contains("add it to the group " + group)
            .contains("log in anew or restart the service");
      } finally {
        child.destroyForcibly();
      }
    }
  }
}
