package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.air.SaturationPressure;
import coatwright.climate.Mistrust;
import coatwright.climate.Reading;
import coatwright.sensors.Neighbours.Neighbour;
import coatwright.sensors.Neighbours.Standing;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the screen makes of a sensor's history and of its company in the room. */
class ScreenTest {
  private static final Instant START = Instant.parse("2026-03-14T09:30:00Z");
  private static final String WALL =
      """
      {'source': 'wall', 'transport': 'mqtt', 'filter': 'shop/wall', 'room': 'bench room',
       'chip': 'SHT31', 'payload': 'json', 'every': 'PT1M', %s 'readings': [
        {'quantity': 'air-temperature', 'at': '/t', 'unit': 'Cel'},
        {'quantity': 'relative-humidity', 'at': '/h', 'unit': '%%'}]}
      """;

  private final Neighbours neighbours = new Neighbours();
  private Instant now = START;

  private Intake wall(String more) {
    return new Intake(Mappings.source(WALL.formatted(more)), neighbours);
  }

  private Intake.Taken say(Intake intake, double t, double rh, Duration later) {
    now = now.plus(later);
    return sayText(intake, "{\"t\":%s,\"h\":%s}".formatted(t, rh));
  }

  private Intake.Taken sayText(Intake intake, String text) {
    return intake.take(
        RawReading.of(
            "shop/wall", text.getBytes(StandardCharsets.UTF_8), now, RawReading.Way.MESSAGE));
  }

  private void hear(double t, double rh) {
    hear(t, rh, Standing.USUAL);
  }

  private void hear(double t, double rh, Standing standing) {
    neighbours.note(
        "bench room", "rack/", new Neighbour(OptionalDouble.of(t), rh, now, 2.2, standing));
  }

  private static String held(Intake.Taken taken) {
    assertThat(taken.readings()).isEmpty();
    return taken.verdict().heldBack().get(0).reason();
  }

  private static List<String> flags(Intake.Taken taken) {
    return taken.readings().get(taken.readings().size() - 1).flags();
  }

  private static double rhOfSameVapour(double t, double rh, double otherT) {
    return rh * SaturationPressure.overWaterPa(t) / SaturationPressure.overWaterPa(otherT);
  }

  @ParameterizedTest
  @CsvSource({
    "43, 75, 37.6, true",
    "21, 8.5, -13.6, false",
    "12, 9, -19.9, true",
    "30, 90, 28.2, false"
  })
  void holdsBackADewPointThatNoShopHas(double t, double rh, double dewPointC, boolean isHeld) {
    Intake.Taken taken = say(wall(""), t, rh, Duration.ZERO);

    if (isHeld) {
      assertThat(held(taken)).contains("dew point of " + dewPointC);
    } else {
      assertThat(taken.readings()).hasSize(1);
      assertThat(flags(taken).contains("very_damp")).isEqualTo(dewPointC > 26);
    }
  }

  @Test
  void leavesTheDewPointToWhoSetsLimitsOfTheirOwn() {
    Intake hot = wall("'limits': {'relative-humidity': {'plausible': [8, 99]}},");

    assertThat(say(hot, 43, 75, Duration.ZERO).readings()).hasSize(1);
    assertThat(say(wall(""), -5, 30, Duration.ZERO).readings())
        .as("frosty air with little water in it is nothing odd")
        .hasSize(1);
  }

  @Test
  void takesBothWrongInOneMessageForALostCalibration() {
    assertThat(held(say(wall(""), -37.2, 100, Duration.ZERO)))
        .contains("-37.2 °C and 100 % RH", "lost its calibration", "power");
  }

  @Test
  void dropsAPulseOfTheSensorsOwnHeater() {
    Intake intake = wall("");
    say(intake, 20.0, 60.0, Duration.ZERO);
    double pulsed = rhOfSameVapour(20.0, 60.0, 23.5);

    Intake.Taken pulse = say(intake, 23.5, pulsed, Duration.ofSeconds(10));
    assertThat(held(pulse)).contains("3.5 K in 10 s", "own heater");
    assertThat(say(intake, 20.2, 59.4, Duration.ofSeconds(10)).readings()).hasSize(1);
  }

