package coatwright.film;

import coatwright.solvent.Solvent;
import coatwright.solvent.VanLaar;

/**
 * Shellac with spirit, water and retarder in it. Activities are van Laar's for the liquids among
 * themselves times a Flory-Huggins term for the resin; it goes white where the three part.
 */
final class SpiritSolution extends FilmSolution {
  private static final double VOL_E = Solvent.ETHANOL.molarVolumeM3();
  private static final double VOL_W = Solvent.WATER.molarVolumeM3();
  private static final double VOL_R = Solvent.BUTOXYETHANOL.molarVolumeM3();
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

  SpiritSolution(FilmParameters.Solution s, Species species) {
    super(species);
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
  }

  @Override
  void activities(double[] u, int at, double[] a) {
    double uE = u[at];
    double uW = u[at + 1];
    double uR = ns > 2 ? u[at + 2] : 0;
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
    a[0] =
        uE
            / VOL_E
            * share
            * Math.exp(
                lnAlcohol + perVolume * VOL_E + chiE * resin2 + alcoholByWater * water * resin);
    a[1] =
        uW
            / VOL_W
            * share
            * Math.exp(
                lnWater + perVolume * VOL_W + chiW * resin2 + waterByAlcohol * alcohol * resin);
    if (ns > 2) {
      a[2] =
          uR
              / VOL_R
              * share
              * Math.exp(
                  lnAlcohol + perVolume * VOL_R + chiR * resin2 + retarderByWater * water * resin);
    }
  }

  /**
   * Volume fraction of water at which this solution loses its stability (Flory-Huggins spinodal in
   * closed form); 1 where it never does.
   */
  @Override
  double waterLimit(double[] u, int at) {
    double alcohol = alcohol(u, at);
    return limit(alcohol, 1 / (1 + alcohol + Math.max(u[at + 1], 0)));
  }

  /** The blush number S: water over the water at which the resin gives way. */
  @Override
  double blush(double[] u, int at) {
    double alcohol = alcohol(u, at);
    double w = Math.max(u[at + 1], 0);
    double resin = 1 / (1 + alcohol + w);
    return w * resin / limit(alcohol, resin);
  }

  /** At any softness: what parts in a stiff film parts all the same, it only cannot heal. */
  @Override
  boolean canCloud(double[] u, int at, double filmK) {
    return true;
  }

  private double alcohol(double[] u, int at) {
    return Math.max(u[at], 0) + (ns > 2 ? Math.max(u[at + 2], 0) : 0);
  }

  private double limit(double alcohol, double resin) {
    double b = 1 / (RATIO * Math.max(alcohol * resin, FLOOR));
    double d = VOL_W / Species.SHELLAC_MOLAR_VOLUME / Math.max(resin, FLOOR);
    double numerator = b + d - spinodalNumerator;
    double denominator = spinodalCross + (b - twoG) * (spinodalTerm - d);
    return numerator > 0 && denominator > LEAST_DENOMINATOR ? numerator / denominator : 1;
  }
}
