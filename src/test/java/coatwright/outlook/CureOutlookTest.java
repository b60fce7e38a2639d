package coatwright.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.film.Curing;
import coatwright.film.Finish;
import coatwright.journal.Observation.What;
import coatwright.outlook.Outlook.CloudingLevel;
import coatwright.outlook.Outlook.DryingLevel;
import coatwright.outlook.Outlook.Summary;
import coatwright.quantity.RefusedInput;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The outlook of finishes that cure. Their figures are held to their sources by the film's own
 * tests.
 */
class CureOutlookTest {
  private static Outlook outlook(String finish, String... keysAndValues) {
    Map<String, String> form = new HashMap<>(Map.of("finish", finish));
    for (int i = 0; i < keysAndValues.length; i += 2) {
      form.put(keysAndValues[i], keysAndValues[i + 1]);
    }
    return FilmOutlooks.described(OutlookForm.read(form, TestShop.SHIPPED));
  }

  private static List<String> curing() {
    return TestShop.SHIPPED.values().stream()
        .filter(f -> f.drying() instanceof Curing)
        .map(Finish::name)
        .sorted()
        .toList();
  }

  @ParameterizedTest
  @MethodSource("curing")
  void everyFinishThatCuresMayBeBrushedInItsReferenceAirAndDriesAsUsual(String finish) {
    Finish f = TestShop.SHIPPED.get(finish);
    Outlook o = outlook(finish, "air", f.referenceTempC() + "C," + f.referenceRhPct() + "%");
    assertThat(o.summary()).isEqualTo(Summary.BRUSH);
    assertThat(o.drying().orElseThrow().ratioToReference()).isCloseTo(1, within(0.02));
    assertThat(o.drying().orElseThrow().level()).isEqualTo(DryingLevel.USUAL);
    assertThat(o.openTime()).isEmpty();
    assertThat(o.model().name()).startsWith("cure/");
  }

  @ParameterizedTest
  @MethodSource("curing")
  void everyMilestoneHasItsRangeInOrder(String finish) {
    Outlook o = outlook(finish, "air", "20C,50%");
    double before = 0;
    for (Outlook.Milestone m : o.milestones()) {
      double p50 = m.p50Min().getAsDouble();
      assertThat(m.p10Min().getAsDouble()).as(m.name()).isLessThan(p50);
      assertThat(p50).as(m.name()).isGreaterThanOrEqualTo(before);
      before = p50;
    }
    assertThat(o.milestones()).extracting(Outlook.Milestone::name).contains("dry to recoat");
  }

  @ParameterizedTest
  @MethodSource("curing")
  void woodBelowTheDewPointIsCondensationAndGivesNoTimes(String finish) {
    Outlook o = outlook(finish, "air", "25C,80%", "wood", "18C");
    assertThat(o.decidedBy()).isEqualTo("condensation");
    assertThat(o.summary()).isEqualTo(Summary.HOLD_OFF);
    assertThat(o.milestones()).isEmpty();
    assertThat(o.drying()).isEmpty();
  }

  @Test
  void woodWithinAKelvinOfTheDewPointHoldsItOff() {
    Outlook o = outlook("varnish-alkyd", "air", "25C,80%", "wood", "21.8C");
    assertThat(o.decidedBy()).isEqualTo("clouding");
    assertThat(o.clouding().orElseThrow().level()).isEqualTo(CloudingLevel.LIKELY);
    assertThat(o.reason()).contains("above the dew point").contains("water settles on the film");
  }

  @Test
  void colderThanItIsStatedForIsHeldOffWithTheLimit() {
    Outlook o = outlook("varnish-alkyd", "air", "8C,60%");
    assertThat(o.decidedBy()).isEqualTo("limits");
    assertThat(o.deciding().orElseThrow().value()).isEqualTo(10);
    assertThat(o.actions()).anyMatch(a -> a.startsWith("Warm the room and the wood"));
    assertThat(o.cure().orElseThrow().slowCure()).anyMatch(s -> s.contains("cures slowly"));
  }

  /** Its wet film stands near the wet-bulb temperature, 9.6 °C in this air. */
  @Test
  void aWaterborneFilmColderThanItsParticlesNeedIsHeldOffThoughTheAirIsNot() {
    Outlook o = outlook("waterborne-urethane", "air", "15C,30%", "wood", "12C");
    Outlook.Cure cure = o.cure().orElseThrow();
    assertThat(o.decidedBy()).isEqualTo("film-forming");
    assertThat(cure.filmFormingMarginK().getAsDouble()).isLessThan(2);
    assertThat(o.summary()).isIn(Summary.HOLD_OFF, Summary.TAKE_CARE);
  }

  @Test
  void aMixedPotTellsHowLongItStaysWorkable() {
    double warm =
        outlook("two-part-urethane", "air", "30C,50%")
            .cure()
            .orElseThrow()
            .potLifeH()
            .getAsDouble();
    double usual =
        outlook("two-part-urethane", "air", "20C,50%")
            .cure()
            .orElseThrow()
            .potLifeH()
            .getAsDouble();
    assertThat(warm).isLessThan(usual);
    assertThat(outlook("two-part-urethane", "air", "20C,50%").assumptions())
        .anyMatch(a -> a.startsWith("A mixed pot stays workable"));
  }

  @Test
  void anOilTellsWhenToWipeItOffAndHowLongThePoresWeep() {
    Outlook o = outlook("oil-linseed", "air", "20C,50%");
    assertThat(o.cure().orElseThrow().wipeOffAfterMin()).isPresent();
    assertThat(o.cure().orElseThrow().bleedEveryMin()).isPresent();
    assertThat(o.cautions()).anyMatch(c -> c.startsWith("Rags"));
  }

