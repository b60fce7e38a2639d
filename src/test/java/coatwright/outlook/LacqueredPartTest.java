package coatwright.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coatwright.film.Finish;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.FinishNames;
import coatwright.journal.Forms;
import coatwright.journal.Jar;
import coatwright.journal.Method;
import coatwright.journal.ShopForms;
import coatwright.outlook.Outlook.CloudingLevel;
import coatwright.outlook.Outlook.Summary;
import coatwright.quantity.RefusedInput;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A part really coated with lacquer, from the can to its dates. */
class LacqueredPartTest {
  private static final String LACQUER = "lacquer-nitrocellulose";

  /** Three coats an hour apart in the air its data sheets speak of. */
  private static TestShop threeCoats(double untilH) {
    TestShop shop = TestShop.using(LACQUER).can().air(-24, untilH, 5, h -> 25, h -> 50);
    for (double atH : new double[] {0, 1, 2}) {
      shop.coat(atH, OptionalDouble.empty(), OptionalDouble.of(25));
    }
    return shop;
  }

  private static CoatJob job(TestShop shop) {
    return (CoatJob) shop.outlooks.prediction(TestShop.DOOR).orElseThrow().job();
  }

  private static double daysFromLastCoat(Instant date) {
    return Duration.between(TestShop.START.plus(Duration.ofHours(2)), date).toSeconds() / 86_400.0;
  }

  /** One to two weeks to rub out: common practice, no source; the set is fitted to ten days. */
  @Test
  void isPredictedToRubOutAfterOneToTwoWeeks() {
    TestShop shop = threeCoats(3);
    Due due = shop.due(2.5, "rub out");
    assertThat(daysFromLastCoat(due.p50().orElseThrow())).isBetween(7.0, 14.0);
    assertThat(due.p10().orElseThrow()).isBefore(due.p50().orElseThrow());
    assertThat(due.estimate()).as("set to what finishers see").isFalse();
    assertThat(shop.listed("dry hard").estimate()).isTrue();
    assertThat(shop.outlooks.prediction(TestShop.DOOR).orElseThrow().prediction().model().name())
        .isEqualTo("film/lacquer");
  }

  @Test
  void coatsOfLacquerAreOneFilmAndSayWhatTheyWereTakenToBe() {
    TestShop shop = threeCoats(3);
    shop.due(2.5, "rub out");
    assertThat(job(shop).laid()).hasSize(3);
    assertThat(job(shop).stack().coats()).noneMatch(c -> c.isSpirit());
    assertThat(job(shop).inputs())
        .extracting(Provenance::input)
        .contains("blend", "solids by volume", "wet film")
        .doesNotContain("cut", "spirit strength");
  }

  @Test
  void theNextCoatIsJudgedOnTheLacquerBeneath() {
    TestShop shop = threeCoats(2.2).wood(2.15, 25).at(Duration.ofMinutes(130));
    Outlook o = shop.outlooks.ofPart(NextCoat.on(TestShop.DOOR), shop.now());
    assertThat(o.decidedBy()).isEqualTo("too-tacky");
    assertThat(o.assumptions())
        .anyMatch(a -> a.startsWith("Carried by the regular blend, 20 % solids"))
        .noneMatch(a -> a.contains("Spirit") || a.contains("Cut unknown"));
    assertThat(o.model().name()).isEqualTo("film/lacquer");
  }

  @Test
  void inDampWarmAirItIsHeldBackOrTakenCareOfForItsCloudingAndASlowerBlendHelps() {
    TestShop shop = TestShop.using(LACQUER).can().steadyAir(-24, 0.02, 28, 85).wood(-0.1, 28);
    Outlook o = shop.outlooks.ofPart(NextCoat.on(TestShop.DOOR), shop.now());
    assertThat(o.clouding().orElseThrow().level()).isNotEqualTo(CloudingLevel.NONE_EXPECTED);
    assertThat(o.summary()).isNotEqualTo(Summary.BRUSH);
    assertThat(o.reason()).contains("what the blend bears").doesNotContain("spirit");
    assertThat(o.actions()).noneMatch(a -> a.contains("spirit"));
  }

