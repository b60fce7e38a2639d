package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.climate.Reading;
import coatwright.climate.Role;
import coatwright.quantity.RefusedInput;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** One source's path, with what it remembers between payloads. */
class IntakeTest {
  private static final Instant START = Instant.parse("2026-03-14T09:30:00Z");
  private static final String PAIR =
      """
      {'source': 'wall', 'transport': 'mqtt', 'filter': 'shop/wall', 'room': 'bench room',
       'chip': 'SHT31', 'payload': 'json', 'every': 'PT1M', %s 'readings': [
        {'quantity': 'air-temperature', 'at': '/t', 'unit': 'Cel'},
        {'quantity': 'relative-humidity', 'at': '/h', 'unit': '%%'}]}
      """;

  private Instant now = START;

  private Intake.Taken say(Intake intake, double t, double rh, Duration later) {
    now = now.plus(later);
    return intake.take(
        RawReading.of(
            "shop/wall",
            "{\"t\":%s,\"h\":%s}".formatted(t, rh).getBytes(StandardCharsets.UTF_8),
            now,
            RawReading.Way.MESSAGE));
  }

  private static Intake wall() {
    return wall("");
  }

  private static Intake wall(String more) {
    return Intake.alone(Mappings.source(PAIR.formatted(more)));
  }

  @Test
  void handsOnABelievedPairWithItsPlaceAndItsUncertainty() {
    Reading reading = say(wall(), 20.4, 48.2, Duration.ZERO).readings().get(0);

    assertThat(reading.source()).isEqualTo("wall");
    assertThat(reading.sensor()).isEqualTo("wall");
    assertThat(reading.role()).isEqualTo(Role.ROOM);
    assertThat(reading.room()).contains("bench room");
    assertThat(reading.at()).isEqualTo(START);
    assertThat(reading.temperatureC()).hasValue(20.4);
    assertThat(reading.rhPct()).hasValue(48.2);
    assertThat(reading.temperatureErrorK()).isEqualTo(0.3);
    assertThat(reading.rhErrorPct()).isEqualTo(2);
    assertThat(reading.flags()).isEmpty();
  }

  @Test
  void holdsASpikeBackAndBelievesTheReturn() {
    Intake intake = wall();
    say(intake, 20.4, 48.2, Duration.ZERO);

    assertThat(say(intake, 31.4, 48.3, Duration.ofSeconds(10)).verdict().heldBack()).hasSize(1);
    assertThat(say(intake, 20.4, 48.4, Duration.ofSeconds(10)).readings()).hasSize(1);
  }

  @Test
  void holdsOneJumpBackAndBelievesBothWhenTheNextAgrees() {
    Intake intake = wall();
    say(intake, 12.0, 60, Duration.ZERO);

    Intake.Taken jump = say(intake, 26.0, 60.5, Duration.ofMinutes(1));
    assertThat(jump.readings()).isEmpty();
    assertThat(jump.doubts()).hasSize(1);
    assertThat(jump.doubts().get(0).sentence())
        .isEqualTo("just read 26.0 °C, 61 %: a jump, waiting for one more reading to agree");
    Intake.Taken next = say(intake, 26.1, 60.4, Duration.ofMinutes(1));
    assertThat(next.doubts()).isEmpty();
    assertThat(next.readings())
        .extracting(reading -> reading.temperatureC().orElseThrow())
        .containsExactly(26.0, 26.1);
    assertThat(next.readings()).allMatch(reading -> reading.flags().contains("step"));
    assertThat(next.readings().get(0).at()).isEqualTo(now.minus(Duration.ofMinutes(1)));
  }

  @Test
  void aJumpThatDecaysIsRealAndOneThatGoesOnJumpingIsNot() {
    Intake decaying = wall();
    say(decaying, 20.0, 50, Duration.ZERO);
    say(decaying, 31.0, 50.5, Duration.ofSeconds(10));
    assertThat(say(decaying, 28.0, 52.4, Duration.ofSeconds(10)).readings()).hasSize(2);

    Intake wild = wall();
    say(wild, 20.0, 50, Duration.ZERO);
    say(wild, 31.0, 50.5, Duration.ofSeconds(10));
    assertThat(say(wild, 45.0, 50.2, Duration.ofSeconds(10)).readings()).isEmpty();
    assertThat(say(wild, 20.1, 50.3, Duration.ofSeconds(10)).readings())
        .as("back within two samples: neither is believed")
        .hasSize(1);
  }

