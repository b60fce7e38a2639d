package coatwright.wood;

import coatwright.quantity.OutOfRange;

/**
 * How the face of a board follows one sudden change of air: carried into another room, or the heat
 * turned on and soon steady.
 *
 * <p>The exact series for a plane wall with heat exchanged at its face (Carslaw and Jaeger,
 * "Conduction of Heat in Solids", 2nd ed. 1959, chapter III; Incropera et al., 7th ed., equations
 * 5.42 and 5.43), and for the first moments, when heat has not come through, the half-space of
 * section 2.7, which differs from it by less than 1e-9. For air that goes on changing there is
 * {@link BoardLag}.
 */
public final class BoardWarming {
  /** Fourier number below which a wall is still a half-space: its far side answers by 1e-9. */
  private static final double HALF_SPACE_UNTIL = 0.05;

  private static final double NEGLIGIBLE_EXPONENT = 40;
  private static final double LONGEST_S = 1e9;
  private static final double ERFC_SERIES_UNTIL = 2.5;
  private static final int FRACTION_TERMS = 80;

  private BoardWarming() {}

  /**
   * The share of the way from the board's first temperature to the air's that its face has gone.
   *
   * @param seconds since the change, 0 to 1e9
   * @return 0 at the change, 1 in the end
   */
  public static double faceShare(Board board, double seconds) {
    OutOfRange.check("time since the change", seconds, "s", 0, LONGEST_S);
    double biot = board.biot();
    double diffusivity = board.conductivityWPerMK() / board.heatPerVolumeJPerM3K();
    double fourier = diffusivity * seconds / (board.depthM() * board.depthM());
    return fourier < HALF_SPACE_UNTIL
        ? 1 - scaledErfc(biot * Math.sqrt(fourier))
        : 1 - remaining(biot, fourier);
  }

  private static double remaining(double biot, double fourier) {
    double sum = 0;
    for (int n = 0; ; n++) {
      double zeta = BoardLag.root(biot, n);
      double exponent = zeta * zeta * fourier;
      if (exponent > NEGLIGIBLE_EXPONENT) {
        return sum;
      }
      double weight = 4 * Math.sin(zeta) / (2 * zeta + Math.sin(2 * zeta));
      sum += weight * Math.cos(zeta) * Math.exp(-exponent);
    }
  }

  /**
   * How long the face takes to go that share of the way.
   *
   * @param share 0 to 0.9999
   * @return seconds
   */
  public static double secondsToShare(Board board, double share) {
    OutOfRange.check("share of the way", share, "", 0, 0.9999);
    double low = 0;
    double high = BoardLag.timeConstantS(board);
    while (faceShare(board, high) < share) {
      low = high;
      high *= 2;
    }
    for (int step = 0; step < 60; step++) {
      double middle = 0.5 * (low + high);
      if (faceShare(board, middle) < share) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return 0.5 * (low + high);
  }

  /**
   * exp(x²) erfc(x) for x from 0 up: below 2.5 by the power series of the error function, above by
   * its continued fraction (Abramowitz and Stegun, "Handbook of Mathematical Functions", 7.1.6 and
   * 7.1.14).
   */
  static double scaledErfc(double x) {
    if (x < ERFC_SERIES_UNTIL) {
      double term = x;
      double sum = x;
      for (int k = 1; term > 1e-17 * sum; k++) {
        term *= 2 * x * x / (2 * k + 1);
        sum += term;
      }
      return Math.exp(x * x) - 2 / Math.sqrt(Math.PI) * sum;
    }
    double tail = x;
    for (int k = FRACTION_TERMS; k >= 1; k--) {
      tail = x + 0.5 * k / tail;
    }
    return 1 / (Math.sqrt(Math.PI) * tail);
  }
}
