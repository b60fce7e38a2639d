package coatwright.watch;

import static coatwright.outlook.Outlook.CloudingLevel.LIKELY;
import static coatwright.outlook.Outlook.CloudingLevel.NONE_EXPECTED;
import static coatwright.outlook.Outlook.CloudingLevel.POSSIBLE;
import static coatwright.watch.InventedShop.START;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.climate.SourceState;
import coatwright.film.FilmParameters;
import coatwright.film.Finish;
import coatwright.film.LacquerBlend;
import coatwright.film.LacquerDrying;
import coatwright.film.Layer;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Warnings that begin, are said once, and end. */
class ShopWatchTest {
  private final InventedShop shop = new InventedShop();

  @Test
  void warnsOfCloudingWhileAFilmIsWetAndSaysItOnce() {
    shop.coatAt(0).clouding(LIKELY, 9.9, 7.1).betterAt(240).lookEveryMinute(1, 10);
    assertThat(shop.rung).containsExactly("begins clouding");
    Warning warning = shop.openNow().get(0);
    assertThat(warning.room()).contains("bench");
    assertThat(warning.part()).contains("cabinet/left-door");
    assertThat(warning.message())
        .isEqualTo(
            "Clouding likely in bench, cabinet/left-door still wet: the film would take up 9.9 %"
                + " water and gives way at 7.1 %; finish the part in hand, start no other until"
                + " about 13:00, and bring no heat near the wet film");
  }

  @Test
  void saysNothingOfClammyAirWhereNothingIsWetOrPlanned() {
    shop.clouding(LIKELY, 9.9, 7.1).lookEveryMinute(0, 10);
    shop.coatAt(20).due("dry to recoat", START.plus(Duration.ofMinutes(27)));
    shop.lookAt(Duration.ofHours(4));
    assertThat(shop.rung).isEmpty();
  }

  @Test
  void warnsOfCloudingWhereTheNextCoatComesDueWithinThreeHours() {
    shop.coatAt(0)
        .due("dry to recoat", START.plus(Duration.ofMinutes(90)))
        .clouding(LIKELY, 9.9, 7.1)
        .lookAt(Duration.ofMinutes(45));
    assertThat(shop.openKinds()).containsExactly("clouding");
    assertThat(shop.openNow().get(0).message()).contains("due its next coat", "leave the jar shut");
  }

  @Test
  void aRatioThatWandersBetweenTheLimitsNeitherRingsAgainNorEnds() {
    shop.coatAt(0).due("dry to recoat", START.plus(Duration.ofMinutes(10)));
    for (int minute = 1; minute <= 40; minute++) {
      boolean over = minute % 2 == 0;
      shop.clouding(over ? LIKELY : POSSIBLE, over ? 8.8 : 8.1, 7.1)
          .lookAt(Duration.ofMinutes(minute));
    }
    assertThat(shop.rung).containsExactly("begins clouding");
  }

  @Test
  void cloudingEndsOnlyAfterFiveClearMinutes() {
    shop.coatAt(0).due("dry to recoat", START.plus(Duration.ofMinutes(10)));
    shop.clouding(LIKELY, 9.9, 7.1).lookAt(Duration.ofMinutes(1));
    shop.clouding(NONE_EXPECTED, 5.0, 7.1).lookEveryMinute(2, 6);
    assertThat(shop.rung).containsExactly("begins clouding");
    shop.lookAt(Duration.ofMinutes(7));
    assertThat(shop.rung).containsExactly("begins clouding", "ends clouding");
    assertThat(shop.kept.get(0).to()).contains(START.plus(Duration.ofMinutes(7)));
  }

  @Test
  void aReadingInDoubtMayBeginAWarningAndIsMarkedAsUnconfirmed() {
    shop.coatAt(0).due("dry to recoat", START.plus(Duration.ofMinutes(10)));
    shop.jump(28, 80, LIKELY, 9.9, 7.1).lookAt(Duration.ofMinutes(1));
    assertThat(shop.openNow().get(0).message())
        .startsWith("Clouding likely in bench")
        .endsWith(
            "Unconfirmed: wall just read 28.0 °C, 80 %: a jump, waiting for one more reading to"
                + " agree");

    shop.jumpWasASpike().clouding(LIKELY, 9.9, 7.1).lookAt(Duration.ofMinutes(2));
    assertThat(shop.rung).as("borne out: the same warning").containsExactly("begins clouding");
    assertThat(shop.openNow().get(0).message()).doesNotContain("Unconfirmed");
  }

  @Test
  void aWarningBegunByASpikeEndsAfterFiveClearMinutes() {
    shop.coatAt(0).due("dry to recoat", START.plus(Duration.ofMinutes(10)));
    shop.jump(28, 80, LIKELY, 9.9, 7.1).lookAt(Duration.ofMinutes(1));
    shop.jumpWasASpike().lookEveryMinute(2, 7);
    assertThat(shop.rung).containsExactly("begins clouding", "ends clouding");
  }