  @Test
  void correctsAJumpThatIsBorneOutLikeAnyOther() {
    Intake intake =
        wall(
            """
            'correct': [{'quantity': 'relative-humidity', 'offset': 2.0, 'from': '2025-03-14'}],
            """);
    say(intake, 20.0, 40, Duration.ZERO);
    assertThat(say(intake, 20.0, 60, Duration.ofSeconds(30)).doubts().get(0).reading().rhPct())
        .hasValue(62);
    assertThat(say(intake, 20.1, 61, Duration.ofSeconds(30)).readings())
        .extracting(reading -> reading.rhPct().orElseThrow())
        .containsExactly(62.0, 63.0);
  }

  @Test
  void believesAHumidityThatMovedOnlyBecauseTemperatureDid() {
    Intake intake = wall();
    say(intake, 16.0, 62.0, Duration.ZERO);

    // 16 °C, 62 % and 20.9 °C, 45.7 % hold the same vapour within a per cent.
    assertThat(say(intake, 20.9, 45.7, Duration.ofMinutes(2)).readings()).hasSize(1);
  }

  @Test
  void allowsMoreAfterASilence() {
    Intake intake = wall();
    say(intake, 12.0, 60, Duration.ZERO);

    assertThat(say(intake, 20.0, 55, Duration.ofHours(3)).readings()).hasSize(1);
  }

  @Test
  void believesFogThatWasClimbedToButNotFogFromNowhere() {
    Intake climbing = wall();
    say(climbing, 8.0, 92.0, Duration.ZERO);
    say(climbing, 8.0, 97.5, Duration.ofMinutes(10));
    assertThat(say(climbing, 7.9, 99.9, Duration.ofMinutes(10)).readings()).hasSize(1);

    Intake sudden = wall();
    say(sudden, 8.0, 55.0, Duration.ZERO);
    assertThat(say(sudden, 8.0, 99.9, Duration.ofMinutes(30)).readings()).isEmpty();
  }

  @Test
  void flagsARoomThatChangesFast() {
    Intake intake = wall();
    say(intake, 20.0, 50, Duration.ZERO);

    assertThat(say(intake, 16.0, 50.1, Duration.ofMinutes(1)).readings().get(0).flags())
        .contains("fast");
  }

  @Test
  void holdsBackASensorThatRepeatsItselfForADay() {
    Intake intake = wall();
    Intake.Taken last = say(intake, 26.3, 50.2, Duration.ZERO);
    for (int hour = 1; hour <= 25; hour++) {
      last = say(intake, 26.3, 50.2, Duration.ofHours(1));
    }

    assertThat(last.verdict().heldBack().get(0).reason())
        .contains("frozen: identical pair for 25 h");
  }

  @Test
  void knowsACoarseSensorMayStandStillForMostOfADay() {
    Intake intake = wall("'resolution': {'air-temperature': 1, 'relative-humidity': 1},");
    Intake.Taken last = say(intake, 19, 45, Duration.ZERO);
    for (int hour = 1; hour <= 23; hour++) {
      last = say(intake, 19, 45, Duration.ofHours(1));
    }

    assertThat(last.readings()).hasSize(1);
  }

  @Test
  void holdsBackHumidityThatStandsWhileTemperatureMoves() {
    Intake intake = wall();
    Intake.Taken last = say(intake, 18.0, 51.7, Duration.ZERO);
    for (int step = 1; step <= 7; step++) {
      last = say(intake, 18.0 + step * 0.5, 51.7, Duration.ofMinutes(10));
    }

    assertThat(last.verdict().heldBack().get(0).reason()).contains("the element is stuck");
  }

  @Test
  void doesNotTakeOneImpossibleTemperatureForMovement() {
    Intake intake = wall();
    say(intake, 18.0, 55.0, Duration.ZERO);
    Intake.Taken impossible = say(intake, 79.0, 55.0, Duration.ofMinutes(10));
    Intake.Taken last = impossible;
    for (int step = 1; step <= 8; step++) {
      last = say(intake, 18.0 + step * 0.1, 55.0, Duration.ofMinutes(10));
    }

    assertThat(impossible.readings()).isEmpty();
    assertThat(last.readings()).hasSize(1);
  }

