package coatwright.film;

/** The normal distribution: its sum and the inverse of it. */
final class NormalLaw {
  private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

  private NormalLaw() {}

  /**
   * Chance that a standard normal number is below z. Source: Abramowitz and Stegun, Handbook of
   * Mathematical Functions (1964), 26.2.17; error below 7.5e-8.
   */
  static double below(double z) {
    double t = 1 / (1 + 0.2316419 * Math.abs(z));
    double sum =
        t
            * (0.319381530
                + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
    double tail = density(z) * sum;
    return z >= 0 ? 1 - tail : tail;
  }

  /**
   * The z with that chance below it, 0 &lt; chance &lt; 1: Abramowitz and Stegun 26.2.23 as a first
   * guess, bettered by Newton's rule on {@link #below}.
   */
  static double quantile(double chance) {
    if (!(chance > 0 && chance < 1)) {
      throw new IllegalArgumentException("a chance lies between 0 and 1, got " + chance);
    }
    double tail = Math.min(chance, 1 - chance);
    double t = Math.sqrt(-2 * Math.log(tail));
    double z =
        t
            - (2.515517 + t * (0.802853 + t * 0.010328))
                / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
    z = chance < 0.5 ? -z : z;
    for (int i = 0; i < 2; i++) {
      z -= (below(z) - chance) / density(z);
    }
    return z;
  }

  private static double density(double z) {
    return Math.exp(-0.5 * z * z) / ROOT_TWO_PI;
  }
}
