package coatwright.sensors.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class LineAssemblerTest {
  private static List<String> lines(LineAssembler assembler, String... parts) {
    List<String> lines = new ArrayList<>();
    for (String part : parts) {
      assembler
          .take(part)
          .forEach(
              line ->
                  lines.add(
                      (line.maybeCut() ? "..." : "")
                          + (line.overlong() ? "(overlong)" : line.octets())));
    }
    return lines;
  }

  @Test
  void endsALineAtCrLfOrBoth() {
    assertThat(lines(new LineAssembler(false), "a\rb\nc\r\nd\r\n\r\n"))
        .containsExactly("a", "b", "c", "d");
  }

  @Test
  void marksWhatCameBeforeTheFirstLineEnd() {
    assertThat(lines(new LineAssembler(true), "idity: 46", ".30\r\nT=1\r\n"))
        .containsExactly("...idity: 46.30", "T=1");
  }

  @Test
  void reportsAnOverlongLineOnceAndGoesOn() {
    assertThat(lines(new LineAssembler(false), "x".repeat(5000), "x\nT=1\n"))
        .containsExactly("(overlong)", "T=1");
  }

  @Test
  void neverHandsOnARestThatWasDropped() {
    LineAssembler assembler = new LineAssembler(false);
    lines(assembler, "T=21.5;RH=4");
    assertThat(assembler.unfinished()).isTrue();
    assembler.dropRest();

    assertThat(lines(assembler, "8.3\nT=21.6;RH=48.1\n")).containsExactly("8.3", "T=21.6;RH=48.1");
  }

  @Property(seed = "20261125")
  void givesTheSameLinesHoweverTheBytesAreSplit(
      @ForAll @Size(max = 20) List<@IntRange(min = 1, max = 12) Integer> sizes) {
    String text = "T=21.5;RH=48.3\r\nT=21.6;RH=48.2\nT=21.7;RH=48.1\r";
    LineAssembler assembler = new LineAssembler(false);
    List<String> lines = new ArrayList<>();
    int at = 0;
    for (int size : sizes) {
      int end = Math.min(text.length(), at + size);
      lines.addAll(lines(assembler, text.substring(at, end)));
      at = end;
    }
    lines.addAll(lines(assembler, text.substring(at)));

    assertThat(lines).containsExactly("T=21.5;RH=48.3", "T=21.6;RH=48.2", "T=21.7;RH=48.1");
  }
}
