package coatwright.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.film.Milestone;
import coatwright.journal.Entry;
import coatwright.journal.Observation;
import coatwright.journal.Observation.What;
import coatwright.journal.Part;
import coatwright.journal.PartPath;
import coatwright.journal.Strike;
import coatwright.outlook.Outlook.DryingLevel;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** What the shop's other parts have shown starts the next one, with the counts it rests on. */
class ShopLearningTest {
  private static final double LOOKED_H = 8 * 24;
  private static final OptionalDouble USUAL = OptionalDouble.empty();
  private static final OptionalDouble WOOD_C = OptionalDouble.of(20);

  private static TestShop shop() {
    return new TestShop().jar().air(-24, LOOKED_H + 0.1, 15, h -> 20, h -> 50);
  }

  private static PartPath part(int i) {
    return PartPath.parse("chest/drawer-" + i);
  }

  /** Drawers of one coat each, rubbed out so many hours later. */
  private static Entry drawer(TestShop shop, int i, double rubbedOutH, boolean fine) {
    shop.write(
        TestShop.START.minus(Duration.ofDays(3)),
        new Part(part(i), OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty()));
    shop.coat(part(i), 0, USUAL, WOOD_C);
    return shop.note(part(i), rubbedOutH, What.RUBBED_OUT, fine);
  }

  private static Outlook ofDoor(TestShop shop) {
    shop.at(Duration.ofMinutes(Math.round(60 * LOOKED_H)));
    return shop.outlooks.ofPart(NextCoat.on(TestShop.DOOR), shop.now());
  }

  @Test
  void anUntaughtShopIsToldNothingOfItself() {
    assertThat(ofDoor(shop()).assumptions()).noneMatch(a -> a.contains("this shop"));
  }

  @Test
  void partsThatWereReadyEarlyBringTheNextOneForwardAndAreCounted() {
    TestShop shop = shop();
    double untaughtH = rubOutH(ofDoor(shop));
    for (int i = 0; i < 4; i++) {
      drawer(shop, i, 0.5 * untaughtH, i != 3);
    }
    Outlook taught = ofDoor(shop);
    assertThat(rubOutH(taught)).isLessThan(0.95 * untaughtH);
    assertThat(taught.assumptions())
        .anyMatch(a -> a.equals("Rub-outs in this shop that stayed fine: 3 of 4."))
        .anyMatch(a -> a.contains("learned from 4 parts."));
  }

  @Test
  void partsUnderVarnishThatStayedSoftLongerPutTheNextOneBack() {
    TestShop shop =
        TestShop.using("varnish-alkyd").can().air(-24, LOOKED_H + 0.1, 15, h -> 20, h -> 50);
    double untaughtH = rubOutH(ofDoor(shop));
    for (int i = 0; i < 3; i++) {
      shop.write(
          TestShop.START.minus(Duration.ofDays(3)),
          new Part(part(i), OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty()));
      shop.coat(part(i), 0, USUAL, WOOD_C);
      shop.note(part(i), 48, What.THUMBNAIL, false);
    }
    Outlook taught = ofDoor(shop);
    assertThat(rubOutH(taught)).isGreaterThan(1.1 * untaughtH);
    assertThat(taught.assumptions())
        .anyMatch(
            a ->
                a.startsWith("This shop's films of this finish take 1.")
                    && a.endsWith("learned from 3 parts, too few to say much."));
  }

  /** How a shop's films harden is no doing of today's air. */
  @Test
  void aSlowShopIsNotToldThatItsAirIsSlow() {
    TestShop varnish =
        TestShop.using("varnish-alkyd").can().air(-24, LOOKED_H + 0.1, 15, h -> 20, h -> 50);
    for (TestShop shop : List.of(shop(), varnish)) {
      double untaught = ofDoor(shop).drying().orElseThrow().ratioToReference();
      for (int i = 0; i < 4; i++) {
        shop.write(
            TestShop.START.minus(Duration.ofDays(3)),
            new Part(part(i), OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty()));
        shop.coat(part(i), 0, USUAL, WOOD_C);
        shop.note(part(i), 48, What.THUMBNAIL, false);
        shop.note(part(i), 100, What.THUMBNAIL, false);
      }
      Outlook taught = ofDoor(shop);
      assertThat(taught.assumptions()).anyMatch(a -> a.contains("learned from 4 parts"));
      assertThat(taught.drying().orElseThrow().ratioToReference()).isEqualTo(untaught);
      assertThat(taught.drying().orElseThrow().level()).isEqualTo(DryingLevel.USUAL);
    }
  }

  @Test
  void oneOrTwoPartsAreSaidToBeTooFewToSayMuch() {
    TestShop shop = shop();
    drawer(shop, 0, 10, true);
    assertThat(ofDoor(shop).assumptions())
        .anyMatch(a -> a.endsWith("learned from 1 part, too few to say much."))
        .anyMatch(a -> a.equals("Rub-outs in this shop that stayed fine: 1 of 1."));
  }

  @Test
  void aNoteThatIsStruckOutTeachesNoMore() {
    TestShop shop = shop();
    Outlook before = ofDoor(shop);
    Entry note = drawer(shop, 0, 6, true);
    assertThat(rubOutH(ofDoor(shop))).isLessThan(rubOutH(before));
    shop.write(shop.now(), new Strike(note.id(), "another drawer"));
    assertThat(rubOutH(ofDoor(shop))).isEqualTo(rubOutH(before));
    assertThat(ofDoor(shop).assumptions()).isEqualTo(before.assumptions());
  }

