package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TimeReaderTest {
  private static final Instant ARRIVED = Instant.parse("2026-03-14T09:30:00Z");

  private static TimeReader.Found read(String text, Instant arrivedAt, TimeRule.Form... forms) {
    TimeRule rule =
        new TimeRule("at", List.of(forms), Optional.of(ZoneId.of("Europe/Berlin")), true);
    return new TimeReader(Optional.of(rule)).read(place -> new Cell.Words(text), arrivedAt);
  }

  @ParameterizedTest
  @CsvSource({
    "1773480590, 2026-03-14T09:29:50Z",
    "1773480590.5, 2026-03-14T09:29:50.500Z",
    "1773480590123, 2026-03-14T09:29:50.123Z",
    "1773480590123456, 2026-03-14T09:29:50.123456Z",
    "1773480590123456789, 2026-03-14T09:29:50.123456789Z"
  })
  void tellsSecondsFromFinerCountsBySize(String text, Instant at) {
    assertThat(read(text, ARRIVED, TimeRule.Form.EPOCH_AUTO).at()).isEqualTo(at);
  }

  @Test
  void doesNotUseAnHourTheClockSkipped() {
    Instant arrived = Instant.parse("2026-03-29T01:30:05Z");
    TimeReader.Found found = read("2026-03-29T02:30:00", arrived, TimeRule.Form.LOCAL);

    assertThat(found.at()).isEqualTo(arrived);
    assertThat(found.flags()).containsExactly("nonexistent_local_time", "time_unparsed");
  }

  @ParameterizedTest
  @CsvSource({
    "2026-10-25T00:30:04Z, 2026-10-25T00:30:00Z",
    "2026-10-25T01:30:04Z, 2026-10-25T01:30:00Z"
  })
  void takesTheRepeatedHourNearestTheArrival(Instant arrived, Instant at) {
    TimeReader.Found found = read("2026-10-25T02:30:00", arrived, TimeRule.Form.LOCAL);

    assertThat(found.at()).isEqualTo(at);
    assertThat(found.flags()).containsExactly("ambiguous_local_time");
  }

  @ParameterizedTest
  @CsvSource({
    "188, clock_not_set", "1970-01-01T00:03:08, clock_not_set",
    "2026-04-06T06:31:10Z, future_time", "14/03/2026 10:29, time_unparsed",
    "2026-03-14T09:29:00, time_without_zone"
  })
  void usesTheArrivalAndSaysWhyWhenTheTimeCannotBeTrue(String text, String flag) {
    TimeReader.Found found = read(text, ARRIVED, TimeRule.Form.RFC3339, TimeRule.Form.EPOCH_AUTO);

    assertThat(found.at()).isEqualTo(ARRIVED);
    assertThat(found.own()).isFalse();
    assertThat(found.flags()).contains(flag);
  }
}