  @Test
  void aReadingInDoubtEndsNoWarning() {
    shop.coatAt(0).due("dry to recoat", START.plus(Duration.ofMinutes(10)));
    shop.clouding(LIKELY, 9.9, 7.1).lookAt(Duration.ofMinutes(1));
    shop.jump(20, 40, NONE_EXPECTED, 2.4, 7.1).lookEveryMinute(2, 18);
    assertThat(shop.rung).containsExactly("begins clouding");
  }

  @Test
  void cloudingEndsWhenTheFilmIsDryAndNothingIsPlanned() {
    shop.coatAt(0).clouding(LIKELY, 9.9, 7.1).lookEveryMinute(1, 19);
    assertThat(shop.openKinds()).containsExactly("clouding");
    shop.lookAt(Duration.ofMinutes(20));
    assertThat(shop.openNow()).isEmpty();
  }

  @Test
  void airThatCannotBeBelievedNeitherBeginsNorEndsClouding() {
    shop.coatAt(0).due("dry to recoat", START.plus(Duration.ofMinutes(10)));
    shop.noAir().lookEveryMinute(1, 5);
    assertThat(shop.rung).isEmpty();
    shop.air(28, 80).clouding(LIKELY, 9.9, 7.1).lookAt(Duration.ofMinutes(6));
    shop.noAir().lookEveryMinute(7, 60);
    assertThat(shop.rung).containsExactly("begins clouding");
  }

  @Test
  void woodNearTheDewPointIsSaidWithBothTemperaturesAndEndsTwoKelvinAbove() {
    shop.air(22, 60).woodC(14.2, 0).lookAt(Duration.ofMinutes(1));
    assertThat(shop.openKinds()).containsExactly("wood-near-dew-point");
    assertThat(shop.openNow().get(0).message())
        .startsWith("Wood near the dew point in bench: wood 14.2 °C, dew point 13.9 °C");
    shop.woodC(16, 2).lookEveryMinute(2, 20);
    assertThat(shop.openKinds())
        .as("2.1 K less its uncertainty lies between the limits")
        .isNotEmpty();
    shop.woodC(18, 21).lookEveryMinute(21, 31);
    assertThat(shop.openNow()).isEmpty();
  }

  @Test
  void aWoodTemperatureOlderThanHalfAnHourSaysNothing() {
    shop.air(22, 60).woodC(10, 0).lookAt(Duration.ofMinutes(31));
    assertThat(shop.rung).isEmpty();
  }

  @Test
  void aSensorThatGoesSilentIsWarnedOfOnceAndItsWordsChangeWhenItIsLost() {
    shop.source("wall", SourceState.LATE).source("rack", SourceState.CURRENT).lookEveryMinute(1, 5);
    assertThat(shop.rung).isEmpty();
    shop.source("wall", SourceState.STALE).lookEveryMinute(6, 8);
    shop.source("wall", SourceState.LOST).lookEveryMinute(9, 12);
    assertThat(shop.rung).containsExactly("begins sensor");
    assertThat(shop.kept).hasSize(1);
    shop.source("wall", SourceState.CURRENT).lookEveryMinute(13, 15);
    assertThat(shop.rung).containsExactly("begins sensor", "ends sensor");
  }

  @Test
  void aSensorThatSpeaksNonsenseIsWarnedOf() {
    shop.source("wall", SourceState.REFUSED).lookAt(Duration.ofMinutes(1));
    assertThat(shop.openNow().get(0).message())
        .startsWith("Sensor wall in bench: it speaks, but nothing it says can be believed");
  }

  @Test
  void aTransportThatFallsSilentIsNamedOnceInsteadOfEverySensor() {
    for (String name : new String[] {"wall", "rack", "door", "store"}) {
      shop.source(name, SourceState.LOST);
    }
    shop.lookEveryMinute(1, 10);
    assertThat(shop.rung).containsExactly("begins sensor");
    assertThat(shop.openNow().get(0).message()).contains("wall, rack, door, store");
    shop.source("wall", SourceState.CURRENT).lookEveryMinute(11, 14);
    assertThat(shop.openNow()).as("the three still silent are now named").hasSize(3);
  }

  @Test
  void aSensorJustSetUpMayWaitTenMinutes() {
    shop.source("wall", SourceState.WAITING).lookEveryMinute(0, 9);
    assertThat(shop.rung).isEmpty();
    shop.lookAt(Duration.ofMinutes(10));
    assertThat(shop.rung).containsExactly("begins sensor");
  }

  @Test
  void aSensorTakenOutOfTheSettingsEndsItsWarning() {
    shop.source("wall", SourceState.LOST).lookAt(Duration.ofMinutes(1));
    shop.withoutSource("wall").lookAt(Duration.ofMinutes(2));
    assertThat(shop.rung).containsExactly("begins sensor", "ends sensor");
  }

  @Test
  void twoSensorsThatDisagreeForTenMinutesAreWarnedOf() {
    shop.disagreeing(true).lookEveryMinute(0, 9);
    assertThat(shop.rung).isEmpty();
    shop.lookAt(Duration.ofMinutes(10));
    assertThat(shop.openNow().get(0).message()).startsWith("Sensors in bench: wall and rack");
  }

