package coatwright.store;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.journal.Entry;
import coatwright.journal.Strike;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A program killed with no warning loses no entry it has acknowledged. */
class KillNineIT {
  private static final int KILLS = 4;

  @TempDir Path folder;

  @Test
  void everyAcknowledgedEntryOutlivesTheProgramThatWasKilled() throws Exception {
    Map<String, String> promised = new HashMap<>();
    for (int kill = 0; kill < KILLS; kill++) {
      // Killed after differing numbers of entries, in the middle of whatever it then does.
      promised.putAll(runAndKill(Integer.toString(kill), 10 + 13 * kill));
    }
    try (SqliteStore store = SqliteStore.open(folder, Clock.systemUTC())) {
      Map<String, String> found = new HashMap<>();
      for (Entry entry : store.ledger().entries()) {
        found.put(entry.id(), ((Strike) entry.body()).reason());
      }
      assertThat(found).containsAllEntriesOf(promised);
      assertThat(promised).hasSizeGreaterThan(KILLS * 10);
      assertThat(store.damage()).isEmpty();
    }
  }

  private Map<String, String> runAndKill(String run, int after)
      throws IOException, InterruptedException {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Process process =
        new ProcessBuilder(
                java,
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                Scribe.class.getName(),
                folder.toString(),
                run)
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    Map<String, String> promised = new HashMap<>();
    try (BufferedReader said = process.inputReader(StandardCharsets.UTF_8)) {
      for (String line = said.readLine(); line != null; line = said.readLine()) {
        String[] words = line.split(" ", -1);
        if (words.length == 2 && words[1].startsWith(run + "-")) {
          promised.put(words[0], words[1]);
        }
        if (promised.size() == after) {
          process.toHandle().destroyForcibly();
        }
      }
    }
    process.waitFor();
    assertThat(process.exitValue()).as("killed, not ended").isEqualTo(128 + 9);
    return promised;
  }
}
