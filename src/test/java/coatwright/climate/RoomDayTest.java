package coatwright.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What a room's day was good for, and what its sensors in doubt are worth. */
class RoomDayTest {
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
  private static final Instant NOON = Instant.parse("2026-03-14T12:00:00Z");
  private static final String BENCH = "bench";

  private final TestClock clock = new TestClock(NOON);
  private final LiveClimate climate =
      new LiveClimate(List.of(BENCH), new MemoryReadingLog(), clock, Duration.ofMinutes(10));

  @Test
  void countsWarmAndDampHoursAndTheNightsLowestWithoutTheGaps() {
    Instant from = NOON.minus(Duration.ofHours(24));
    for (int i = 0; i <= 24 * 6; i++) {
      Instant at = from.plus(Duration.ofMinutes(10L * i));
      boolean silent = i > 6 * 6 && i < 12 * 6;
      boolean warm = i < 8 * 6;
      if (!silent) {
        climate.accept(Readings.air("wall", BENCH, at, warm ? 20 : 11 + 0.01 * i, warm ? 50 : 70));
      }
    }
    RoomDay day = RoomDay.of(climate.series(BENCH, from, NOON), 18, 65, BERLIN);
    assertThat(day.knownHours()).isCloseTo(18, within(0.4));
    assertThat(day.warmHours()).isCloseTo(6, within(0.2));
    assertThat(day.dampHours()).isCloseTo(12, within(0.2));
    // After the silence the cold begins at one in the morning of the shop's clock.
    assertThat(day.nightLowC().orElseThrow()).isCloseTo(11.72, within(1e-9));
    assertThat(day.nightLowAt()).contains(from.plus(Duration.ofHours(12)));
  }

  @Test
  void theAirOutsideIsKnownForAnHourAndIsNoRooms() {
    climate.accept(Readings.outside("yard", Optional.empty(), NOON, 4, 90));
    assertThat(climate.outside().orElseThrow().airTempC()).isEqualTo(4);
    assertThat(climate.now(BENCH).air()).isEmpty();
    clock.pass(Duration.ofMinutes(61));
    assertThat(climate.outside()).isEmpty();
  }

  @Test
  void aSensorInDoubtDoesNotCountBesideOneThatIsNot() {
    climate.accept(Readings.air("wall", BENCH, NOON, 20, 50));
    climate.accept(doubtful("rack", NOON, 20, 44));
    RoomAir air = climate.now(BENCH);
    assertThat(air.air().orElseThrow().rhPct()).isCloseTo(50, within(1e-9));
    assertThat(air.mistrust()).isEmpty();
    assertThat(climate.doubted(BENCH)).as("drier: nothing to warn of").isEmpty();
    assertThat(climate.series(BENCH, NOON, NOON.plusSeconds(1)).points().get(0).rhPct())
        .isCloseTo(50, within(1e-9));

    climate.accept(doubtful("rack", NOON.plusSeconds(30), 20, 75));
    assertThat(climate.now(BENCH).air().orElseThrow().rhPct()).isCloseTo(50, within(1e-9));
    assertThat(climate.doubted(BENCH).orElseThrow().sentence())
        .isEqualTo(
            "reads 20.0 °C, 75 %, in doubt: it was wet and has not been dry long enough since");
  }

  @Test
  void nothingButASensorInDoubtIsSaidToBeSo() {
    climate.accept(doubtful("rack", NOON, 20, 50));
    RoomAir air = climate.now(BENCH);
    assertThat(air.air()).isPresent();
    assertThat(air.mistrust().orElseThrow()).startsWith("rack is in doubt: it was wet");
  }

  @Test
  void theDewPointIsAsSureAsItsTwoReadings() {
    // 3 points of RH make 0.9 K at 20 °C and 50 %, and half a kelvin 0.5 K, by the Magnus form of
    // the WMO; together 1.0 K.
    AirPoint air = SensorAir.point(NOON, 20, 1169.6, 0.5, 3);
    assertThat(air.dewPointErrorK()).isCloseTo(1.02, within(0.06));
  }

  private static Reading doubtful(String source, Instant at, double tempC, double rhPct) {
    return new Reading(
        source,
        source,
        Role.ROOM,
        Optional.of(BENCH),
        Optional.empty(),
        at,
        OptionalDouble.of(tempC),
        OptionalDouble.of(rhPct),
        OptionalDouble.empty(),
        0.3,
        2,
        List.of("recovering"));
  }
}
