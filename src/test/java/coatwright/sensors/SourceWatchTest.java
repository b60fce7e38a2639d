package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.climate.SourceState;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SourceWatchTest {
  private static final Instant START = Instant.parse("2026-03-14T09:30:00Z");

  private final SourceMapping mapping = Mappings.mqtt("wall", "shop/wall");
  private final Intake intake = Intake.alone(mapping);
  private final SourceWatch watch =
      new SourceWatch(mapping, new Calibration(mapping, Upkeep.NONE), Clock.systemUTC());

  private void hear(String text, Duration at) {
    RawReading raw =
        RawReading.of(
            "shop/wall",
            text.getBytes(StandardCharsets.UTF_8),
            START.plus(at),
            RawReading.Way.MESSAGE);
    watch.took(intake.take(raw), false, at.toNanos());
  }

  private SourceState stateAt(Duration at) {
    return watch.status(at.toNanos(), Optional.empty()).state();
  }

  @Test
  void waitsForTheFirstReading() {
    assertThat(stateAt(Duration.ofDays(2))).isEqualTo(SourceState.WAITING);
  }

  @ParameterizedTest
  @CsvSource({
    "PT0S, CURRENT",
    "PT150S, CURRENT",
    "PT151S, LATE",
    "PT15M, LATE",
    "PT15M1S, STALE",
    "PT6H, STALE",
    "PT6H1S, LOST"
  })
  void agesByMonotonicTimeAgainstTheInterval(Duration age, SourceState state) {
    hear("{\"t\":20.1,\"h\":50.2}", Duration.ZERO);

    assertThat(stateAt(age)).isEqualTo(state);
  }

  @Test
  void isRefusedWhenItSpeaksButNothingCanBeBelieved() {
    for (int minute = 0; minute < 3; minute++) {
      hear("{\"t\":\"nan\",\"h\":\"nan\"}", Duration.ofMinutes(minute));
    }
    var status = watch.status(Duration.ofMinutes(3).toNanos(), Optional.empty());

    assertThat(status.state()).isEqualTo(SourceState.REFUSED);
    assertThat(status.refused()).isEqualTo(3);
    assertThat(status.lastRefused()).hasSize(3);
    assertThat(status.trouble().orElseThrow()).contains("nothing it says can be believed");
  }

  @Test
  void isNotAlarmedByAnotherDeviceOnTheSameTopic() {
    hear("{\"t\":20.1,\"h\":50.2}", Duration.ZERO);
    for (int i = 0; i < 5; i++) {
      hear("{\"contact\":true}", Duration.ofSeconds(i));
    }
    var status = watch.status(Duration.ofMinutes(10).toNanos(), Optional.empty());

    assertThat(status.state()).isEqualTo(SourceState.LATE);
    assertThat(status.refused()).isZero();
  }

  @Test
  void keepsTheLastTwentyRefusedInputsNewestFirst() {
    for (int i = 0; i < 30; i++) {
      hear("broken " + i, Duration.ofMinutes(i));
    }
    var kept = watch.status(0, Optional.empty()).lastRefused();

    assertThat(kept).hasSize(20);
    assertThat(kept.get(0).text()).isEqualTo("broken 29");
  }

  @Test
  void saysTheLinksTroubleFirst() {
    assertThat(watch.status(0, Optional.of("device is gone; plug it in again")).trouble())
        .contains("device is gone; plug it in again");
  }

  @Test
  void saysForAWhileHowManyMessagesWereDroppedUnread() {
    hear("{\"t\":20.1,\"h\":50.2}", Duration.ZERO);
    for (int i = 0; i < 3; i++) {
      watch.droppedUnread(Duration.ofSeconds(1).toNanos());
    }

    assertThat(watch.status(Duration.ofMinutes(1).toNanos(), Optional.empty()).trouble())
        .contains(
            "3 messages dropped unread since the start: more come than can be read; narrow the"
                + " filter");
    assertThat(watch.status(Duration.ofMinutes(1).toNanos(), Optional.empty()).state())
        .isEqualTo(SourceState.CURRENT);
    assertThat(watch.status(Duration.ofMinutes(12).toNanos(), Optional.empty()).trouble())
        .contains("nothing for 12 min, expected every 60 s");
  }

  @Test
  void believesAGoneThatTheBrokerKeptOnlyWhereNothingIsFresh() {
    watch.present(false, true, 0);
    assertThat(watch.status(0, Optional.empty()).trouble().orElseThrow())
        .contains("says it is gone");

    hear("{\"t\":20.1,\"h\":50.2}", Duration.ofMinutes(1));
    watch.present(false, true, Duration.ofMinutes(2).toNanos());
    assertThat(stateAt(Duration.ofMinutes(2))).isEqualTo(SourceState.CURRENT);

    watch.present(false, false, Duration.ofMinutes(2).toNanos());
    assertThat(stateAt(Duration.ofMinutes(2))).isEqualTo(SourceState.LATE);
  }
}