  @Test
  void believesARoomThatWarmsAsFastAsAHeaterCan() {
    Intake intake = wall("");
    say(intake, 16.0, 62.0, Duration.ZERO);

    // 3.7 K a minute is the most that 3 kW do to 40 m³ of air: 3 kW over its heat capacity.
    Intake.Taken warmed =
        say(intake, 19.7, rhOfSameVapour(16.0, 62.0, 19.7), Duration.ofMinutes(1));
    assertThat(warmed.readings()).hasSize(1);
    assertThat(flags(warmed)).containsExactly("fast");
  }

  @Test
  void aPairThatStaysIsAFaultOnlyWhereTheAirMoved() {
    Intake still = wall("");
    Intake.Taken last = say(still, 20.0, 50.0, Duration.ZERO);
    for (int i = 0; i < 7 * 6; i++) {
      hear(20.4, 50.2);
      last = say(still, 20.0, 50.0, Duration.ofMinutes(10));
    }
    assertThat(flags(last)).as("7 h, the other stood still too").containsExactly("unchanged");

    Intake stuck = wall("");
    for (int i = 0; i <= 3 * 6; i++) {
      hear(20.4 + i * 0.1, 50.2);
      last = say(stuck, 20.1, 50.1, Duration.ofMinutes(10));
    }
    assertThat(flags(last)).as("3 h").contains("stuck");
    assertThat(last.readings().get(0).mistrust()).contains(Mistrust.STUCK);
    for (int i = 0; i <= 3 * 6; i++) {
      hear(22.0 - i * 0.1, 50.2);
      last = say(stuck, 20.1, 50.1, Duration.ofMinutes(10));
    }
    assertThat(held(last)).contains("frozen: identical pair for 6 h");
  }

  @Test
  void aCeilingThatStaysWhileTheAirWarmsIsAWetElement() {
    Intake intake = wall("");
    Intake.Taken last = say(intake, 8.0, 93.0, Duration.ZERO);
    for (int i = 1; i <= 7 * 6; i++) {
      last = say(intake, 8.0 + i * 0.08, i % 2 == 0 ? 99.9 : 99.8, Duration.ofMinutes(10));
    }
    assertThat(held(last)).contains("rh at its ceiling for 6 h though temperature rose by 3.");
  }

  @Test
  void trustsAWetSensorAgainOnceAnotherVouchesForIt() {
    Intake intake = wall("");
    say(intake, 12.0, 93.0, Duration.ZERO);
    for (int i = 0; i < 5; i++) {
      say(intake, 12.0, 98.5 + 0.1 * i, Duration.ofMinutes(10));
    }
    hear(12.0, 83.0);
    Intake.Taken dry = say(intake, 12.0, 85.0, Duration.ofMinutes(30));
    assertThat(dry.readings().get(0).mistrust()).contains(Mistrust.RECOVERING);
    for (int i = 1; i <= 11; i++) {
      now = now.plus(Duration.ofMinutes(10));
      hear(12.0, 82.0 + 0.1 * i);
      dry = say(intake, 12.0, 85.0 - 0.1 * i, Duration.ZERO);
      assertThat(flags(dry)).contains("recovering");
    }
    now = now.plus(Duration.ofMinutes(10));
    hear(12.0, 83.4);
    assertThat(flags(say(intake, 12.0, 83.8, Duration.ZERO)))
        .as("two hours within four points")
        .isEmpty();
  }

  @Test
  void aWetSensorAloneRecoversInADayOfDryAir() {
    Intake intake = wall("");
    say(intake, 12.0, 93.0, Duration.ZERO);
    for (int i = 0; i < 5; i++) {
      say(intake, 12.0, 98.5 + 0.1 * i, Duration.ofMinutes(10));
    }
    assertThat(flags(say(intake, 12.5, 80.0, Duration.ofHours(2)))).contains("recovering");
    assertThat(flags(say(intake, 12.6, 79.0, Duration.ofHours(21)))).contains("recovering");
    assertThat(flags(say(intake, 12.7, 78.0, Duration.ofHours(2)))).isEmpty();
  }

