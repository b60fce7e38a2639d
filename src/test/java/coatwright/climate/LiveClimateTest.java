package coatwright.climate;

import static coatwright.climate.Readings.air;
import static coatwright.climate.Readings.humidityOnly;
import static coatwright.climate.Readings.onPart;
import static coatwright.climate.Readings.outside;
import static coatwright.climate.Readings.temperatureOnly;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.climate.forecast.HourlyForecast;
import coatwright.quantity.RefusedInput;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LiveClimateTest {
  private static final Instant NOON = Instant.parse("2026-03-14T12:00:00Z");
  private static final Duration MINUTE = Duration.ofMinutes(1);
  private static final String BENCH = "bench room";
  private static final String FINISHING = "finishing room";

  private final TestClock clock = new TestClock(NOON);
  private final MemoryReadingLog log = new MemoryReadingLog();
  private final LiveClimate climate =
      new LiveClimate(List.of(BENCH, FINISHING), log, clock, MINUTE);

  @Test
  void tellsTheAirTheMomentAReadingComes() {
    List<Reading> heard = new ArrayList<>();
    climate.onReading(heard::add);
    climate.accept(air("wall", BENCH, NOON.minusSeconds(20), 20, 50));
    RoomAir now = climate.now(BENCH);
    assertThat(now.air().orElseThrow().airTempC()).isEqualTo(20);
    assertThat(now.air().orElseThrow().rhPct()).isCloseTo(50, within(1e-9));
    // Dew point of 20 °C, 50 %: 9.3 °C (ASHRAE Handbook Fundamentals 2017, psychrometric chart 1).
    assertThat(now.air().orElseThrow().dewPointC()).isCloseTo(9.3, within(0.1));
    assertThat(now.age()).contains(Duration.ofSeconds(20));
    assertThat(now.sources()).containsExactly("wall");
    assertThat(now.trouble()).isEmpty();
    assertThat(heard).hasSize(1);
  }

  @Test
  void knowsNothingBeforeAnySensorSpoke() {
    RoomAir now = climate.now(BENCH);
    assertThat(now.air()).isEmpty();
    assertThat(now.trouble().orElseThrow()).contains("no sensor has told the air of bench room");
  }

  @Test
  void saysALateSensorIsLateAndAStaleOneIsNotBelieved() {
    climate.accept(air("wall", BENCH, NOON, 20, 50));
    clock.pass(Duration.ofMinutes(14));
    assertThat(climate.now(BENCH).air()).isPresent();
    assertThat(climate.now(BENCH).trouble().orElseThrow())
        .isEqualTo("wall is late: its last reading is 14 min old");
    clock.pass(Duration.ofMinutes(2));
    assertThat(climate.now(BENCH).air()).isEmpty();
    assertThat(climate.now(BENCH).age()).isEmpty();
    assertThat(climate.now(BENCH).trouble().orElseThrow())
        .contains("nothing believable from wall for 16 min", "check its power");
  }

  @Test
  void learnsThatASensorSpeaksSeldom() {
    for (int i = 0; i < 12; i++) {
      clock.set(NOON.plus(Duration.ofMinutes(6L * i)));
      climate.accept(air("slow", BENCH, clock.instant(), 20, 50));
    }
    clock.pass(Duration.ofMinutes(30));
    assertThat(climate.now(BENCH).air()).as("six intervals of 6 min").isPresent();
    clock.pass(Duration.ofMinutes(7));
    assertThat(climate.now(BENCH).air()).isEmpty();
  }

  @Test
  void pairsTemperatureAndHumidityThatComeApart() {
    climate.accept(temperatureOnly("wall", BENCH, NOON.minusSeconds(90), 20));
    assertThat(climate.now(BENCH).air()).isEmpty();
    climate.accept(humidityOnly("wall", BENCH, NOON, 50));
    assertThat(climate.now(BENCH).air().orElseThrow().rhPct()).isCloseTo(50, within(1e-9));
  }

  @Test
  void doesNotPairHalvesTooFarApart() {
    climate.accept(temperatureOnly("wall", BENCH, NOON.minusSeconds(121), 20));
    climate.accept(humidityOnly("wall", BENCH, NOON, 50));
    assertThat(climate.now(BENCH).air()).isEmpty();
  }

  @Test
  void doesNotPairOneSensorsTemperatureWithAnothersHumidity() {
    climate.accept(temperatureOnly("one", BENCH, NOON, 20));
    climate.accept(humidityOnly("two", BENCH, NOON, 50));
    assertThat(climate.now(BENCH).air()).isEmpty();
  }

  @Test
  void neverMixesRoomsNorTheOutside() {
    climate.accept(air("wall", BENCH, NOON, 20, 50));
    climate.accept(air("rack", FINISHING, NOON, 25, 40));
    climate.accept(outside("yard", Optional.empty(), NOON, 5, 90));
    climate.accept(outside("eaves", Optional.of(BENCH), NOON, 5, 90));
    assertThat(climate.now(BENCH).air().orElseThrow().airTempC()).isEqualTo(20);
    assertThat(climate.now(FINISHING).air().orElseThrow().airTempC()).isEqualTo(25);
    assertThat(climate.series(BENCH, NOON.minusSeconds(60), NOON.plusSeconds(1)).points())
        .hasSize(1);
  }

  @Test
  void flagsTwoSensorsThatDisagreeAndUsesTheMoister() {
    climate.accept(air("wall", BENCH, NOON, 20, 50));
    climate.accept(air("rack", BENCH, NOON, 20, 70));
    RoomAir now = climate.now(BENCH);
    assertThat(now.disagree()).isTrue();
    assertThat(now.sources()).containsExactly("wall", "rack");
    assertThat(now.air().orElseThrow().rhPct()).isCloseTo(70, within(1e-6));
  }

  @Test
  void keepsAGapAGap() {
    for (int minute = 0; minute < 60; minute++) {
      if (minute < 20 || minute >= 40) {
        climate.accept(air("wall", BENCH, NOON.minusSeconds(60L * (60 - minute)), 20, 50));
      }
    }
    AirSeries series = climate.series(BENCH, NOON.minusSeconds(3600), NOON);
    assertThat(series.points()).hasSize(40);
    assertThat(series.gaps())
        .containsExactly(new Gap(NOON.minusSeconds(41 * 60), NOON.minusSeconds(20 * 60)));
  }

  @Test
  void showsWhatIsMissingAtBothEndsAsGaps() {
    climate.accept(air("wall", BENCH, NOON.minusSeconds(3600), 20, 50));
    AirSeries series =
        climate.series(BENCH, NOON.minus(Duration.ofHours(3)), NOON.plus(Duration.ofHours(3)));
    assertThat(series.gaps())
        .containsExactly(
            new Gap(NOON.minus(Duration.ofHours(3)), NOON.minus(Duration.ofHours(1))),
            new Gap(NOON.minus(Duration.ofHours(1)), NOON));
  }

  @Test
  void combinesSensorsThatTakeTurns() {
    for (int minute = 0; minute < 60; minute++) {
      Instant at = NOON.minusSeconds(60L * (60 - minute));
      climate.accept(
          minute % 2 == 0 ? air("wall", BENCH, at, 20, 50) : air("rack", BENCH, at, 20.4, 50));
    }
    List<AirPoint> points = climate.series(BENCH, NOON.minusSeconds(3000), NOON).points();
    assertThat(points).hasSize(50);
    assertThat(points)
        .allSatisfy(point -> assertThat(point.airTempC()).isCloseTo(20.2, within(1e-9)));
  }

  @Test
  void neitherReordersNorOverwritesWhenTheClockIsSetBack() {
    climate.accept(air("wall", BENCH, NOON.minusSeconds(120), 20, 50));
    climate.accept(air("wall", BENCH, NOON.minusSeconds(60), 21, 50));
    clock.set(NOON.minus(Duration.ofHours(1)));
    climate.accept(air("wall", BENCH, clock.instant(), 15, 60));
    assertThat(climate.now(BENCH).air().orElseThrow().airTempC())
        .as("what it says now")
        .isEqualTo(15);
    clock.set(NOON);
    List<AirPoint> points = climate.series(BENCH, NOON.minus(Duration.ofHours(2)), NOON).points();
    assertThat(points).extracting(AirPoint::airTempC).containsExactly(15.0, 20.0, 21.0);
    assertThat(points).isSortedAccordingTo((a, b) -> a.at().compareTo(b.at()));
  }

  @Test
  void keepsAReadingOfAnUnsetClockOutOfTheSeries() {
    climate.accept(air("wall", BENCH, Instant.EPOCH.plusSeconds(40), 12, 50));
    assertThat(climate.now(BENCH).air()).isEmpty();
    assertThat(log.readings(BENCH, Instant.EPOCH, NOON)).as("but in the log").hasSize(1);
  }

  @Test
  void doesNotBelieveAReadingFromTheFuture() {
    climate.accept(air("wall", BENCH, NOON.plus(Duration.ofHours(1)), 20, 50));
    assertThat(climate.now(BENCH).air()).isEmpty();
    assertThat(climate.now(BENCH).trouble().orElseThrow()).contains("check the clock");
  }

  @Test
  void aLateDeliveryFillsTheGapAndDoesNotDisplaceTheNewest() {
    climate.accept(air("wall", BENCH, NOON, 20, 50));
    climate.accept(air("wall", BENCH, NOON.minus(Duration.ofMinutes(10)), 18, 50));
    assertThat(climate.now(BENCH).air().orElseThrow().airTempC()).isEqualTo(20);
    assertThat(climate.series(BENCH, NOON.minusSeconds(3600), NOON.plusSeconds(1)).points())
        .extracting(AirPoint::airTempC)
        .containsExactly(18.0, 20.0);
  }

  @Test
  void tellsTheWoodByPartAndByRoom() {
    climate.accept(onPart("probe-1", BENCH, "cabinet/left-door", NOON.minusSeconds(60), 17.5));
    climate.accept(onPart("probe-2", BENCH, "cabinet/shelf-1", NOON.minusSeconds(30), 18.5));
    Instant from = NOON.minusSeconds(3600);
    assertThat(climate.wood(BENCH, Optional.of("cabinet/left-door/front"), from, NOON))
        .extracting(WoodPoint::woodTempC)
        .containsExactly(17.5);
    assertThat(climate.wood(BENCH, Optional.empty(), from, NOON)).hasSize(2);
    assertThat(climate.now(BENCH).wood().orElseThrow().woodTempC()).isEqualTo(18.5);
    assertThat(climate.now(BENCH).air()).as("a board is not the air").isEmpty();
  }

  @Test
  void picksUpWhereTheLogEndsAfterARestart() {
    climate.accept(air("wall", BENCH, NOON, 20, 50));
    clock.pass(MINUTE);
    LiveClimate restarted = new LiveClimate(List.of(BENCH, FINISHING), log, clock, MINUTE);
    assertThat(restarted.now(BENCH).air().orElseThrow().airTempC()).isEqualTo(20);
    restarted.accept(air("wall", BENCH, clock.instant(), 21, 50));
    assertThat(restarted.series(BENCH, NOON, clock.instant().plusSeconds(1)).points())
        .extracting(AirPoint::airTempC)
        .containsExactly(20.0, 21.0);
  }

  @Test
  void readsAirOlderThanItHoldsFromTheLog() {
    Instant longAgo = NOON.minus(Duration.ofDays(90));
    climate.accept(air("wall", BENCH, longAgo, 20, 50));
    assertThat(climate.series(BENCH, longAgo.minusSeconds(60), longAgo.plusSeconds(60)).points())
        .hasSize(1);
  }

  @Test
  void refusesARoomTheShopDoesNotHave() {
    assertThatThrownBy(() -> climate.now("attic"))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("no such room")
        .hasMessageContaining("bench room, finishing room");
  }

  @Test
  void expectsNothingFromLessThanADay() {
    fill(Duration.ofHours(22));
    assertThat(climate.expected(BENCH, NOON, NOON.plus(Duration.ofHours(6)))).isEmpty();
  }

  @Test
  void expectsTheUsualDay() {
    fill(Duration.ofDays(7));
    AirSeries expected =
        climate.expected(BENCH, NOON, NOON.plus(Duration.ofHours(24))).orElseThrow();
    assertThat(expected.points()).hasSize(96);
    for (AirPoint point : expected.points()) {
      assertThat(point.airTempC()).isCloseTo(usualTempC(point.at()), within(0.8));
      assertThat(point.rhPct()).isBetween(1.0, 100.0);
    }
    assertThat(expected.points().get(0).temperatureErrorK())
        .isLessThan(expected.points().get(90).temperatureErrorK());
    assertThat(expected.points().get(90).rhErrorPct())
        .isGreaterThan(expected.points().get(0).rhErrorPct());
  }

  @Test
  void letsThePresentDepartureFade() {
    fill(Duration.ofDays(7));
    climate.accept(air("wall", BENCH, NOON.plusSeconds(1), usualTempC(NOON) + 6, 40));
    clock.pass(Duration.ofMinutes(11));
    AirSeries expected = climate.expected(BENCH, NOON, NOON.plus(Duration.ofDays(3))).orElseThrow();
    AirPoint soon = expected.points().get(1);
    AirPoint later = expected.points().get(expected.points().size() - 1);
    assertThat(soon.airTempC() - usualTempC(soon.at())).isBetween(5.0, 6.5);
    assertThat(later.airTempC() - usualTempC(later.at())).isBetween(-1.0, 1.5);
  }

  @Test
  void everyCourseOfAForecastLeavesTheAirAsItIsNow() {
    fill(Duration.ofDays(30));
    climate.accept(air("wall", BENCH, NOON, usualTempC(NOON), 50));
    AirForecast forecast = climate.forecast(BENCH).orElseThrow();

    assertThat(forecast.basis()).isEqualTo(HourlyForecast.Basis.LEARNING);
    assertThat(forecast.at(0)).isEqualTo(NOON);
    assertThat(forecast.at(1)).isEqualTo(NOON.plusSeconds(1800));
    assertThat(forecast.knots()).isBetween(73, 75);
    for (int member = 0; member < forecast.members(); member++) {
      assertThat(forecast.airTempC(member, 0)).isCloseTo(usualTempC(NOON), within(0.01));
      assertThat(forecast.rhPct(member, 0)).isCloseTo(50, within(0.1));
    }
    for (int knot : new int[] {1, 6, 24, 72}) {
      AirForecast.Range range = forecast.airTempC(knot);
      assertThat(forecast.middle(knot).airTempC()).isBetween(range.p10(), range.p90());
      assertThat(range.p10()).isLessThanOrEqualTo(range.p90());
      assertThat(forecast.dewPointC(knot).p10())
          .isLessThanOrEqualTo(forecast.dewPointC(knot).p90());
    }
    assertThat(forecast.meanErrorK()).isBetween(0.0, 5.0);
    assertThat(forecast.usualFrom()).isEqualTo(NOON.plus(Duration.ofHours(24)));
  }

  @Test
  void aRestartForecastsAsTheOneThatRanOn() {
    fill(Duration.ofDays(20));
    AirForecast before = climate.forecast(BENCH).orElseThrow();
    assertThat(before.knots()).isGreaterThan(70);
    for (int hour = 0; hour < 60; hour++) {
      for (int minute = 0; minute < 60; minute += 5) {
        Instant at = NOON.plus(Duration.ofHours(hour)).plusSeconds(60L * minute);
        climate.accept(air("wall", BENCH, at, usualTempC(at), 50));
      }
      clock.pass(Duration.ofHours(1));
      assertThat(climate.forecast(BENCH)).isPresent();
    }
    AirForecast ranOn = climate.forecast(BENCH).orElseThrow();
    AirForecast restarted =
        new LiveClimate(List.of(BENCH), log, clock, MINUTE).forecast(BENCH).orElseThrow();

    for (int knot : new int[] {1, 12, 48}) {
      assertThat(restarted.middle(knot).airTempC())
          .isCloseTo(ranOn.middle(knot).airTempC(), within(0.05));
    }
  }

  @Test
  void readingsThatCameLateAreTakenInWithTheNextLook() {
    fill(Duration.ofDays(10));
    clock.pass(Duration.ofHours(6));
    AirForecast inTheDark = climate.forecast(BENCH).orElseThrow();
    Instant now = NOON.plus(Duration.ofHours(6));
    for (Instant at = NOON; at.isBefore(now); at = at.plusSeconds(300)) {
      climate.accept(air("wall", BENCH, at, usualTempC(at) + 4, 50));
    }
    clock.pass(Duration.ofMinutes(31));

    AirForecast informed = climate.forecast(BENCH).orElseThrow();

    assertThat(informed.past()).hasSizeGreaterThan(inTheDark.past().size());
    assertThat(informed.middle(2).airTempC()).isGreaterThan(inTheDark.middle(2).airTempC() + 1);
  }

  @Test
  void nothingIsForecastOfARoomNobodyMeasured() {
    assertThat(climate.forecast(FINISHING)).isEmpty();
  }

  private void fill(Duration length) {
    for (Instant at = NOON.minus(length); at.isBefore(NOON); at = at.plusSeconds(300)) {
      climate.accept(air("wall", BENCH, at, usualTempC(at), 50));
    }
  }

  /** Warmest at 15:00 UTC, coldest at 03:00. */
  private static double usualTempC(Instant at) {
    double hour = Math.floorMod(at.getEpochSecond(), 86_400L) / 3600.0;
    return 18 + 3 * Math.cos(2 * Math.PI * (hour - 15) / 24);
  }
}
