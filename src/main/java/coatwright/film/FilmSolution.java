package coatwright.film;

import static coatwright.film.Species.VOL_E;
import static coatwright.film.Species.VOL_R;
import static coatwright.film.Species.VOL_W;

import coatwright.solvent.VanLaar;

/**
 * Resin with spirit, water and retarder in it: how hard each volatile presses to leave, when the
 * solution gives way, when it is a glass.
 *
 * <p>Compositions are u, volume of a volatile per volume of resin. Activities are van Laar's for
 * the liquids among themselves times a Flory-Huggins term for the resin. A volatile that has
 * vanished, or that the integrator has carried a trace below zero, presses in proportion to its u:
 * linear through zero, without a clip that would stall the time steps.
 */
final class FilmSolution {
  private static final double FLOOR = 1e-9;
  private static final double LEAST_DENOMINATOR = 1e-6;
  private static final double RATIO = VOL_E / VOL_W;

  private final double chiE;
  private final double chiW;
  private final double chiR;
  private final double alcoholByWater;
  private final double retarderByWater;
  private final double waterByAlcohol;
  private final double spinodalCross;
  private final double spinodalTerm;
  private final double spinodalNumerator;
  private final double twoG;
  private final double resinGlass;

  /** Results of {@link #activities}, read by the caller. */
  double aE;

  double aW;
  double aR;

  FilmSolution(FilmParameters.Solution s) {
    chiE = s.chiEthanol();
    chiW = s.chiWater();
    chiR = s.chiRetarder();
    alcoholByWater = s.spiritWater() * RATIO + chiE - chiW * RATIO;
    retarderByWater = s.spiritWater() * RATIO + chiR - chiW * RATIO;
    waterByAlcohol = s.spiritWater() + chiW - chiE / RATIO;
    double small = 1 / RATIO;
    double c = s.spiritWater() + chiW - small * s.crossTerm();
    spinodalCross = c * c;
    spinodalTerm = 2 * chiW;
    spinodalNumerator = 2 * small * s.crossTerm();
    twoG = 2 * s.spiritWater();
    resinGlass = s.resinGlassK();
  }

  /** Activities of the three volatiles over this composition, into aE, aW, aR. */
  void activities(double uE, double uW, double uR) {
    double e = Math.max(uE, 0);
    double w = Math.max(uW, 0);
    double r = Math.max(uR, 0);
    double all = e + w + r;
    double moles = e / VOL_E + w / VOL_W + r / VOL_R;
    double xw = moles > 0 ? w / VOL_W / moles : 0;
    double meanVolume = moles > 0 ? all / moles : VOL_W;
    double resin = 1 / (1 + all);
    double liquid = all * resin;
    double weighted = VanLaar.A * (1 - xw) + VanLaar.B * xw;
    double waterPart = VanLaar.B * xw / weighted;
    double alcoholPart = VanLaar.A * (1 - xw) / weighted;
    double liquid2 = liquid * liquid;
    double lnAlcohol = liquid2 * VanLaar.A * waterPart * waterPart;
    double lnWater = liquid2 * VanLaar.B * alcoholPart * alcoholPart;
    double water = w * resin;
    double alcohol = (e + r) * resin;
    double perVolume = resin / meanVolume;
    double share = meanVolume * resin;
    double resin2 = resin * resin;
    aE =
        uE
            / VOL_E
            * share
            * Math.exp(
                lnAlcohol + perVolume * VOL_E + chiE * resin2 + alcoholByWater * water * resin);
    aW =
        uW
            / VOL_W
            * share
            * Math.exp(
                lnWater + perVolume * VOL_W + chiW * resin2 + waterByAlcohol * alcohol * resin);
    aR =
        uR == 0
            ? 0
            : uR
                / VOL_R
                * share
                * Math.exp(
                    lnAlcohol
                        + perVolume * VOL_R
                        + chiR * resin2
                        + retarderByWater * water * resin);
  }

  /**
   * Volume fraction of water at which this solution loses its stability (Flory-Huggins spinodal in
   * closed form); 1 where it never does.
   */
  double waterLimit(double uE, double uW, double uR) {
    double alcohol = Math.max(uE, 0) + Math.max(uR, 0);
    double resin = 1 / (1 + alcohol + Math.max(uW, 0));
    double b = 1 / (RATIO * Math.max(alcohol * resin, FLOOR));
    double d = VOL_W / Species.RESIN_MOLAR_VOLUME / Math.max(resin, FLOOR);
    double numerator = b + d - spinodalNumerator;
    double denominator = spinodalCross + (b - twoG) * (spinodalTerm - d);
    return numerator > 0 && denominator > LEAST_DENOMINATOR ? numerator / denominator : 1;
  }

  /** Volume fraction of water. */
  static double waterFraction(double uE, double uW, double uR) {
    double w = Math.max(uW, 0);
    return w / (1 + Math.max(uE, 0) + w + Math.max(uR, 0));
  }

  /** The blush number S: water over the water at which the resin gives way. */
  double blush(double uE, double uW, double uR) {
    return waterFraction(uE, uW, uR) / waterLimit(uE, uW, uR);
  }

  /** Glass transition, K: Fox's rule on mass fractions. */
  double glassK(double uE, double uW, double uR) {
    double e = Math.max(uE, 0) * Species.RHO_E;
    double w = Math.max(uW, 0) * Species.RHO_W;
    double r = Math.max(uR, 0) * Species.RHO_R;
    return (e + w + r + Species.RESIN_DENSITY)
        / (Species.RESIN_DENSITY / resinGlass
            + e / Species.GLASS_E
            + w / Species.GLASS_W
            + r / Species.GLASS_R);
  }

  /**
   * Natural logarithm of viscosity in Pa s at a softness x = T − Tg: Williams-Landel-Ferry with the
   * universal constants above the glass transition, a steep line (capped) below it.
   */
  static double lnViscosity(double xK) {
    double log10 = xK > 0 ? 12 - 17.44 * xK / (51.6 + xK) : Math.min(12 - 0.34 * xK, 20);
    return log10 * 2.302585092994046;
  }
}
