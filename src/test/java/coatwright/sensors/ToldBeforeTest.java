package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A recording tells in plain phrases what came before; the verdict must follow from it. */
class ToldBeforeTest {
  private static final Recorded RECORDED =
      new Recorded(
          MappingReader.readForRecordings(
              Mappings.setting(
                  """
                  {'pair': {'payload': 'json', 'readings': [
                     {'quantity': 'air-temperature', 'at': '/t', 'unit': 'Cel'},
                     {'quantity': 'relative-humidity', 'at': '/h', 'unit': '%'}]}}
                  """)),
          Clock.fixed(Instant.parse("2026-03-14T09:30:00Z"), ZoneOffset.UTC));

  private static String verdict(double t, double h, String... context) {
    String phrases = Stream.of(context).map("\"%s\""::formatted).collect(Collectors.joining(","));
    List<MappedPayload> verdicts =
        RECORDED.judge(
            """
            {"id": "x", "transport": "mqtt", "topic": "a", "profile": "pair",
             "raw": "{\\"t\\":%s,\\"h\\":%s}", "context": [%s]}
            """
                .formatted(t, h, phrases));
    return verdicts.get(0).verdict();
  }

  @ParameterizedTest
  @CsvSource({
    "31.4, 48.3, 10 s before 20.4/48.2, heldBack",
    "21.4, 48.3, 10 s before 20.4/48.2, accepted",
    "20.4, 75.3, 10 s before 20.4/48.2, heldBack",
    "31.4, 48.3, 2 h earlier 20.4/48.2, accepted",
    "20.4, 48.3, same pair for 25 h, heldBack",
    "20.4, 48.3, same pair for 1 h, accepted",
    "20.4, 99.8, previous 99.4, accepted",
    "20.4, 99.8, previous 55.0, heldBack",
    "20.4, 99.8, climbed from 88 to 99.6 in 3 h, accepted",
    "27.3, 31.0, neighbour 22.3 C 42.0 %, heldBack",
    "22.5, 41.5, neighbour 22.3 C 42.0 %, accepted",
    "20.4, 48.3, identical payload 4 s earlier, refused",
    "20.4, 48.3, a note for the reader, accepted"
  })
  void judgesInTheLightOfWhatIsTold(double t, double h, String context, String verdict) {
    assertThat(verdict(t, h, context)).isEqualTo(verdict);
  }

  @Test
  void believesAJumpThatIsKnownToHaveStayed() {
    assertThat(verdict(20.4, 66.0, "10 s before 20.4/48.2", "10 s after 20.4/64.8"))
        .isEqualTo("accepted");
    assertThat(verdict(20.4, 66.0, "10 s before 20.4/48.2", "10 s after 20.4/48.3"))
        .isEqualTo("heldBack");
  }
}
