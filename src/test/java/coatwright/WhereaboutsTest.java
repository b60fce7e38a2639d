package coatwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The note by which commands find the daemon of a data folder. */
class WhereaboutsTest {
  @TempDir Path data;

  @Test
  void aRunningDaemonIsFoundAndGoneWhenItStops() throws IOException {
    try (Whereabouts left = Whereabouts.leave(data, "127.0.0.1", 8497)) {
      assertThat(left).isNotNull();
      assertThat(Whereabouts.of(data)).contains(new Whereabouts.Address("127.0.0.1", 8497));
    }
    assertThat(Whereabouts.of(data)).isEmpty();
  }

  @Test
  void aNoteLeftByAProgramThatIsNoMoreIsNotBelieved() throws Exception {
    Process gone = new ProcessBuilder("true").start();
    gone.waitFor();
    Files.writeString(
        data.resolve("coatwright.address"), "127.0.0.1\n8497\n%d\n".formatted(gone.pid()));

    assertThat(Whereabouts.of(data)).isEmpty();
  }

  @Test
  void aFileThatIsNoNoteIsNotBelieved() throws IOException {
    Files.writeString(data.resolve("coatwright.address"), "somewhere\n");

    assertThat(Whereabouts.of(data)).isEmpty();
    assertThat(Whereabouts.of(data.resolve("nowhere"))).isEmpty();
  }
}
