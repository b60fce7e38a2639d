package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.sensors.Phrase.Told;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PhraseTest {
  private static OptionalDouble number(String text) {
    return text == null ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text));
  }

  @ParameterizedTest
  @CsvSource({
    "10 min earlier 21.3, , 21.3, , -PT10M",
    "10 minutes ago: 21.3, , 21.3, , -PT10M",
    "21.3 ten s, , , , ",
    "21.3 C 2 hours before, temperature, 21.3, , -PT2H",
    "1.5 h earlier temperature was 21.3, temperature, 21.3, , -PT1H30M",
    "30 sec ago RH 46 %, humidity, 46, , -PT30S",
    "30 s before humidity=46, humidity, 46, , -PT30S",
    "10 s before 20.4/48.2, , 20.4, 48.2, -PT10S",
    "10 s earlier: 20.4 °C and 48.2 %, , 20.4, 48.2, -PT10S",
    "10 s earlier 48.2 % and 20.4 °C, , 20.4, 48.2, -PT10S",
    "250 ms after 20.4/48.3, , 20.4, 48.3, PT0.25S",
    "20.4/48.3 after 2 minutes, , 20.4, 48.3, PT2M",
    "next sample 20.4/48.3, , 20.4, 48.3, PT1M",
    "previous 99.4, , 99.4, , -PT1M",
    "previous reading -3.5 C, temperature, -3.5, , -PT1M",
    "last temperature 3 h old, , , , ",
    "previous message had 28-AA01 as sensor1 at 21.4, , , , ",
    "RH 45 at the same time, , , , ",
    "daemon connected 0.2 s ago, , , , ",
    "offline for 4 h, , , , "
  })
  void readsWhatTheSensorSaidItself(
      String phrase, String what, String first, String second, String offset) {
    Optional<Told> expected =
        offset == null
            ? Optional.empty()
            : Optional.of(
                new Told.Own(
                    Optional.ofNullable(what),
                    number(first),
                    number(second),
                    Duration.parse(offset)));

    assertThat(Phrase.read(phrase)).isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource({
    "same pair 300 times in 25 h, PT25H",
    "same pair for 5 h, PT5H",
    "unchanged for 2 days, PT48H",
    "identical values since 90 minutes, PT1H30M",
    "identical payload 4 s earlier, PT4S",
    "the same bytes 12 seconds ago, PT12S",
    "same message with the same seq 4 s before, PT4S"
  })
  void readsThatThePayloadCameBefore(String phrase, String ago) {
    assertThat(Phrase.read(phrase)).contains(new Told.Same(Duration.parse(ago)));
  }

  @ParameterizedTest
  @CsvSource({
    "neighbour 22.3 C 42.0 %, 22.3, 42",
    "neighbor: 22.3 °C / 42.0 %, 22.3, 42",
    "second sensor same room 71 %, , 71",
    "another sensor in the room 2 min ago 71 % RH, , 71",
    "second sensor in the room reads 47, , 47",
    "sensor B 48, , 48",
    "neighbour 21.0/45, 21, 45"
  })
  void readsWhatAnotherSensorSays(String phrase, String t, double rh) {
    assertThat(Phrase.read(phrase))
        .hasValueSatisfying(
            told ->
                assertThat(((Told.Others) told).each())
                    .containsExactly(new Phrase.Other(number(t), rh)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "same instant: sensor B 48, sensor C 50",
        "two other sensors read 48 and 50",
        "neighbours 48 % and 50 %"
      })
  void readsWhatTwoOthersSay(String phrase) {
    assertThat(Phrase.read(phrase))
        .hasValueSatisfying(
            told ->
                assertThat(((Told.Others) told).each())
                    .extracting(Phrase.Other::rh)
                    .containsExactly(48.0, 50.0));
  }

  @Test
  void readsTheRest() {
    assertThat(Phrase.read("99.9 for 14 h"))
        .contains(
            new Told.Lasting(
                Optional.empty(),
                99.9,
                OptionalDouble.empty(),
                Duration.ofHours(14),
                OptionalDouble.empty()));
    assertThat(Phrase.read("51.7 % for 3 h while the temperature rose by 4 K"))
        .hasValueSatisfying(
            told -> assertThat(((Told.Lasting) told).movedK()).isEqualTo(OptionalDouble.of(4)));
    assertThat(Phrase.read("climbed from 88 to 99.6 in 3 h"))
        .contains(new Told.Climbed(88, OptionalDouble.of(99.6), Duration.ofHours(3)));
    assertThat(Phrase.read("239 earlier messages within 50 ms")).contains(new Told.Burst(239));
    assertThat(Phrase.read("3 messages within 5 min")).isEmpty();
    assertThat(Phrase.read("newest stored 2026-03-14T09:29:00Z"))
        .contains(new Told.Newest(Instant.parse("2026-03-14T09:29:00Z")));
    assertThat(Phrase.read("header was time_ms,Temp_C,rh"))
        .contains(new Told.Header("time_ms,Temp_C,rh"));
    assertThat(Phrase.read("port opened 0.1 s ago"))
        .contains(new Told.Opened(Duration.ofMillis(100)));
    assertThat(Phrase.read("request 01 04 00 01 00 02 20 0b"))
        .hasValueSatisfying(
            told ->
                assertThat(((Told.Request) told).bytes())
                    .containsExactly(1, 4, 0, 1, 0, 2, 0x20, 0x0b));
  }

  @Property(tries = 2000, seed = "20261125")
  void neverThrowsWhateverThePhrase(@ForAll @StringLength(max = 200) String phrase) {
    assertThat(Phrase.read(phrase)).isNotNull();
  }
}
