package coatwright.film;

import coatwright.quantity.OutOfRange;
import java.util.List;

/**
 * Where one shop's next film starts from, by what its earlier films have shown.
 *
 * <p>Of all the numbers nobody knows exactly, three belong to the shop and not to the part: how
 * fast its resin lets spirit go, the residue at which its owner rubs out and finds it fine, and how
 * much water its films bear before its owner calls it cloud. The first two are learned together,
 * because a rub-out tells of both at once. A part differs from its shop: four fifths of the
 * variance are taken as the shop's own and one fifth as the part's (assumed), so that no number of
 * parts makes the next one certain.
 *
 * @param hardeningLn natural log of how many times as fast as the model's middle the films harden
 * @param hardeningSd its standard deviation, 0.5 untaught
 * @param thresholdLn natural log of the residue this shop rubs out at over the model's middle
 * @param thresholdSd its standard deviation, 0.35 untaught
 * @param correlation of the two, −1 to 1
 * @param cloudingLn natural log of how much more water the films bear than the model says
 * @param cloudingSd its standard deviation, 0.06 untaught
 * @param hardeningParts parts that taught the first two
 * @param cloudingParts parts that taught the third
 */
public record ShopPrior(
    double hardeningLn,
    double hardeningSd,
    double thresholdLn,
    double thresholdSd,
    double correlation,
    double cloudingLn,
    double cloudingSd,
    int hardeningParts,
    int cloudingParts) {

  private static final double SHOP_VARIANCE = 0.8;
  private static final double PART_VARIANCE = 1 - SHOP_VARIANCE;

  /** A shop of which nothing is known. */
  public static final ShopPrior UNTAUGHT = of(List.of());

  public ShopPrior {
    OutOfRange.check("the shop's hardening", hardeningLn, "", -5, 5);
    OutOfRange.check("its spread", hardeningSd, "", 0, 1);
    OutOfRange.check("the shop's own limit", thresholdLn, "", -5, 5);
    OutOfRange.check("its spread", thresholdSd, "", 0, 1);
    OutOfRange.check("their correlation", correlation, "", -1, 1);
    OutOfRange.check("the shop's clouding limit", cloudingLn, "", -2, 2);
    OutOfRange.check("its spread", cloudingSd, "", 0, 1);
  }

  /** What these parts teach together; each counts once, however many tests were made on it. */
  public static ShopPrior of(List<Lesson> lessons) {
    double dd = 1 / SHOP_VARIANCE;
    double dt = 0;
    double tt = 1 / SHOP_VARIANCE;
    double toD = 0;
    double toT = 0;
    double cc = 1 / SHOP_VARIANCE;
    double toC = 0;
    int hardening = 0;
    int clouding = 0;
    for (Lesson whole : lessons) {
      Lesson l = whole.ofAnotherPart(PART_VARIANCE);
      dd += l.dd();
      dt += l.dt();
      tt += l.tt();
      toD += l.towardD();
      toT += l.towardT();
      cc += l.cc();
      toC += l.towardC();
      hardening += whole.teachesHardening() ? 1 : 0;
      clouding += whole.teachesClouding() ? 1 : 0;
    }
    double det = dd * tt - dt * dt;
    double varD = tt / det + PART_VARIANCE;
    double varT = dd / det + PART_VARIANCE;
    double cov = -dt / det;
    return new ShopPrior(
        Axis.GLASS_DIFFUSIVITY_LN * (tt * toD - dt * toT) / det,
        Axis.GLASS_DIFFUSIVITY_LN * Math.sqrt(varD),
        Axis.OWN_THRESHOLD_LN * (dd * toT - dt * toD) / det,
        Axis.OWN_THRESHOLD_LN * Math.sqrt(varT),
        cov / Math.sqrt(varD * varT),
        Axis.CLOUDING_LIMIT_LN * toC / cc,
        Axis.CLOUDING_LIMIT_LN * Math.sqrt(1 / cc + PART_VARIANCE),
        hardening,
        clouding);
  }

  /** How many times as fast as the model's middle this shop's films have hardened, the median. */
  public double hardensTimes() {
    return Math.exp(hardeningLn);
  }

  /** Whether any part has taught anything. */
  public boolean taught() {
    return hardeningParts > 0 || cloudingParts > 0;
  }

  /** Places a drawn member where this shop's next film may be. */
  void place(double[] z) {
    place(z, Axis.GLASS_DIFFUSIVITY.index(), Axis.OWN_THRESHOLD.index());
    int c = Axis.CLOUDING_LIMIT.index();
    z[c] = (cloudingLn + cloudingSd * z[c]) / Axis.CLOUDING_LIMIT_LN;
  }

  /**
   * The same along the two hardening axes of an ensemble, whichever they are. Lessons count in
   * standard deviations of these axes, so that those of one finish serve its own ensemble only.
   */
  void place(double[] z, int pace, int own) {
    double rest = Math.sqrt(Math.max(0, 1 - correlation * correlation));
    double first = z[pace];
    double second = correlation * first + rest * z[own];
    z[pace] = (hardeningLn + hardeningSd * first) / Axis.GLASS_DIFFUSIVITY_LN;
    z[own] = (thresholdLn + thresholdSd * second) / Axis.OWN_THRESHOLD_LN;
  }

  /**
   * How many times as long as its file says a finish that cures takes in this shop until it is hard
   * enough for its owner, the median.
   */
  public double curesTimes() {
    double pace = hardeningLn / Axis.GLASS_DIFFUSIVITY_LN;
    double own = thresholdLn / Axis.OWN_THRESHOLD_LN;
    return Math.exp(CureAxis.PRODUCT_LN * pace + CureAxis.OWN_LN * own);
  }
}
