package coatwright.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.journal.Part;
import coatwright.journal.PartPath;
import coatwright.outlook.Outlook.Summary;
import coatwright.quantity.RefusedInput;
import coatwright.wood.BoardLag;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class PartOutlookTest {
  private static Outlook ofDoor(TestShop shop) {
    return shop.outlooks.ofPart(NextCoat.on(TestShop.DOOR), shop.now());
  }

  @Test
  void saysBrushInKindAirWithWoodMeasuredOnThePart() {
    TestShop shop = new TestShop().jar().steadyAir(-24, 0.02, 20, 45).wood(-0.1, 20);
    Outlook o = ofDoor(shop);
    assertThat(o.summary()).isEqualTo(Summary.BRUSH);
    assertThat(o.assumptions()).anyMatch(a -> a.contains("measured on the part"));
  }

  @Test
  void carriesTheSensorsErrorBandIntoTheMargins() {
    TestShop shop = new TestShop().jar().steadyAir(-24, 0.02, 20, 50).wood(-0.1, 20);
    Outlook.Clouding c = ofDoor(shop).clouding().orElseThrow();
    assertThat(c.spreadAtWoodK()).isLessThan(10.73 - 0.4);
    assertThat(c.marginK().getAsDouble()).isLessThan(5.24);
  }

  @Test
  void cannotTellWithoutCurrentAirAndNeverSaysBrush() {
    TestShop shop = new TestShop().jar().steadyAir(-24, -8, 20, 45);
    Outlook o = ofDoor(shop);
    assertThat(o.summary()).isEqualTo(Summary.CANT_TELL);
    assertThat(o.summary().toString()).isEqualTo("can't tell");
    assertThat(o.decidedBy()).isEqualTo("no-air");
    assertThat(o.clouding()).isEmpty();
  }

  @Test
  void cannotTellWhileTheAirMovesAndNobodyMeasuredTheWood() {
    TestShop shop = new TestShop().jar().air(-24, 0.02, 1, h -> h < -2 ? 12 : 19 + h, h -> 50);
    Outlook o = ofDoor(shop);
    assertThat(o.summary()).isEqualTo(Summary.CANT_TELL);
    assertThat(o.decidedBy()).isEqualTo("wood-unknown");
    assertThat(o.reason()).contains("nobody measured the wood").contains("should stand near");
  }

  @Test
  void tellsOnceTheWoodIsMeasuredThoughTheAirMoved() {
    TestShop shop =
        new TestShop().jar().air(-24, 0.02, 1, h -> h < -2 ? 12 : 19 + h, h -> 50).wood(-0.05, 15);
    assertThat(ofDoor(shop).summary()).isNotEqualTo(Summary.CANT_TELL);
  }

  /** The wood lags: two hours after the room is warmed the board is still colder than the air. */
  @Test
  void reckonsTheWoodFromTheRoomsHistoryWithItsUncertainty() {
    TestShop shop = new TestShop().jar().air(-24, 0.02, 1, h -> h < -2 ? 17.5 : 20, h -> 45);
    Outlook o = ofDoor(shop);
    assertThat(o.assumptions())
        .anyMatch(a -> a.matches("Wood 1[89]\\.\\d °C: reckoned from .*±.*"));
  }

  @Test
  void reckonsWithTheWeightOfTheWoodThatWasWrittenDown() {
    TestShop shop =
        new TestShop()
            .of("oak, white", 30)
            .jar()
            .air(-24, 0.02, 1, h -> h < -2 ? 17.5 : 20, h -> 45);
    assertThat(ofDoor(shop).assumptions())
        .anyMatch(a -> a.contains("for a board of 30 mm white oak (±"));
  }

  /** A heavy wood of the same thickness lags further behind. */
  @Test
  void aWoodWithoutAFigureIsTakenAsAUsualOne() {
    PartWood basswood = PartWood.of(part("basswood"), 20);
    PartWood oak = PartWood.of(part("white oak"), 20);
    PartWood teak = PartWood.of(part("teak"), 20);
    PartWood unknown = PartWood.of(part("driftwood"), 20);
    assertThat(teak).isEqualTo(unknown).isEqualTo(PartWood.of(Optional.empty(), 20));
    assertThat(teak.words()).isEqualTo("a board of 20 mm");
    assertThat(BoardLag.timeConstantS(basswood.board()))
        .isLessThan(BoardLag.timeConstantS(teak.board()));
    assertThat(BoardLag.timeConstantS(teak.board()))
        .isLessThan(BoardLag.timeConstantS(oak.board()));
  }

  private static Optional<Part> part(String species) {
    return Optional.of(
        new Part(
            TestShop.DOOR, OptionalDouble.empty(), OptionalDouble.empty(), Optional.of(species)));
  }

  @Test
  void usesTheWoodTemperatureEnteredWithTheLastCoat() {
    TestShop shop = new TestShop().jar().steadyAir(-24, 0.27, 20, 45);
    shop.coat(0, OptionalDouble.empty(), OptionalDouble.of(11));
    shop.at(Duration.ofMinutes(15));
    Outlook o = ofDoor(shop);
    assertThat(o.assumptions()).anyMatch(a -> a.contains("Wood 11.0 °C: entered"));
  }

  @Test
  void laysTheNextCoatOnWhatReallyLiesThere() {
    TestShop shop = new TestShop().jar().steadyAir(-24, 1.02, 20, 50);
    for (double min : new double[] {0, 15, 30, 45}) {
      shop.coat(min / 60, OptionalDouble.empty(), OptionalDouble.of(20));
    }
    shop.at(Duration.ofMinutes(60));
    Outlook o = ofDoor(shop);
    assertThat(o.decidedBy()).isEqualTo("too-tacky");
    assertThat(o.summary()).isEqualTo(Summary.HOLD_OFF);
    Outlook.Deciding deciding = o.deciding().orElseThrow();
    assertThat(deciding.unit()).isEqualTo("min");
    assertThat(o.reason()).contains("rest it %.0f min more".formatted(deciding.value()));
    assertThat(o.actions())
        .anyMatch(a -> a.startsWith("Rest the part"))
        .as("rest is all it needs: no hour is better than another")
        .noneMatch(a -> a.startsWith("Wait until"));
  }

  @Test
  void saysTheUnknownCutOfTheJar() {
    TestShop shop =
        new TestShop()
            .jar(OptionalDouble.empty(), OptionalDouble.empty())
            .steadyAir(-24, 0.02, 20, 45)
            .wood(-0.05, 20);
    assertThat(ofDoor(shop).assumptions()).anyMatch(a -> a.contains("dried-sample test"));
  }

  /** A damp morning, dry afternoons: the room's own days say when it will do. */
  @Test
  void namesTheNextBetterHourWhenHeldOff() {
    TestShop shop =
        new TestShop()
            .air(-336, 0.02, 5, h -> 20, h -> Math.floorMod((int) Math.floor(h), 24) < 6 ? 90 : 45);
    shop.at(Duration.ofMinutes(1));
    SessionOutlook session = shop.outlooks.session(TestShop.ROOM, shop.now());
    assertThat(session.outlook().summary()).isEqualTo(Summary.HOLD_OFF);
    assertThat(session.nextBetter()).isPresent();
    assertThat(Duration.between(shop.now(), session.nextBetter().orElseThrow()).toHours())
        .as("once the damp hours are over")
        .isBetween(5L, 23L);
    assertThat(session.outlook().actions()).anyMatch(a -> a.startsWith("Wait until about"));
  }

  @Test
  void speaksOfTheUsualFinishByNameWhileNoSessionIsOpen() {
    TestShop shop = new TestShop().jar().steadyAir(-24, 0.02, 20, 45);
    SessionOutlook session = shop.outlooks.session(TestShop.ROOM, shop.now());
    assertThat(session.open()).isFalse();
    assertThat(session.line()).isEqualTo("Brush Pale dewaxed shellac: no clouding expected");
    assertThat(session.part()).isEmpty();
    assertThat(session.airAgeSeconds().getAsDouble()).isCloseTo(0, within(120.0));
  }

  @Test
  void speaksOfThePartLastCoatedWhileTheSessionIsOpen() {
    TestShop shop = new TestShop().jar().steadyAir(-24, 0.35, 20, 45);
    shop.coat(0, OptionalDouble.empty(), OptionalDouble.of(20));
    shop.at(Duration.ofMinutes(20));
    SessionOutlook session = shop.outlooks.session(TestShop.ROOM, shop.now());
    assertThat(session.open()).isTrue();
    assertThat(session.part()).contains("cabinet/left-door");
    assertThat(session.jar()).contains("A");
    assertThat(session.line()).isEqualTo("Brush: no clouding expected");
    shop.at(Duration.ofHours(5)).steadyAir(4.5, 5.02, 20, 45);
    assertThat(shop.outlooks.session(TestShop.ROOM, shop.now()).open()).isFalse();
  }

  @Test
  void refusesAPartTheJournalDoesNotKnow() {
    TestShop shop = new TestShop().jar().steadyAir(-24, 0.02, 20, 45);
    PartPath other = PartPath.parse("cabinet/right-door");
    assertThatThrownBy(() -> shop.outlooks.ofPart(NextCoat.on(other), shop.now()))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("cabinet/right-door");
  }

  @Test
  void saysHoldOffAndWhyInOneLine() {
    TestShop shop = new TestShop().steadyAir(-24, 0.02, 28, 80);
    assertThat(shop.outlooks.session(TestShop.ROOM, shop.now()).line())
        .isEqualTo("Hold off with Pale dewaxed shellac: the film would cloud");
  }
}
