package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SafePatternTest {
  @Test
  void givesUpOnATextThatTakesTooLongInsteadOfHanging() {
    List<String> faults = new ArrayList<>();
    SafePattern slow = SafePattern.of("^(?:a?){24}(?:a|aa|aaa|aaaa){24}b$", faults).orElseThrow();
    long before = System.nanoTime();

    assertThat(slow.match("a".repeat(60))).isEmpty();
    assertThat(Duration.ofNanos(System.nanoTime() - before)).isLessThan(Duration.ofSeconds(2));
  }

  @Test
  void allowsLookingAheadAtTheStart() {
    List<String> faults = new ArrayList<>();
    SafePattern pattern =
        SafePattern.of("^(?=(?:.*;)?T=(?<t>\\d+))(?=(?:.*;)?H=(?<h>\\d+)).*$", faults)
            .orElseThrow();

    assertThat(faults).isEmpty();
    assertThat(pattern.match("H=48;T=21").orElseThrow().group("t")).isEqualTo("21");
  }
}
