package coatwright.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SettingsFaultsTest {
  @TempDir Path folder;

  @Test
  void tellsEveryFaultOfTheFileWithItsLine() throws IOException {
    String told =
        refusalOf(
            """
            shop:
              name: quay
              altitude: 50
              units: metrical
              zone: Europe/Lisbo
            rooms:
              - name: finishing room
                volume: 28m3
              - volume: 28
            web:
              port: 84100
            colour: blue
            """);

    assertThat(told)
        .startsWith("coatwright.yaml, 7 faults:")
        .contains("line 3: shop.altitude \"50\": an altitude needs its unit; write it like 50m")
        .contains(
            "line 4: shop.units \"metrical\": it is one of us, metric, imperial; write metric")
        .contains(
            "line 5: shop.zone \"Europe/Lisbo\": no such time zone; did you mean Europe/Lisbon?")
        .contains("line 9: rooms[2].name: missing")
        .contains(
            "line 9: rooms[2].volume \"28\": a room's volume needs its unit; write it like 28m3")
        .contains("line 11: web.port \"84100\": a number from 1 to 65535 is expected")
        .contains(
            "line 12: colour: no such key; known here: brokers, finishes, outdoor-forecast, rooms,"
                + " shop");
  }

  @Test
  void namesTheNearestKeyForAMistypedOne() throws IOException {
    assertThat(refusalOf("rooms:\n  - name: bench\nweb:\n  prot: 8410\n"))
        .isEqualTo(
            "coatwright.yaml, 1 fault:\n  line 4: web.prot: no such key; did you mean port?");
  }

  @Test
  void saysOnWhichLineAFileStopsBeingYaml() throws IOException {
    assertThat(refusalOf("rooms:\n  - name: bench\n\tvolume: 28m3\n"))
        .startsWith("coatwright.yaml, ")
        .contains("line 3: this line: is no YAML");
  }

  @Test
  void tellsAKeyWrittenTwice() throws IOException {
    assertThat(refusalOf("rooms:\n  - name: bench\nweb:\n  port: 1\n  port: 2\n"))
        .contains("line 5: web.port: stands twice; keep one of them");
  }

  @Test
  void saysWhereTheFileWasLookedForWhenThereIsNone() {
    RefusedSettings refused =
        catchThrowableOfType(
            RefusedSettings.class, () -> SettingsFolder.read(folder.resolve("coatwright.yaml")));

    assertThat(refused).hasMessageContaining("is not there").hasMessageContaining("--config");
    assertThat(refused.getMessage().lines()).as("that one fault and no other").hasSize(2);
  }

  @Test
  void tellsTheFaultsOfFinishFilesBesideThoseOfTheSettings() throws IOException {
    Files.createDirectories(folder.resolve("finishes"));
    Files.writeString(
        folder.resolve("finishes/quick.yaml"),
        """
        title: Quick
        usual-cut: 2
        wet-film: {brush: 75um}
        build-limit: 100um
        test-due: half a year
        """);

    assertThat(refusalOf("shop:\n  usual-finish: quick\n  altitude: 3\nrooms:\n  - name: bench\n"))
        .contains("coatwright.yaml, 1 fault:\n  line 3: shop.altitude")
        .contains("finishes/quick.yaml, 2 faults:")
        .contains("line 2: usual-cut \"2\": a cut needs its unit")
        .contains("line 5: test-due \"half a year\": whole months are expected");
  }

  @Test
  void refusesABrokerThatIsNoAddress() throws IOException {
    assertThat(refusalOf("rooms:\n  - name: bench\nbrokers:\n  house:\n    url: 127.0.0.1\n"))
        .contains("line 5: brokers.house.url \"127.0.0.1\": tcp://HOST:PORT");
  }

  private String refusalOf(String settings) throws IOException {
    Path file = folder.resolve("coatwright.yaml");
    Files.writeString(file, settings);
    RefusedSettings refused =
        catchThrowableOfType(RefusedSettings.class, () -> SettingsFolder.read(file));
    assertThat(refused).as("a refusal of these settings").isNotNull();
    return String.valueOf(refused.getMessage());
  }
}