  @Test
  void takesARedeliveredMessageOnce() {
    Intake intake = wall("'sequenceAt': '/seq',");
    String text = "{\"t\":18.8,\"h\":55.0,\"seq\":4711}";
    RawReading first =
        RawReading.of(
            "shop/wall", text.getBytes(StandardCharsets.UTF_8), START, RawReading.Way.MESSAGE);
    RawReading again =
        RawReading.of(
            "shop/wall",
            text.getBytes(StandardCharsets.UTF_8),
            START.plusSeconds(4),
            RawReading.Way.MESSAGE);

    assertThat(intake.take(first).readings()).hasSize(1);
    assertThat(intake.take(again).verdict().reason()).contains("duplicate of seq 4711");
  }

  @Test
  void appliesTheCorrectionThatHoldsAtThatDate() {
    String corrections =
        """
        'correct': [
          {'quantity': 'relative-humidity', 'gain': 1.0, 'offset': 2.0, 'from': '2025-03-14'},
          {'quantity': 'relative-humidity', 'gain': 1.04, 'offset': -2.1, 'from': '2026-03-15'}],
        """;
    Intake intake = wall(corrections);
    Reading before = say(intake, 20.0, 50.0, Duration.ZERO).readings().get(0);
    Reading after = say(intake, 20.1, 50.0, Duration.ofDays(2)).readings().get(0);

    assertThat(before.rhPct().orElseThrow()).isCloseTo(52.0, within(1e-9));
    assertThat(before.flags()).contains("corrected");
    assertThat(before.rhErrorPct()).as("2 %% and half a point a year").isCloseTo(2.5, within(0.01));
    assertThat(after.rhPct().orElseThrow()).isCloseTo(1.04 * 50.0 - 2.1, within(1e-9));
  }

  @Test
  void comparesASensorWithTheOthersOfItsRoomByVapourNotByHumidity() {
    Neighbours neighbours = new Neighbours();
    Intake intake = new Intake(Mappings.source(PAIR.formatted("")), neighbours);
    neighbours.note(
        "bench room", "b/", new Neighbours.Neighbour(java.util.OptionalDouble.of(20.0), 48, START));
    neighbours.note(
        "bench room", "c/", new Neighbours.Neighbour(java.util.OptionalDouble.of(20.0), 50, START));

    assertThat(say(intake, 20.0, 15.2, Duration.ZERO).verdict().heldBack().get(0).reason())
        .contains("rh 15.2 while 2 other sensors of the room read");
    assertThat(say(intake, 22.0, 43.3, Duration.ofMinutes(5)).readings()).hasSize(1);
  }

  @Test
  void theCapturedLevelNamedSensorTellsTheSensorsApart() {
    Intake intake =
        Intake.alone(
            Mappings.source(
                PAIR.replace("'shop/wall'", "'shop/+/+', 'captures': ['where', 'sensor']")
                    .formatted("")));
    Reading reading =
        intake
            .take(
                RawReading.of(
                    "shop/bench/wall",
                    "{\"t\":20,\"h\":50}".getBytes(StandardCharsets.UTF_8),
                    START,
                    RawReading.Way.MESSAGE))
            .readings()
            .get(0);
    assertThat(reading.sensor()).isEqualTo("wall");

    assertThatThrownBy(
            () ->
                Mappings.source(
                    PAIR.replace("'shop/wall'", "'shop/+/+', 'captures': ['sensor']")
                        .formatted("")))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("captures")
        .hasMessageContaining("name every + in order");
  }

  @Test
  void keepsEveryPayloadsTextWithItsVerdict() {
    Intake intake = wall();
    Intake.Taken taken =
        intake.take(
            RawReading.of(
                "shop/wall", new byte[] {'{', 0, (byte) 0xFF}, START, RawReading.Way.MESSAGE));

    assertThat(taken.raw().text()).isEqualTo("{\\x00ÿ");
    assertThat(taken.raw().verdict()).isEqualTo("refused");
    assertThat(taken.raw().reason()).isPresent();
  }

  @Property(tries = 2000, seed = "20261125")
  void neverThrowsWhateverComes(@ForAll byte[] bytes) {
    Intake intake = wall();
    Intake.Taken taken =
        intake.take(RawReading.of("shop/wall", bytes, START, RawReading.Way.MESSAGE));

    assertThat(taken.verdict().accepted()).isEmpty();
    assertThat(taken.verdict().reason()).isNotEqualTo(Optional.empty());
  }
}