  @Test
  void itsVapourIsSolventsAndHighlyFlammable() {
    TestShop shop = TestShop.using(LACQUER).can().steadyAir(-24, 0.02, 25, 50).wood(-0.1, 25);
    Outlook o = shop.outlooks.ofPart(NextCoat.on(TestShop.DOOR), shop.now());
    assertThat(o.cautions())
        .anyMatch(c -> c.startsWith("Solvent vapour is highly flammable: a switch, charger"))
        .anyMatch(c -> c.contains("rags"))
        .noneMatch(c -> c.toLowerCase(java.util.Locale.ROOT).contains("spirit"));
  }

  /** What lies beneath and dries by another set is ground, not part of the film. */
  @ParameterizedTest(name = "{1} over {0}")
  @CsvSource({"shellac-pale, lacquer-nitrocellulose", "lacquer-nitrocellulose, shellac-pale"})
  void lacquerAndShellacAreNeverOneFilm(String beneath, String above) {
    TestShop shop = TestShop.using(beneath).can().steadyAir(-24, 30, 22, 50);
    shop.coat(0, OptionalDouble.empty(), OptionalDouble.of(22));
    coatFrom(shop, above, 24);
    shop.due(24.2, "rub out");
    assertThat(job(shop).laid()).hasSize(1);
    assertThat(job(shop).finish().name()).isEqualTo(above);
  }

  @Test
  void aLacquerToComeOnShellacIsAFirstCoatOfLacquer() {
    TestShop shop = TestShop.using("shellac-pale").jar().steadyAir(-24, 0.3, 25, 50).wood(0.15, 25);
    shop.coat(0, OptionalDouble.empty(), OptionalDouble.of(25));
    shop.opens("L", LACQUER, -1).at(Duration.ofMinutes(15));
    Outlook o = next(shop, "L");
    assertThat(o.model().name()).isEqualTo("film/lacquer");
    assertThat(o.decidedBy()).as("the files allow it").isNotEqualTo("layers");
    assertThat(o.assumptions()).noneMatch(a -> a.equals(Described.AS_FIRST_COAT));
  }

  @Test
  void shellacOnLacquerIsWarnedOf() {
    TestShop shop = TestShop.using(LACQUER).can().steadyAir(-24, 49, 22, 50).wood(48.9, 22);
    shop.coat(0, OptionalDouble.empty(), OptionalDouble.of(22));
    shop.opens("S", "shellac-pale", 47).at(Duration.ofHours(49));
    Outlook o = next(shop, "S");
    assertThat(o.decidedBy()).isEqualTo("layers");
    assertThat(o.reason()).contains("Nitrocellulose lacquer").contains("Try it on a scrap first");
  }

  @ParameterizedTest
  @CsvSource({"cut, 1.5lb", "strength, 95%", "retarder, 2-butoxyethanol:3%"})
  void aCanIsRefusedWhatBelongsToSpirit(String key, String value) {
    TestShop shop = TestShop.using(LACQUER);
    Forms forms =
        new ShopForms(
            shop.journal,
            shop.clock,
            ZoneOffset.UTC,
            new FinishNames(TestShop.SHIPPED.keySet(), java.util.Set.of("shellac-pale")),
            List.of(TestShop.ROOM),
            TestShop.ROOM);
    Map<String, String> form = new HashMap<>(Map.of("name", "L", "finish", LACQUER, key, value));
    assertThatThrownBy(() -> forms.jar(form))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("belongs to a finish dissolved in spirit");
    form.remove("name");
    form.put("air", "20C,50%");
    Map<String, Finish> finishes = TestShop.SHIPPED;
    assertThatThrownBy(() -> OutlookForm.read(form, finishes))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining(key + " \"" + value + "\": belongs to a finish dissolved in spirit")
        .hasMessageContaining("; leave it out");
  }

  private static Outlook next(TestShop shop, String jar) {
    return shop.outlooks.ofPart(
        new NextCoat(TestShop.DOOR, Optional.empty(), Optional.of(jar)), shop.now());
  }

  private static void coatFrom(TestShop shop, String finish, double atH) {
    Instant at = TestShop.START.plusSeconds(Math.round(atH * 3600));
    Entry jar =
        shop.write(
            at.minusSeconds(600),
            new Jar(
                "B",
                finish,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty()));
    shop.write(
        at,
        new Coat(
            TestShop.DOOR,
            "B",
            jar.id(),
            at,
            Optional.empty(),
            TestShop.ROOM,
            Method.BRUSH,
            OptionalDouble.empty(),
            OptionalDouble.of(22),
            Optional.empty()));
  }
}
