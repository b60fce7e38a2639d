package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Whether the range of finishes that cure holds what it promises, as {@link CoverageTest} asks of
 * spirit: 500 invented shops, each with a product, an owner's own limit and a film of its own. Four
 * fifths of the variance of product and own limit are the shop's, one fifth the part's.
 */
class CureCoverageTest {
  private static final int SHOPS = 500;
  private static final int EARLIER_PARTS = 4;
  private static final double SHOP_SD = Math.sqrt(0.8);
  private static final double PART_SD = Math.sqrt(0.2);
  private static final Spreads READ_IN_THE_SHOP = new Spreads(0.2, 0.07, 0.3, 0.3, 2, 0.5, 1);

  private final SplittableRandom random = new SplittableRandom(20261125);

  /** What a shop has of its own, in standard deviations. */
  private record Shop(double product, double early, double late) {}

  private static List<Curing> curing() {
    return Cures.all();
  }

  private static CureJob job(Curing curing, List<BenchTest.Seen> tests) {
    CureCoat coat = CureCoat.unthinned(0, 90);
    AirCourse air = AirCourse.steady(21, 0.5, 0.1);
    return new CureJob(curing, List.of(coat), air, 21, READ_IN_THE_SHOP, tests, 0, List.of(), 0);
  }

  private Shop shop() {
    return new Shop(
        SHOP_SD * random.nextGaussian(),
        SHOP_SD * random.nextGaussian(),
        SHOP_SD * random.nextGaussian());
  }

  /** Seconds to the milestones of one true film of a shop. */
  private double[] film(CureJob job, Shop shop) {
    Spreads s = READ_IN_THE_SHOP;
    return CureWalk.of(job)
        .secondsTo(
            new CureMember(
                Math.exp(CureAxis.PRODUCT_LN * (shop.product() + PART_SD * random.nextGaussian())),
                Math.exp(CureAxis.OWN_LN * (shop.early() + PART_SD * random.nextGaussian())),
                Math.exp(CureAxis.OWN_LN * (shop.late() + PART_SD * random.nextGaussian())),
                Math.exp(CureAxis.ENERGY.sd(s) * random.nextGaussian()),
                Math.exp(CureAxis.WET_FILM.sd(s) * random.nextGaussian()),
                Math.exp(CureAxis.SURFACE.sd(s) * random.nextGaussian()),
                CureAxis.FILM_FORMING.sd(s) * random.nextGaussian(),
                CureAxis.AIR_TEMPERATURE.sd(s) * random.nextGaussian(),
                CureAxis.HUMIDITY.sd(s) * random.nextGaussian(),
                CureAxis.COMING_AIR.sd(s) * random.nextGaussian()));
  }

  private BenchTest.Seen tested(BenchTest test, double atS, double[] film) {
    double needsS = film[CureTests.milestone(test).index()];
    double chance = BenchTest.chance(Math.log(atS / needsS) / CureTests.scatterLn(test), true);
    return new BenchTest.Seen(test, atS, random.nextDouble() < chance);
  }

  /**
   * Two thumbnails about when it should be hard, and a spot rubbed about when it should be ready.
   */
  private List<BenchTest.Seen> tests(double hardS, double rubOutS, double[] film) {
    return List.of(
        tested(BenchTest.THUMBNAIL, 0.8 * hardS, film),
        tested(BenchTest.THUMBNAIL, 1.3 * hardS, film),
        tested(BenchTest.RUBBED_OUT, rubOutS, film));
  }

  @ParameterizedTest
  @MethodSource("curing")
  void eightInTenFilmsAreReadyWithinTheirRangeUntaughtAndTaught(Curing curing) {
    Prediction prior = CureEnsemble.predict(job(curing, List.of()));
    double hardS = prior.milestone(Milestone.DRY_HARD).p50().orElseThrow();
    double rubOutS = prior.milestone(Milestone.RUB_OUT).p50().orElseThrow();
    int rubOut = Milestone.RUB_OUT.index();
    Coverage.Tally untold = new Coverage.Tally();
    Coverage.Tally told = new Coverage.Tally();
    Coverage.Tally taught = new Coverage.Tally();
    for (int i = 0; i < SHOPS; i++) {
      Shop shop = shop();
      List<Lesson> lessons = new ArrayList<>();
      for (int part = 0; part < EARLIER_PARTS; part++) {
        double[] earlier = film(job(curing, List.of()), shop);
        lessons.add(CureEnsemble.lesson(job(curing, tests(hardS, rubOutS, earlier))));
      }
      double[] film = film(job(curing, List.of()), shop);
      Prediction after =
          CureEnsemble.predict(job(curing, tests(hardS, rubOutS, film).subList(0, 2)));
      Prediction next = CureEnsemble.predict(job(curing, List.of()), ShopPrior.of(lessons));
      untold.add(prior.milestone(Milestone.RUB_OUT), film[rubOut]);
      told.add(after.milestone(Milestone.RUB_OUT), film[rubOut]);
      taught.add(next.milestone(Milestone.RUB_OUT), film[rubOut]);
    }
    String name = curing.stamp().name();
    untold.as("rub-out of " + name + ", no tests").isHonest();
    told.as("rub-out of " + name + ", two thumbnail tests").isHonest();
    taught.as("rub-out of " + name + ", fifth part of a shop").isHonest();
  }

  @Test
  void aShopWhoseVarnishStaysSoftLongerTeachesItsNextPartToTakeLonger() {
    CureJob untested = job(Cures.varnish(), List.of());
    Prediction prior = CureEnsemble.predict(untested);
    double hardS = prior.milestone(Milestone.DRY_HARD).p50().orElseThrow();
    double rubOutS = prior.milestone(Milestone.RUB_OUT).p50().orElseThrow();
    List<BenchTest.Seen> soft =
        List.of(
            new BenchTest.Seen(BenchTest.THUMBNAIL, 1.2 * hardS, false),
            new BenchTest.Seen(BenchTest.RUBBED_OUT, 1.2 * rubOutS, false));
    Lesson lesson = CureEnsemble.lesson(job(Cures.varnish(), soft));
    ShopPrior shop = ShopPrior.of(List.of(lesson, lesson, lesson));
    assertThat(shop.curesTimes()).isGreaterThan(1.2);
    assertThat(
            CureEnsemble.predict(untested, shop).milestone(Milestone.RUB_OUT).p50().orElseThrow())
        .isGreaterThan(1.2 * rubOutS);
  }

  @Test
  void aPartNobodyTestedTeachesNothing() {
    assertThat(CureEnsemble.lesson(job(Cures.water(), List.of()))).isEqualTo(Lesson.NONE);
    assertThat(ShopPrior.of(List.of(Lesson.NONE)).curesTimes()).isEqualTo(1);
  }
}
