package coatwright.wood;

import coatwright.quantity.OutOfRange;

/**
 * How long bare wood takes to follow a change of the air's moisture: an estimate, never a date.
 *
 * <p>Diffusion through the thickness with a constant coefficient, the faces at the air's moisture
 * from the first moment: the plane sheet of Crank, "The Mathematics of Diffusion", 2nd ed. 1975,
 * section 4.3.
 *
 * <p>The coefficient is the weak part, hence two of them. {@link #FAST_M2_PER_S} is the apparent
 * diffusivity across the grain of spruce, 0.94e-10 (radial) and 1.00e-10 m²/s (tangential), by
 * Sánchez-Ferrer and Engelhardt, Scientific Reports (2026), doi 10.1038/s41598-026-38932-7; {@link
 * #SLOW_M2_PER_S} is a third of it, since spruce was found two to three times as fast as beech by
 * Sonderegger et al., Holzforschung 65 (2011) 819. Furniture woods are taken to lie between. Both
 * grow with moisture and warmth, small samples are not boards, and a finish on the face slows all
 * of it: bare wood near 20 °C only.
 */
public final class MoistureEqualising {
  /** A light, quick wood across the grain, m²/s. */
  public static final double FAST_M2_PER_S = 1.0e-10;

  /** A dense, slow wood across the grain, m²/s. */
  public static final double SLOW_M2_PER_S = FAST_M2_PER_S / 3;

  private static final double SHORT_TIMES_UNTIL = 0.05;
  private static final double NEGLIGIBLE_EXPONENT = 40;
  private static final double SECONDS_A_DAY = 86_400;

  private MoistureEqualising() {}

  /**
   * Between when and when a board has gone its share of the way.
   *
   * @param quickestDays with the fast coefficient
   * @param slowestDays with the slow one
   */
  public record Days(double quickestDays, double slowestDays) {}

  /**
   * The range for a bare board of furniture wood near 20 °C; see the class for what it rests on.
   */
  public static Days estimate(double thicknessMm, Board.Faces bareFaces, double share) {
    return new Days(
        days(thicknessMm, bareFaces, FAST_M2_PER_S, share),
        days(thicknessMm, bareFaces, SLOW_M2_PER_S, share));
  }

  /**
   * Time for the board's mean moisture to go that share of the way to the new one.
   *
   * @param thicknessMm mm, 0.5 to 200
   * @param bareFaces which faces moisture passes
   * @param diffusivityM2PerS 1e-13 to 1e-8
   * @param share 0 to 0.999
   * @return days
   */
  public static double days(
      double thicknessMm, Board.Faces bareFaces, double diffusivityM2PerS, double share) {
    OutOfRange.check("board thickness", thicknessMm, "mm", 0.5, 200);
    OutOfRange.check("moisture diffusivity", diffusivityM2PerS, "m²/s", 1e-13, 1e-8);
    OutOfRange.check("share of the way", share, "", 0, 0.999);
    double depthM = thicknessMm / (bareFaces == Board.Faces.BOTH ? 2000 : 1000);
    return fourierOf(share) * depthM * depthM / diffusivityM2PerS / SECONDS_A_DAY;
  }

  /**
   * Share of the way a sheet's mean has gone: 1 − Σ 8/((2n+1)²π²) exp(−(2n+1)²π²/4 · Dt/l²), l from
   * the face to where nothing flows, and for small times 2 √(Dt/(π l²)) (Crank, equations 4.18 and
   * 4.20).
   *
   * @param fourier Dt/l², 0 up
   */
  static double meanShare(double fourier) {
    if (fourier < SHORT_TIMES_UNTIL) {
      return 2 * Math.sqrt(fourier / Math.PI);
    }
    double left = 0;
    for (int odd = 1; ; odd += 2) {
      double rate = odd * odd * Math.PI * Math.PI;
      double exponent = rate / 4 * fourier;
      if (exponent > NEGLIGIBLE_EXPONENT) {
        return 1 - left;
      }
      left += 8 / rate * Math.exp(-exponent);
    }
  }

  private static double fourierOf(double share) {
    double low = 0;
    double high = 4;
    for (int step = 0; step < 80; step++) {
      double middle = 0.5 * (low + high);
      if (meanShare(middle) < share) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return 0.5 * (low + high);
  }
}
