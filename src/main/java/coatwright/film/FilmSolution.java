package coatwright.film;

/**
 * Resin with volatiles in it: how hard each volatile presses to leave, how near the solution is to
 * going white, when it is a glass.
 *
 * <p>Compositions are u, volume of a volatile per volume of resin, in the order of {@link Species};
 * each method reads its composition from an array at an offset. A volatile that has vanished, or
 * that the integrator has carried a trace below zero, presses in proportion to its u: linear
 * through zero, without a clip that would stall the time steps.
 */
abstract sealed class FilmSolution permits SpiritSolution, BlendSolution {
  final Species species;
  final int ns;
  private final double resinOverGlass;

  FilmSolution(Species species) {
    this.species = species;
    ns = species.count;
    resinOverGlass = species.resinDensity / species.resinGlass;
  }

  static FilmSolution of(FilmParameters p, Species species) {
    return p.medium() instanceof Medium.Lacquer l
        ? new BlendSolution(species, l.cloudsAboveXK())
        : new SpiritSolution(p.solution(), species);
  }

  /** Activities of all volatiles over this composition, into a. */
  abstract void activities(double[] u, int at, double[] a);

  /** The clouding number S; 1 where the solution gives way. */
  abstract double blush(double[] u, int at);

  /** Whether a film of this composition is soft enough to go white at all. */
  abstract boolean canCloud(double[] u, int at, double filmK);

  /** Volume fraction of water at which S would be 1; 1 where it never is. */
  abstract double waterLimit(double[] u, int at);

  /** Volume fraction of water. */
  final double waterFraction(double[] u, int at) {
    return Math.max(u[at + Species.WATER], 0) / (1 + liquid(u, at));
  }

  /** Volume of all volatiles per volume of resin. */
  final double liquid(double[] u, int at) {
    double all = 0;
    for (int i = 0; i < ns; i++) {
      all += Math.max(u[at + i], 0);
    }
    return all;
  }

  /** Volume of all solvents, water left out, per volume of resin: what must still leave. */
  final double residue(double[] u, int at) {
    double all = u[at];
    for (int i = Species.WATER + 1; i < ns; i++) {
      all += u[at + i];
    }
    return all;
  }

  /** Glass transition, K: Fox's rule on mass fractions. */
  final double glassK(double[] u, int at) {
    double mass = species.resinDensity;
    double overGlass = resinOverGlass;
    for (int i = 0; i < ns; i++) {
      double m = Math.max(u[at + i], 0) * species.density[i];
      mass += m;
      overGlass += m / species.glass[i];
    }
    return mass / overGlass;
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
