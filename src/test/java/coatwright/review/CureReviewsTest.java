package coatwright.review;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.journal.Observation.What;
import coatwright.review.Why.AirAtFault;
import java.time.Duration;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Why a coat of a finish that cures clouded or stayed soft. */
class CureReviewsTest {
  private static final Duration HOUR = Duration.ofHours(1);

  private static CaseShop shop(String finish, double woodC) {
    return new CaseShop()
        .can("A", finish)
        .coat(CaseShop.DOOR, "A", Duration.ZERO, OptionalDouble.of(woodC));
  }

  @Test
  void waterThatSettledOnColdWoodIsTheAirsDoing() {
    Why why =
        shop("varnish-alkyd", 16).air(20, 75).note(CaseShop.DOOR, What.CLOUDED, 3, HOUR).why();
    assertThat(why.airAtFault()).isEqualTo(AirAtFault.YES);
    assertThat(why.sentence())
        .contains("clouded because water settled on it")
        .contains("as the coat went on")
        .contains("above the dew point");
    assertThat(why.counterfactuals().get(0).helps()).isTrue();
    assertThat(why.counterfactuals())
        .anyMatch(c -> c.change().equals("the wood as warm as the air") && c.helps());
  }

  /** The air turns damp five hours on, before an alkyd is dry to touch. */
  @Test
  void dewHoursLaterOnAFilmStillWetIsSeenAndTimed() {
    Why why =
        new CaseShop()
            .can("A", "varnish-alkyd")
            .coat(CaseShop.DOOR, "A", Duration.ZERO, OptionalDouble.of(20))
            .air(20, 50, Duration.ofHours(-3), Duration.ofHours(4), 1)
            .air(18, 99, Duration.ofHours(4), Duration.ofHours(10), 1)
            .note(CaseShop.DOOR, What.CLOUDED, 2, Duration.ofHours(9))
            .why();
    assertThat(why.airAtFault()).isEqualTo(AirAtFault.YES);
    assertThat(why.sentence())
        .containsPattern("4\\.\\d h after it went on|5\\.\\d h after it went on");
  }

  @Test
  void merelyDampAirIsNotTheCauseForAVarnish() {
    Why why =
        shop("varnish-alkyd", 24).air(24, 75).note(CaseShop.DOOR, What.CLOUDED, 2, HOUR).why();
    assertThat(why.airAtFault()).isEqualTo(AirAtFault.NO);
    assertThat(why.sentence()).startsWith("The air was not the cause").contains("look at the jar");
    assertThat(why.model().orElseThrow().level()).isEqualTo("none expected");
    assertThat(why.model().orElseThrow().waterPeakPct()).isEmpty();
  }

  @Test
  void aWaterborneFilmThatDriedTooColdIsTheAirsDoing() {
    Why why =
        shop("waterborne-urethane", 9).air(12, 35).note(CaseShop.DOOR, What.CLOUDED, 4, HOUR).why();
    assertThat(why.airAtFault()).isEqualTo(AirAtFault.YES);
    assertThat(why.sentence())
        .contains("clouded because it dried too cold")
        .contains("particles need to flow together");
    assertThat(why.counterfactuals()).anyMatch(c -> c.change().contains("warmer") && c.helps());
  }

  @Test
  void aVarnishSoftInTheColdWouldHaveBeenReadyInTheUsualAir() {
    Why why =
        shop("varnish-alkyd", 11)
            .air(11, 60, Duration.ofHours(-3), Duration.ofDays(29), 10)
            .note(CaseShop.DOOR, What.RUBBED_OUT, 0, Duration.ofDays(18))
            .why();
    assertThat(why.airAtFault()).isEqualTo(AirAtFault.YES);
    assertThat(why.sentence()).contains("because of its air, 11.0 °C on average");
    assertThat(why.counterfactuals())
        .anyMatch(c -> c.change().startsWith("the air at 20.0 °C") && c.helps())
        .anyMatch(c -> c.change().equals("coats a third thinner"));
  }

  @Test
  void softAfterTheSlowestOfItsKindPointsToTheJar() {
    Why why =
        shop("varnish-alkyd", 20)
            .air(20, 50, Duration.ofHours(-3), Duration.ofDays(29), 10)
            .note(CaseShop.DOOR, What.THUMBNAIL, 0, Duration.ofDays(28))
            .why();
    assertThat(why.airAtFault()).isEqualTo(AirAtFault.NO);
    assertThat(why.sentence()).startsWith("The air was not the cause");
  }
}
