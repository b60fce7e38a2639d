package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coatwright.json.Json;
import coatwright.quantity.RefusedInput;
import java.io.IOException;
import org.junit.jupiter.api.Test;

/** What a recording's bytes are, however they are written. */
class ChunksTest {
  private static Chunks chunks(String json) {
    try {
      return Chunks.of(Json.mapper().readTree(json));
    } catch (IOException e) {
      throw new IllegalArgumentException(json, e);
    }
  }

  @Test
  void takesBytesFromCharactersDigitsOrPieces() {
    assertThat(chunks("{\"raw\":\"T=\\u00b0\"}").octets()).isEqualTo("T=\u00b0");
    assertThat(chunks("{\"raw\":\"x\",\"hex\":\"01 ff\"}").octets()).isEqualTo("\u0001\u00ff");
    assertThat(chunks("{\"chunks\":[\"T=2\",{\"hex\":\"31\"},{\"raw\":\"\\n\"}]}").octets())
        .isEqualTo("T=21\n");
  }

  @Test
  void takesTextThatIsNoBytesAsUtf8() {
    assertThat(chunks("{\"raw\":\"\\u20ac\"}").octets()).isEqualTo("\u00e2\u0082\u00ac");
  }

  @Test
  void dropsTheRestOfALineAfterALongSilence() {
    assertThat(
            chunks(
                    "{\"chunks\":[\"ab\",{\"raw\":\"cd\\n\",\"after_s\":0.5},{\"raw\":\"e\"},"
                        + "{\"raw\":\"f\\n\",\"pause_ms\":5000}]}")
                .lines())
        .extracting(line -> line.octets())
        .containsExactly("abcd", "f");
  }

  @Test
  void refusesARecordingWithoutBytes() {
    assertThatThrownBy(() -> chunks("{\"id\":\"1\"}"))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("has no raw text");
  }
}
