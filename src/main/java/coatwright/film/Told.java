package coatwright.film;

import coatwright.quantity.OutOfRange;
import java.util.List;

/**
 * What is known of a film beyond its inputs and its bench tests.
 *
 * @param shop what the shop's other parts have taught
 * @param clouding which earlier coats clouded and which did not; tells of the next coat's clouding
 *     and of no hardening date
 * @param weighed residues that were weighed
 */
public record Told(ShopPrior shop, List<Clouded> clouding, List<Weighed> weighed) {

  /** An untaught shop, nothing seen, nothing weighed. */
  public static final Told NOTHING = new Told(ShopPrior.UNTAUGHT, List.of(), List.of());

  /** How differently two like coats turn out, and two looks at one: natural log of S; assumed. */
  private static final double SCATTER_LN = 0.08;

  private static final double WEIGHING_SHARE = 0.15;
  private static final double SCALE_SHARE = 0.003;

  public Told {
    clouding = List.copyOf(clouding);
    weighed = List.copyOf(weighed);
  }

  public Told withShop(ShopPrior taught) {
    return new Told(taught, clouding, weighed);
  }

  /**
   * An earlier coat and what became of it.
   *
   * @param peakS its blush number by the model's middle, above 0
   * @param clouded it was seen to cloud, whether or not it cleared
   */
  public record Clouded(double peakS, boolean clouded) {
    public Clouded {
      OutOfRange.check("blush number", peakS, "", 1e-3, 20);
    }

    /** Chance of what was seen, where a member's S over its own limit has that logarithm. */
    double chance(double lnS) {
      return BenchTest.chance(lnS / SCATTER_LN, clouded);
    }
  }

  /**
   * A film weighed: what of its mass is still spirit, water and retarder.
   *
   * @param atS on the job's clock
   * @param share of the film's mass, 0 to 1
   */
  public record Weighed(double atS, double share) {
    public Weighed {
      OutOfRange.check("volatile share of the film", share, "(fraction)", 0, 1);
    }

    /**
     * How well this fits a member's share: a normal law whose scatter is 15 % of the weighed share
     * (a slip of glass beside the part is not the part) and 0.3 % of the film's mass (the scale);
     * both assumed.
     */
    double likelihood(double memberShare) {
      double scatter = Math.hypot(WEIGHING_SHARE * share, SCALE_SHARE);
      double z = (share - memberShare) / scatter;
      return Math.exp(-0.5 * z * z) + MISWEIGHED;
    }
  }

  /** A slip of the pen: keeps one weighing from ruling every member out. */
  private static final double MISWEIGHED = 0.02;
}
