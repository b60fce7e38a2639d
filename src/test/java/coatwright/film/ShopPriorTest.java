package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a shop's parts teach its next one, against the arithmetic of normal laws by hand. */
class ShopPriorTest {
  private static final double DAY_S = 86_400;

  /** So sharp a lesson that only the part's own fifth of the variance is left, toward one sd. */
  private static final Lesson SHARP = new Lesson(1e6, 0, 1e6, 1e6, 1e6, 1e6, 1e6);

  private static Ensemble oneCoat() {
    return Ensemble.untold(
        EnsembleJob.untested(
            FilmParameters.SHELLAC, Jobs.oneCoat(20, 0.5), Spreads.told(0.2, 0.07)));
  }

  @Test
  void anUntaughtShopStandsAtTheModelsMiddle() {
    assertThat(ShopPrior.UNTAUGHT.taught()).isFalse();
    assertThat(ShopPrior.UNTAUGHT.hardensTimes()).isCloseTo(1, within(1e-12));
    assertThat(ShopPrior.UNTAUGHT.hardeningSd()).isCloseTo(0.5, within(1e-12));
    assertThat(ShopPrior.UNTAUGHT.thresholdSd()).isCloseTo(0.35, within(1e-12));
    assertThat(ShopPrior.UNTAUGHT.cloudingSd()).isCloseTo(0.06, within(1e-12));
  }

  /**
   * The shop has variance 0.8 and the part 0.2: one part known to stand at 1 puts the shop at 0.8
   * with variance 0.16, and the next part at variance 0.36.
   */
  @Test
  void onePartKnownForCertainLeavesTheNextOneItsOwnFifthAndTheShopsRest() {
    ShopPrior prior = ShopPrior.of(List.of(SHARP));
    assertThat(prior.hardeningLn()).isCloseTo(0.8 * 0.5, within(1e-4));
    assertThat(prior.hardeningSd()).isCloseTo(0.6 * 0.5, within(1e-4));
    assertThat(prior.thresholdLn()).isCloseTo(0.8 * 0.35, within(1e-4));
    assertThat(prior.cloudingLn()).isCloseTo(0.8 * 0.06, within(1e-4));
    assertThat(prior.cloudingSd()).isCloseTo(0.6 * 0.06, within(1e-4));
    assertThat(prior.hardeningParts()).isEqualTo(1);
    assertThat(prior.cloudingParts()).isEqualTo(1);
  }

  @Test
  void noNumberOfPartsMakesTheNextOneCertain() {
    ShopPrior prior = ShopPrior.of(Collections.nCopies(1000, SHARP));
    assertThat(prior.hardeningSd()).isGreaterThan(0.5 * Math.sqrt(0.2));
    assertThat(prior.hardeningSd()).isLessThan(0.5 * Math.sqrt(0.201));
  }

  @Test
  void aPartWithoutTestsTeachesNothing() {
    Lesson lesson = oneCoat().lesson(List.of());
    assertThat(lesson).isEqualTo(Lesson.NONE);
    assertThat(ShopPrior.of(List.of(lesson, Lesson.NONE))).isEqualTo(ShopPrior.UNTAUGHT);
  }

  /** Each rubbed out at half the time the model gives, and fine. */
  @Test
  void partsThatWereReadyEarlyBringTheNextOneForwardAndMoreOfThemNarrowItMore() {
    Ensemble ensemble = oneCoat();
    Percentiles before = ensemble.told(List.of(), Told.NOTHING).milestone(Milestone.RUB_OUT);
    double earlyS = 0.5 * before.p50().getAsDouble();
    Lesson early = ensemble.lesson(List.of(new BenchTest.Seen(BenchTest.RUBBED_OUT, earlyS, true)));
    Percentiles afterOne = next(ensemble, List.of(early));
    Percentiles afterFour = next(ensemble, Collections.nCopies(4, early));
    assertThat(afterOne.p50().getAsDouble()).isLessThan(0.9 * before.p50().getAsDouble());
    assertThat(afterFour.p50().getAsDouble()).isLessThan(afterOne.p50().getAsDouble());
    assertThat(width(afterFour)).isLessThan(width(afterOne));
    assertThat(width(afterOne)).isLessThan(width(before));
    assertThat(afterFour.p50().getAsDouble()).isGreaterThan(0.1 * DAY_S / 24);
  }

  private static Percentiles next(Ensemble ensemble, List<Lesson> lessons) {
    Told told = Told.NOTHING.withShop(ShopPrior.of(lessons));
    return ensemble.told(List.of(), told).milestone(Milestone.RUB_OUT);
  }

  private static double width(Percentiles p) {
    return Math.log(p.p90().getAsDouble() / p.p10().getAsDouble());
  }
}