  @Test
  void warnsOfSlowCureWhenColdMovesAPromise() {
    shop.coatAt(0)
        .promise(LocalDate.of(2026, 3, 5))
        .due("rub out", START.plus(Duration.ofDays(5)))
        .air(15, 50)
        .lookEveryMinute(1, 29);
    assertThat(shop.rung).as("half an hour must pass").isEmpty();
    shop.lookEveryMinute(30, 40);
    assertThat(shop.rung).containsExactly("begins slow-cure");
    assertThat(shop.openNow().get(0).message())
        .contains("ready to rub out about Sat 7 Mar", "promised for Thu 5 Mar", "15.0 °C", "20 °C");
  }

  @Test
  void aDateThatIsKeptIsNoSlowCureHoweverCold() {
    shop.coatAt(0)
        .promise(LocalDate.of(2026, 3, 20))
        .due("rub out", START.plus(Duration.ofDays(9)))
        .air(11, 50)
        .lookEveryMinute(1, 90);
    assertThat(shop.rung).isEmpty();
  }

  @Test
  void aDateMissedInWarmAirIsNotBlamedOnTheAir() {
    shop.coatAt(0)
        .promise(LocalDate.of(2026, 3, 5))
        .due("rub out", START.plus(Duration.ofDays(5)))
        .air(21, 50)
        .lookEveryMinute(1, 90);
    assertThat(shop.rung).isEmpty();
  }

  @Test
  void withoutAPromiseFiveKelvinBelowTheReferenceIsSlowCureAndItEndsWhenTheRoomWarms() {
    shop.coatAt(0)
        .due("rub out", START.plus(Duration.ofDays(5)))
        .air(14, 50)
        .lookEveryMinute(1, 60);
    assertThat(shop.rung).containsExactly("begins slow-cure");
    shop.air(15.5, 50).lookEveryMinute(61, 120);
    assertThat(shop.rung).as("between the limits").containsExactly("begins slow-cure");
    shop.air(17, 50).lookEveryMinute(121, 152);
    assertThat(shop.rung).containsExactly("begins slow-cure", "ends slow-cure");
  }

  @Test
  void afterARestartAnOpenWarningIsNeitherRepeatedNorForgotten() {
    shop.coatAt(0).clouding(LIKELY, 9.9, 7.1).lookEveryMinute(1, 2);
    String id = shop.openNow().get(0).id();
    shop.restarted().lookEveryMinute(3, 5);
    assertThat(shop.rung).containsExactly("begins clouding");
    assertThat(shop.openNow()).singleElement().satisfies(w -> assertThat(w.id()).isEqualTo(id));
    shop.restarted().lookAt(Duration.ofMinutes(25));
    assertThat(shop.rung).containsExactly("begins clouding", "ends clouding");
  }

  @Test
  void aClockSetBackEndsNoWarningBeforeItBegan() {
    shop.source("wall", SourceState.LOST).lookAt(Duration.ofHours(2));
    shop.withoutSource("wall").lookAt(Duration.ofHours(1));
    assertThat(shop.kept.get(0).to()).contains(START.plus(Duration.ofHours(2)));
  }

  @Test
  void theGravestStandsFirst() {
    shop.source("wall", SourceState.LOST)
        .coatAt(0)
        .due("rub out", START.plus(Duration.ofDays(5)))
        .air(14, 90)
        .woodC(12.5, 20)
        .lookEveryMinute(1, 40);
    shop.coatAt(41).clouding(LIKELY, 9.9, 7.1).lookAt(Duration.ofMinutes(42));
    assertThat(shop.openKinds())
        .containsExactly("clouding", "wood-near-dew-point", "sensor", "slow-cure");
  }

  /** Film model: 41 kJ/mol, the energy fitted to three days at 24 °C and five at 15 °C. */
  @Test
  void aDayAtFifteenDegreesCountsThreeQuartersOfOneAtTwenty() {
    assertThat(SlowCureSigns.rate(InventedShop.FINISH, 15)).isCloseTo(3.75 / 5.00, within(0.01));
  }

  /** Arrhenius with the set's own energy, by hand: 60 kJ/mol from 20 to 15 °C is 0.652. */
  @Test
  void aFinishIsCountedByTheEnergyOfItsOwnSet() {
    Finish shellac = InventedShop.FINISH;
    Finish lacquer =
        new Finish(
            "lacquer",
            "Lacquer",
            Layer.LACQUER,
            new LacquerDrying(
                FilmParameters.LACQUER.withGlassEnergy(60e3), LacquerBlend.REGULAR, 20, 0.15),
            shellac.referenceTempC(),
            shellac.referenceRhPct(),
            shellac.wetFilmUmByMethod(),
            shellac.wetFilmLnSd(),
            shellac.lowestTempC(),
            shellac.highestTempC(),
            shellac.recoatUntilMin(),
            shellac.testDueMonths(),
            shellac.buildLimitUm(),
            "",
            List.of(),
            List.of(),
            List.of(),
            List.of());
    assertThat(SlowCureSigns.rate(lacquer, 15)).isCloseTo(0.652, within(0.001));
  }
}