  @Test
  void whatNobodyMeasuredIsMarkedAsAnEstimate() {
    Outlook o = outlook("varnish-alkyd", "air", "20C,50%");
    assertThat(o.milestones())
        .filteredOn(m -> m.name().equals("wrap"))
        .extracting(Outlook.Milestone::estimate)
        .containsExactly(true);
    assertThat(o.milestones()).extracting(Outlook.Milestone::estimate).contains(false);
  }

  @Test
  void aSecondCoatTooSoonIsHeldOffWithTheRestItNeeds() {
    Outlook o = outlook("varnish-alkyd", "air", "20C,50%", "coatsBefore", "1", "interval", "6h");
    assertThat(o.decidedBy()).isEqualTo("too-tacky");
    assertThat(o.deciding().orElseThrow().unit()).isEqualTo("min");
    assertThat(o.deciding().orElseThrow().value()).isCloseTo(18 * 60, within(60.0));
  }

  @Test
  void aSecondCoatTooLateIsToBeScuffed() {
    Outlook o = outlook("varnish-alkyd", "air", "20C,50%", "coatsBefore", "1", "interval", "96h");
    assertThat(o.decidedBy()).isEqualTo("recoat-window");
    assertThat(o.reason()).contains("scuff the film");
  }

  @Test
  void aCutASpiritAndARetarderAreRefusedTogether() {
    assertThatThrownBy(
            () ->
                outlook(
                    "varnish-alkyd",
                    "air",
                    "20C,50%",
                    "cut",
                    "2lb",
                    "strength",
                    "95%",
                    "retarder",
                    "2-butoxyethanol:3%"))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("cut \"2lb\"")
        .hasMessageContaining("strength \"95%\"")
        .hasMessageContaining("retarder");
  }

  @Test
  void aPartUnderVarnishIsPredictedThroughItsRealAirAndAColdNightMovesIt() {
    TestShop even = TestShop.using("varnish-alkyd").can().steadyAir(-24, 30, 20, 50);
    even.coat(0, OptionalDouble.empty(), OptionalDouble.of(20));
    TestShop night =
        TestShop.using("varnish-alkyd")
            .can()
            .air(-24, 30, 1, h -> h >= 6 && h < 14 ? 10 : 20, h -> 50);
    night.coat(0, OptionalDouble.empty(), OptionalDouble.of(20));
    Due sooner = even.due(20, "dry hard");
    Due later = night.due(20, "dry hard");
    assertThat(later.p50().orElseThrow()).isAfter(sooner.p50().orElseThrow());
  }

  @Test
  void theDueListTellsWhenTheRecoatWindowOfAVarnishCloses() {
    TestShop shop = TestShop.using("varnish-alkyd").can().steadyAir(-24, 30, 20, 50);
    shop.coat(0, OptionalDouble.of(80), OptionalDouble.of(20));
    Due recoat = shop.due(1, "dry to recoat");
    assertThat(Duration.between(TestShop.START, recoat.until().orElseThrow()).toHours())
        .isBetween(70L, 74L);
    assertThat(shop.listed("wrap").estimate()).isTrue();
    assertThat(shop.listed("rub out").estimate()).isFalse();
  }

  @Test
  void aPassedThumbnailBringsTheDatesOfAVarnishForward() {
    TestShop shop = TestShop.using("varnish-alkyd").can().steadyAir(-24, 40, 20, 50);
    shop.coat(0, OptionalDouble.empty(), OptionalDouble.of(20));
    Due before = shop.due(18, "rub out");
    shop.note(18.2, What.THUMBNAIL, true);
    Due after = shop.due(18.4, "rub out");
    assertThat(after.p50().orElseThrow()).isBefore(before.p50().orElseThrow());
    assertThat(after.reason().orElseThrow()).contains("thumbnail test passed");
  }

  @Test
  void aVarnishOnWaxyShellacIsWarnedOf() {
    TestShop shop = TestShop.using("shellac-amber").jar().steadyAir(-24, 60, 20, 50).wood(59.9, 20);
    shop.coat(0, OptionalDouble.empty(), OptionalDouble.of(20));
    shop.opens("V", "varnish-alkyd", 59).at(Duration.ofHours(60));
    Outlook o =
        shop.outlooks.ofPart(
            new NextCoat(TestShop.DOOR, Optional.empty(), Optional.of("V")), shop.now());
    assertThat(o.decidedBy()).isEqualTo("layers");
    assertThat(o.summary()).isEqualTo(Summary.TAKE_CARE);
    assertThat(o.reason()).contains("holds wax").contains("dewaxed shellac between");
  }

  @Test
  void theNextCoatOfAVarnishedPartIsAskedOfTheCoatBeneath() {
    TestShop shop = TestShop.using("varnish-alkyd").can().steadyAir(-24, 8, 20, 50).wood(7.9, 20);
    shop.coat(0, OptionalDouble.empty(), OptionalDouble.of(20));
    shop.at(Duration.ofHours(8));
    Outlook o = shop.outlooks.ofPart(NextCoat.on(TestShop.DOOR), shop.now());
    assertThat(o.decidedBy()).isEqualTo("too-tacky");
    assertThat(o.reason()).contains("Too soon for the next coat");
    assertThat(o.actions()).noneMatch(a -> a.startsWith("Wait until"));
  }
}
