package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** Columns under a header that is learned once. */
class ColumnsFormTest {
  private static final Instant START = Instant.parse("2026-03-14T09:30:00Z");
  private static final String MAPPING =
      """
      {'payload': 'columns', 'separator': ',', 'header': %s, 'readings': [
        {'quantity': 'air-temperature', 'at': '%s', 'unit': 'Cel'},
        {'quantity': 'relative-humidity', 'at': '%s', 'unit': '%%'}]}
      """;

  private static Intake intake(boolean header, String t, String h) {
    return Intake.alone(Mappings.recorded(MAPPING.formatted(header, t, h)));
  }

  private static MappedPayload say(Intake intake, String line) {
    byte[] bytes = line.getBytes(StandardCharsets.UTF_8);
    return intake.take(RawReading.of("port", bytes, START, RawReading.Way.LINE)).verdict();
  }

  @Test
  void takesValuesByTheNamesOfTheHeaderWhateverTheirOrder() {
    Intake intake = intake(true, "temp_c", "rh");
    assertThat(say(intake, "time_ms,rh,temp_c").reason()).contains("header line");

    MappedPayload row = say(intake, "60012,55.1,19.42");
    assertThat(row.accepted().get(0).temperatureC()).hasValue(19.42);
    assertThat(row.accepted().get(0).rhPct()).hasValue(55.1);
  }

  @Test
  void refusesRowsUntilAHeaderWasSeen() {
    assertThat(say(intake(true, "temp_c", "rh"), "60012,19.42,55.1").reason().orElseThrow())
        .contains("no header line seen yet");
  }

  @Test
  void stopsAtAChangedHeaderUntilAPersonHasLooked() {
    Intake intake = intake(true, "temp_c", "rh");
    say(intake, "time_ms,temp_c,rh");
    assertThat(say(intake, "time_ms,rh,temp_c").reason().orElseThrow()).contains("header changed");

    assertThat(say(intake, "60012,55.1,19.42").accepted()).isEmpty();
  }

  private static void overhear(Intake intake, String line, boolean maybeCut) {
    byte[] bytes = line.getBytes(StandardCharsets.UTF_8);
    intake.overhear(RawReading.of("port", bytes, START, RawReading.Way.LINE), maybeCut);
  }

  @Test
  void aHeaderSaidWhileTheLineSettlesIsLearned() {
    Intake intake = intake(true, "temp_c", "rh");
    overhear(intake, "temp_c,rh,time_ms", false);

    assertThat(say(intake, "19.42,55.1,60012").accepted().get(0).rhPct()).hasValue(55.1);
  }

  @Test
  void theFirstNameOfALineThatMayBeCutIsNotBelieved() {
    Intake intake = intake(true, "temp_c", "rh");
    overhear(intake, "temp_c,rh", true);

    assertThat(say(intake, "19.42,55.1").reason().orElseThrow())
        .as("it may have been board_temp_c")
        .contains("no header line seen yet");
  }

  @Test
  void aHeaderOverheardWithoutItsBeginningGivesWayToTheWholeOne() {
    Intake intake = intake(true, "temp_c", "rh");
    overhear(intake, "ms,temp_c,rh", true);
    assertThat(say(intake, "60012,19.42,55.1").accepted().get(0).temperatureC()).hasValue(19.42);
    say(intake, "time_ms,temp_c,rh");

    assertThat(say(intake, "60012,19.42,55.1").accepted().get(0).temperatureC()).hasValue(19.42);
    assertThat(say(intake, "up,time_ms,temp_c,rh").reason().orElseThrow())
        .as("learned whole, it is no longer completed")
        .contains("header changed");
  }

  @Test
  void refusesARowWithAnotherNumberOfColumns() {
    Intake intake = intake(true, "temp_c", "rh");
    say(intake, "time_ms,temp_c,rh");

    assertThat(say(intake, "60012,19.42").reason()).contains("2 columns where the header names 3");
  }

  @Test
  void countsColumnsFromOneWhereThereIsNoHeader() {
    MappedPayload row = say(intake(false, "2", "3"), "60012,19.42,55.1");

    assertThat(row.accepted().get(0).temperatureC()).hasValue(19.42);
    assertThat(row.accepted().get(0).rhPct()).hasValue(55.1);
  }

  @Test
  void readsQuotedCells() {
    Intake intake = intake(true, "temp, c", "rh");
    say(intake, "\uFEFF\"time\",\"temp, c\",\"rh\"");

    MappedPayload row = say(intake, "\"a \"\"b\"\", c\",\"19.42\",55.1");
    assertThat(row.accepted().get(0).temperatureC()).hasValue(19.42);
  }
}
