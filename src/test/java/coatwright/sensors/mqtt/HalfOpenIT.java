package coatwright.sensors.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A link that dies without a word: both ends keep their connection, and nothing comes through.
 * Needs network namespaces; a machine that allows none fails here, with what to do.
 */
class HalfOpenIT {
  private static final String REMEDY =
      " — this test makes a network of its own. It runs as root, or where the system lets a user"
          + " make one (sysctl kernel.unprivileged_userns_clone=1 on Debian); in a container give"
          + " it --cap-add SYS_ADMIN --cap-add NET_ADMIN";

  @TempDir Path directory;

  @Test
  void noticesALinkThatDiedSilentlyAndHearsAgainWhenItIsBack() throws Exception {
    Path script = Files.writeString(directory.resolve("network.sh"), NETWORK);
    Path config =
        Files.writeString(
            directory.resolve("mosquitto.conf"),
            "user root\nlistener 1883 198.51.100.2\nallow_anonymous true\npersistence false\n");
    List<String> words = new ArrayList<>(List.of("unshare", "--net"));
    if (!"root".equals(System.getProperty("user.name"))) {
      words.add("--map-root-user");
    }
    words.addAll(
        List.of(
            "bash",
            script.toString(),
            config.toString(),
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            System.getProperty("java.class.path"),
            LonelyLink.class.getName()));
    Process network = new ProcessBuilder(words).redirectErrorStream(true).start();
    List<String> said = new ArrayList<>();
    try (BufferedReader lines = network.inputReader(StandardCharsets.UTF_8)) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        said.add(line);
      }
    } finally {
      network.destroy();
    }
    assertThat(network.waitFor(10, TimeUnit.SECONDS)).isTrue();

    assertThat(said).as(said + REMEDY).contains("network up");
    assertThat(said)
        .as("what the link said: " + said)
        .containsSubsequence(
            "network up",
            "link up",
            "heard first",
            "cut",
            "link down",
            "restored",
            "link up",
            "heard second",
            "done");
    assertThat(network.exitValue()).as(said.toString()).isZero();
  }

  /**
   * Two namespaces joined by a cable. Taking away the far end's address cuts it as a dead switch
   * would: packets go out and nobody answers, not even with a refusal.
   */
  private static final String NETWORK =
      """
      set -eu
      conf=$1 java=$2 classes=$3 main=$4
      trap 'kill $(jobs -p) 2>/dev/null || true' EXIT
      mkfifo "$conf.hold"
      unshare --net cat "$conf.hold" & far=$!
      exec 8>"$conf.hold"
      until [ -e /proc/$far/ns/net ] && [ "$(readlink /proc/$far/ns/net)" != "$(readlink /proc/self/ns/net)" ]; do
        kill -0 $far; sleep 0.02
      done
      ip link add near type veth peer name far netns $far
      ip addr add 198.51.100.1/24 dev near
      ip link set near up
      in_far() { nsenter --target $far --net "$@"; }
      in_far ip link set lo up
      in_far ip link set far up
      in_far ip addr add 198.51.100.2/24 dev far
      ip neigh replace 198.51.100.2 lladdr "$(in_far ip -o link show far | sed -n 's/.*ether \\([0-9a-f:]*\\).*/\\1/p')" dev near nud permanent
      broker=$(command -v mosquitto || echo /usr/sbin/mosquitto)
      in_far "$broker" -c "$conf" >/dev/null 2>&1 &
      echo 'network up'
      mkfifo "$conf.in" "$conf.out"
      "$java" -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -cp "$classes" "$main" tcp://198.51.100.2:1883 <"$conf.in" >"$conf.out" 2>/dev/null &
      exec 7>"$conf.in" 6<"$conf.out"
      until_said() { while IFS= read -r -t 40 -u 6 line; do echo "$line"; [ "$line" != "$1" ] || return 0; done; return 1; }
      tell() { in_far mosquitto_pub -h 198.51.100.2 -t a/b -m "$1" -q 1; }
      until_said 'link up'
      tell first
      until_said 'heard first'
      in_far ip addr del 198.51.100.2/24 dev far
      echo cut
      until_said 'link down'
      in_far ip addr add 198.51.100.2/24 dev far
      echo restored
      until_said 'link up'
      tell second
      until_said 'heard second'
      echo done
      """;
}
