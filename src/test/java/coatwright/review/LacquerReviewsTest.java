package coatwright.review;

import static coatwright.journal.Observation.What.CLOUDED;
import static coatwright.journal.Observation.What.THUMBNAIL;
import static coatwright.review.CaseShop.DOOR;
import static org.assertj.core.api.Assertions.assertThat;

import coatwright.review.Why.Counterfactual;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Why a coat of lacquer clouded or stayed soft: its own set, and no word of spirit. */
class LacquerReviewsTest {
  private static final String LACQUER = "lacquer-nitrocellulose";

  private static Why clouded(double tempC, double rhPct) {
    return new CaseShop()
        .air(tempC, rhPct)
        .can("L", LACQUER)
        .coat(DOOR, "L", Duration.ZERO, OptionalDouble.of(tempC))
        .note(DOOR, CLOUDED, 2, Duration.ofMinutes(20))
        .why();
  }

  private static double s(Counterfactual c) {
    return c.waterPeakPct().orElseThrow() / c.waterLimitPct().orElseThrow();
  }

  private static Counterfactual changed(Why why, String words) {
    return why.counterfactuals().stream()
        .filter(c -> c.change().contains(words))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no change \"" + words + "\" in " + why));
  }

  private static String everyWord(Why why) {
    return String.join(
            " ",
            why.sentence(),
            String.join(" ", why.jar()),
            String.join(" ", why.cautions()),
            why.counterfactuals().toString())
        .toLowerCase(Locale.ROOT);
  }

  @Test
  void dampWarmAirIsNamedAndDrierAirHelps() {
    Why why = clouded(32, 90);
    Why.Saw saw = why.model().orElseThrow();
    assertThat(saw.name()).isEqualTo("film/lacquer");
    assertThat(why.sentence()).contains("where the blend gives way");
    assertThat(changed(why, "the air dried to 50 %").helps()).isTrue();
  }

  /** A slow solvent lets the water leave before it: common practice, no source. */
  @Test
  void aSlowerBlendIsRunAgainInPlaceOfStrongerSpiritOrAHeavierCut() {
    Why why = clouded(32, 90);
    Why.Saw saw = why.model().orElseThrow();
    double was = saw.waterPeakPct().orElseThrow() / saw.waterLimitPct().orElseThrow();
    Counterfactual slower = changed(why, "a slower blend");
    assertThat(slower.was()).isEqualTo("regular");
    assertThat(slower.would()).isEqualTo("slowed");
    assertThat(s(slower)).isLessThan(was);
    assertThat(why.counterfactuals())
        .extracting(Counterfactual::change)
        .noneMatch(c -> c.contains("spirit") || c.contains("cut"));
  }

  @Test
  void noCaseOfLacquerSpeaksOfSpirit() {
    for (double rhPct : List.of(45.0, 70.0, 90.0)) {
      Why why = clouded(25, rhPct);
      assertThat(everyWord(why)).doesNotContain("spirit").doesNotContain("drop test");
      assertThat(why.cautions()).anyMatch(c -> c.contains("while solvent is leaving the film"));
    }
  }

  @Test
  void aJarOfLacquerIsAskedForItsOwnTestOnly() {
    assertThat(clouded(25, 45).jar())
        .noneMatch(j -> j.contains("cut") || j.contains("hydrometer") || j.contains("glass"));
    assertThat(clouded(20, 45).sentence()).contains("look at the thinner");
  }

  /** The set is fitted to ten days at 25 °C (one to two weeks: common practice, no source). */
  @Test
  void aLacquerSoftAfterThreeDaysIsNotLate() {
    CaseShop shop =
        new CaseShop(Duration.ofDays(3).plusHours(1))
            .air(25, 50, Duration.ofHours(-12), Duration.ofDays(3), 10)
            .can("L", LACQUER);
    for (int minute : new int[] {-120, -60, 0}) {
      shop.coat(DOOR, "L", Duration.ofMinutes(minute), OptionalDouble.of(25));
    }
    Why why = shop.note(DOOR, THUMBNAIL, 0, Duration.ofDays(3)).why();
    assertThat(why.sentence()).contains("is not late");
    Counterfactual thinner = changed(why, "coats a third thinner");
    assertThat(thinner.helps()).isTrue();
    assertThat(thinner.would()).startsWith("ready to rub out after");
  }
}