  @Test
  void suspectsTheOneThatReadsLowAfterADay() {
    Intake low = wall("");
    Intake.Taken last = say(low, 20.0, 45.0, Duration.ZERO);
    for (int i = 0; i < 26 * 6; i++) {
      hear(20.5, 55.0 + i % 3);
      last = say(low, 20.0 + 0.1 * (i % 5), 45.0 + i % 4, Duration.ofMinutes(10));
    }
    assertThat(last.readings().get(0).mistrust()).contains(Mistrust.DRIFTING);
  }

  @Test
  void doesNotSuspectTheOneThatReadsHighUnlessItsEqualIsAReference() {
    Intake high = wall("");
    Intake.Taken last = say(high, 20.0, 65.0, Duration.ZERO);
    for (int i = 0; i < 26 * 6; i++) {
      hear(20.0, 55.0 + i % 3);
      last = say(high, 20.0 + 0.1 * (i % 5), 65.0 + i % 4, Duration.ofMinutes(10));
    }
    assertThat(flags(last)).isEmpty();
    for (int i = 0; i < 13 * 6; i++) {
      hear(20.0, 55.0 + i % 3, Standing.REFERENCE);
      last = say(high, 20.0 + 0.1 * (i % 5), 65.0 + i % 4, Duration.ofMinutes(10));
    }
    assertThat(flags(last)).containsExactly("drifting");
  }

  @Test
  void aSensorInDoubtIsNoEvidenceAgainstAnother() {
    Intake low = wall("");
    Intake.Taken last = say(low, 20.0, 45.0, Duration.ZERO);
    for (int i = 0; i < 26 * 6; i++) {
      hear(20.0, 58.0 + i % 3, Standing.DOUBTFUL);
      last = say(low, 20.0 + 0.1 * (i % 5), 45.0 + i % 4, Duration.ofMinutes(10));
    }
    assertThat(flags(last)).isEmpty();
  }

  @Test
  void marksAHumidityThatKeepsEndingAtOneLowestValue() {
    Intake intake = wall("");
    Intake.Taken last = say(intake, 20.0, 51.7, Duration.ZERO);
    for (int i = 0; i < 5 * 144; i++) {
      // A daily swing whose lower side is cut at 51.7 %.
      double swing = 55 + 12 * Math.sin(2 * Math.PI * i / 144.0);
      double t = 20 + 0.01 * (i % 7);
      last = say(intake, t, Math.max(51.7, Math.round(swing * 10) / 10.0), Duration.ofMinutes(10));
      if (swing < 51 && i > 3 * 144 + 100) {
        break;
      }
    }
    assertThat(last.readings().get(0).mistrust()).contains(Mistrust.AT_FLOOR);
  }

  @Test
  void findsASensorThatWarmsItselfAfterARestart() {
    Intake intake = wall("");
    say(intake, 18.0, 55.0, Duration.ZERO);
    double vapour = 55.0;
    Intake.Taken last = say(intake, 18.0, vapour, Duration.ofMinutes(30));
    for (int minute = 1; minute <= 20; minute++) {
      double t = 18.0 + 1.4 * (1 - Math.exp(-minute / 6.0));
      last = say(intake, t, rhOfSameVapour(18.0, vapour, t), Duration.ofMinutes(1));
    }
    assertThat(flags(last)).contains("warm");
    assertThat(last.readings().get(0).mistrust()).as("its vapour is right").isEmpty();
  }

  @Test
  void doesNotBlameASensorForARoomThatWasHeated() {
    Intake intake = wall("");
    say(intake, 18.0, 55.0, Duration.ZERO);
    now = now.plus(Duration.ofMinutes(30));
    hear(18.1, 55.0);
    Intake.Taken last = say(intake, 18.0, 55.0, Duration.ZERO);
    for (int minute = 1; minute <= 20; minute++) {
      double t = 18.0 + 0.07 * minute;
      now = now.plus(Duration.ofMinutes(1));
      hear(t + 0.1, rhOfSameVapour(18.0, 55.0, t + 0.1));
      last = say(intake, t, rhOfSameVapour(18.0, 55.0, t), Duration.ZERO);
    }
    assertThat(flags(last)).isEmpty();
  }