  /** Its own tests count on it directly; through the shop they would count twice. */
  @Test
  void aPartIsNotTaughtByItself() {
    TestShop shop = shop();
    shop.coat(0, USUAL, WOOD_C);
    shop.note(12, What.RUBBED_OUT, true);
    assertThat(ofDoor(shop).assumptions()).noneMatch(a -> a.contains("this shop"));
  }

  /** In this air a coat's water goes a little beyond what the resin bears by the model's middle. */
  @Test
  void coatsThatStayedClearInDampAirSayThatThisShopsFilmsBearMore() {
    TestShop shop = new TestShop().jar().air(-24, LOOKED_H + 0.1, 15, h -> 22, h -> 70);
    Outlook.Clouding untaught = ofDoor(shop).clouding().orElseThrow();
    for (int i = 0; i < 3; i++) {
      shop.write(
          TestShop.START.minus(Duration.ofDays(3)),
          new Part(part(i), OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty()));
      shop.coat(part(i), 0, USUAL, OptionalDouble.of(22));
      look(shop, part(i), 1, 0);
    }
    Outlook taught = ofDoor(shop);
    Outlook.Clouding clouding = taught.clouding().orElseThrow();
    assertThat(clouding.waterRatioP50().getAsDouble())
        .isLessThan(0.98 * untaught.waterRatioP50().getAsDouble());
    assertThat(clouding.waterLimitPct().getAsDouble())
        .isGreaterThan(untaught.waterLimitPct().getAsDouble());
    assertThat(clouding.waterPeakPct()).isEqualTo(untaught.waterPeakPct());
    assertThat(taught.assumptions())
        .anyMatch(a -> a.equals("Coats looked at in this shop that clouded: 0 of 3."))
        .anyMatch(a -> a.endsWith("the model says: learned from 3 parts, too few to say much."));
  }

  @Test
  void whatClearedWithinTheHourHadCloudedAllTheSame() {
    TestShop shop = shop();
    shop.write(
        TestShop.START.minus(Duration.ofDays(3)),
        new Part(part(0), OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty()));
    shop.coat(part(0), 0, USUAL, WOOD_C);
    look(shop, part(0), 0.1, 2);
    shop.write(
        TestShop.START.plus(Duration.ofMinutes(50)),
        new Observation(
            part(0),
            Optional.empty(),
            What.CLEARED,
            OptionalInt.empty(),
            Optional.empty(),
            Optional.empty()));
    assertThat(ofDoor(shop).assumptions())
        .anyMatch(a -> a.equals("Coats looked at in this shop that clouded: 1 of 1."));
  }

  private static void look(TestShop shop, PartPath part, double atH, int grade) {
    shop.write(
        TestShop.START.plusSeconds(Math.round(3600 * atH)),
        new Observation(
            part,
            Optional.empty(),
            What.CLOUDED,
            OptionalInt.of(grade),
            Optional.empty(),
            Optional.empty()));
  }

  @Test
  void theDueListMovesWithWhatOtherPartsHaveShownAndSaysSo() {
    TestShop shop = shop();
    shop.coat(0, USUAL, WOOD_C);
    double rubOutH = hours(shop.due(1, Milestone.RUB_OUT.toString()));
    drawer(shop, 0, 0.4 * rubOutH, true);
    drawer(shop, 1, 0.4 * rubOutH, true);
    Due moved = dueOfDoor(shop, 1.1);
    assertThat(hours(moved)).isLessThan(0.97 * rubOutH);
    assertThat(moved.reason()).contains("what other parts of this shop have shown");
  }

  @Test
  void aWeighedResidueMovesTheDateOfItsPartAndSaysSo() {
    TestShop shop = shop();
    shop.coat(0, USUAL, WOOD_C);
    double rubOutH = hours(shop.due(1, Milestone.RUB_OUT.toString()));
    weigh(shop, 1, 6);
    Due later = shop.due(1.1, Milestone.RUB_OUT.toString());
    assertThat(hours(later)).isGreaterThan(1.1 * rubOutH);
    assertThat(later.reason().orElseThrow()).startsWith("weighed with 6.0 % still solvent at");
  }

  private static void weigh(TestShop shop, double atH, double pct) {
    shop.write(
        TestShop.START.plusSeconds(Math.round(3600 * atH)),
        new Observation(
            TestShop.DOOR,
            Optional.empty(),
            What.WEIGHED,
            OptionalInt.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.of(pct)));
  }

  @Test
  void theMarginOverTheDewPointHasItsRange() {
    Outlook.Clouding c = ofDoor(shop()).clouding().orElseThrow();
    assertThat(c.marginP10K().getAsDouble()).isLessThan(c.marginK().getAsDouble());
    assertThat(c.marginP90K().getAsDouble()).isGreaterThan(c.marginK().getAsDouble());
    assertThat(
            List.of(
                c.waterRatioP10().getAsDouble(),
                c.waterRatioP50().getAsDouble(),
                c.waterRatioP90().getAsDouble()))
        .isSorted();
  }

  private static Due dueOfDoor(TestShop shop, double atH) {
    shop.at(Duration.ofSeconds(Math.round(atH * 3600)));
    shop.outlooks.refresh(shop.now(), "asked by the test");
    return shop.outlooks.due(Optional.of(TestShop.DOOR.piece())).stream()
        .filter(d -> d.milestone().equals(Milestone.RUB_OUT.toString()))
        .findFirst()
        .orElseThrow();
  }

  private static double hours(Due due) {
    Instant p50 = due.p50().orElseThrow();
    return Duration.between(TestShop.START, p50).toMinutes() / 60.0;
  }

  private static double rubOutH(Outlook o) {
    return o.milestones().stream()
            .filter(m -> m.name().equals(Milestone.RUB_OUT.toString()))
            .findFirst()
            .orElseThrow()
            .p50Min()
            .getAsDouble()
        / 60;
  }
}
