package coatwright.film;

/**
 * A resin in a blend of solvents that has drawn water from the air.
 *
 * <p>The solvents mix ideally among themselves; water presses harder the less they like it: ln γ_w
 * = (1 − x_w) Σ x_i ln γ_i, with γ_i the coefficient of a trace of water in solvent i, an order of
 * magnitude each, assumed. The resin enters by Flory-Huggins: ln a_i = ln(γ_i x_i φs) + φp V_i/Vm +
 * χ_i φp². The rule for water is not bound to the solvents' own activities by Gibbs and Duhem, and
 * the resin does not weaken it: a film that still holds toluene deep in a resin already stiff comes
 * out wetter than it can be. {@link #canCloud} leaves such a film out of the reckoning.
 *
 * <p>Water parts from the blend where its activity passes 1. The clouding number S of a lacquer is
 * therefore the water activity; an estimate by analogy with the S of shellac.
 */
final class BlendSolution extends FilmSolution {
  private final double cloudsAboveXK;

  BlendSolution(Species species, double cloudsAboveXK) {
    super(species);
    this.cloudsAboveXK = cloudsAboveXK;
  }

  @Override
  void activities(double[] u, int at, double[] a) {
    double all = 0;
    double moles = 0;
    double weighted = 0;
    for (int i = 0; i < ns; i++) {
      double v = Math.max(u[at + i], 0);
      double n = v / species.volume[i];
      all += v;
      moles += n;
      weighted += n * species.lnWaterIn[i];
    }
    double resin = 1 / (1 + all);
    double meanVolume = moles > 0 ? all / moles : species.volume[Species.WATER];
    double share = meanVolume * resin;
    double perVolume = resin / meanVolume;
    double resin2 = resin * resin;
    for (int i = 0; i < ns; i++) {
      double v = u[at + i];
      if (v == 0) {
        a[i] = 0;
        continue;
      }
      double ln = perVolume * species.volume[i] + species.chi[i] * resin2;
      if (i == Species.WATER && moles > 0) {
        double xw = Math.max(v, 0) / species.volume[i] / moles;
        ln += (1 - xw) * weighted / moles;
      }
      a[i] = v / species.volume[i] * share * Math.exp(ln);
    }
  }

  /** Water activity. */
  @Override
  double blush(double[] u, int at) {
    double all = 0;
    double moles = 0;
    double weighted = 0;
    for (int i = 0; i < ns; i++) {
      double v = Math.max(u[at + i], 0);
      double n = v / species.volume[i];
      all += v;
      moles += n;
      weighted += n * species.lnWaterIn[i];
    }
    double w = Math.max(u[at + Species.WATER], 0) / species.volume[Species.WATER];
    if (w == 0) {
      return 0;
    }
    double resin = 1 / (1 + all);
    double ln =
        resin * moles / all * species.volume[Species.WATER]
            + species.chi[Species.WATER] * resin * resin
            + (1 - w / moles) * weighted / moles;
    return w / moles * all * resin * Math.exp(ln);
  }

  @Override
  boolean canCloud(double[] u, int at, double filmK) {
    return filmK - glassK(u, at) > cloudsAboveXK;
  }

  /** The present share over the present activity: the two taken to grow in proportion. */
  @Override
  double waterLimit(double[] u, int at) {
    double s = blush(u, at);
    return s > 0 ? Math.min(1, waterFraction(u, at) / s) : 1;
  }
}