  @Test
  void tellsACacheThatRepeatsItselfFromARedelivery() {
    Intake intake = wall("'sequenceAt': '/seq',");
    String text = "{\"t\":18.8,\"h\":55.0,\"seq\":4711}";
    sayText(intake, text);
    now = now.plusSeconds(4);
    assertThat(sayText(intake, text).harmless()).isTrue();
    now = now.plus(Duration.ofMinutes(4));
    Intake.Taken again = sayText(intake, text);
    assertThat(again.harmless()).isFalse();
    assertThat(again.verdict().refused().get(0).reason())
        .contains("its own counter has stood at 4711 for 4 min");
  }

  @Test
  void aRestartForgetsNeitherTheLastValueNorTheDoubt() {
    Intake wet = wall("");
    say(wet, 12.0, 93.0, Duration.ZERO);
    Intake.Taken last = say(wet, 12.0, 98.1, Duration.ofMinutes(10));
    for (int i = 1; i < 5; i++) {
      last = say(wet, 12.0, 98.1 + 0.1 * i, Duration.ofMinutes(10));
    }
    Intake restarted = wall("");
    restarted.resume(last.readings().get(0));
    assertThat(flags(say(restarted, 12.4, 82.0, Duration.ofHours(2)))).contains("recovering");

    Intake other = wall("");
    other.resume(say(wall(""), 20.0, 50.0, Duration.ofDays(2)).readings().get(0));
    assertThat(held(say(other, 31.0, 50.2, Duration.ofSeconds(30)))).startsWith("step of 11.0 K");
  }

  @Test
  void aTemperatureCorrectionMendsAWarmSpot() {
    hear(20.0, 50.0);
    double warm = rhOfSameVapour(20.0, 50.0, 25.0);
    assertThat(held(say(wall(""), 25.0, warm, Duration.ZERO))).contains("warm offset");
    Intake mended =
        wall("'correct': [{'quantity': 'air-temperature', 'offset': -5, 'from': '2026-01-01'}],");
    assertThat(say(mended, 25.0, warm, Duration.ZERO).readings()).hasSize(1);
  }

  @Test
  void keepsTheNumberAsItWasSentBesideTheCorrectedOne() {
    Intake intake =
        wall("'correct': [{'quantity': 'relative-humidity', 'offset': 2, 'from': '2026-01-01'}],");
    Reading corrected = say(intake, 20.0, 48.0, Duration.ZERO).readings().get(0);
    assertThat(corrected.rhPct()).hasValue(50.0);
    assertThat(corrected.sent().orElseThrow().rhPct()).hasValue(48.0);
    assertThat(corrected.sent().orElseThrow().temperatureC()).isEmpty();

    Intake plain = wall("");
    assertThat(say(plain, 20.0, 48.0, Duration.ZERO).readings().get(0).sent()).isEmpty();
  }

  /** Whatever two sensors say for a day, at most one of them is suspected. */
  @Property(tries = 30, seed = "20261125")
  void neverSuspectsBothOfTwo(
      @ForAll @DoubleRange(min = 20, max = 80) double a,
      @ForAll @DoubleRange(min = 20, max = 80) double b) {
    Drift ofA = new Drift();
    Drift ofB = new Drift();
    for (int i = 0; i < 30 * 6; i++) {
      Instant at = START.plus(Duration.ofMinutes(10L * i));
      ofA.take(20, a, 2.2, at, List.of(new Neighbour(OptionalDouble.of(20), b, at)));
      ofB.take(20, b, 2.2, at, List.of(new Neighbour(OptionalDouble.of(20), a, at)));
    }
    assertThat(ofA.drifting() && ofB.drifting()).isFalse();
    if (ofA.drifting()) {
      assertThat(a).isLessThan(b);
    }
    // Twice the root sum square of 2.2 and 3.5 points.
    assertThat(ofA.drifting()).isEqualTo(a - b < -2 * Math.hypot(2.2, 3.5));
  }

  @Test
  void classesGoByTheTableOfTheChips() {
    assertThat(Chip.of("B").orElseThrow().rhErrorPct()).isEqualTo(3.5);
    assertThat(Chip.of("SHT45").orElseThrow().rhErrorPct()).isEqualTo(2);
    assertThat(Chip.of("dht11").orElseThrow().temperatureErrorK()).isCloseTo(2, within(1e-9));
  }
}
