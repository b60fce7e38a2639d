package coatwright.solvent;

import coatwright.quantity.OutOfRange;

/**
 * Density of ethanol-water mixtures, and the strength by volume that goes with a share by mass.
 *
 * <p>Source: International Organization of Legal Metrology, recommendation R 22 (1975),
 * "International alcoholometric tables", general formula; the same numbers stand in directive
 * 76/766/EEC. The formula holds from −20 to 40 °C. Strength by volume is at 20 °C: the volume of
 * pure ethanol in 100 volumes of mixture, contraction included.
 */
public final class EthanolWaterDensity {
  /** 60 °F in °C, the temperature US proof is defined at. */
  public static final double SIXTY_FAHRENHEIT_C = 140.0 / 9;

  private static final double REFERENCE_C = 20;
  private static final double COLDEST_C = -20;
  private static final double HOTTEST_C = 40;
  private static final int HALVINGS = 60;

  /** Cubic expansion of an alcoholometer's glass, 1/K; R 22. */
  private static final double GLASS_EXPANSION = 25e-6;

  private static final double[] BY_SHARE = {
    998.20123,
    -192.9769495,
    389.1238958,
    -1668.103923,
    13522.15441,
    -88292.78388,
    306287.4042,
    -613838.1234,
    747017.2998,
    -547846.1354,
    223446.0334,
    -39032.85426,
  };

  private static final double[] BY_TEMPERATURE = {
    -0.20618513, -0.0052682542, 3.6130013e-05, -3.8957702e-07, 7.169354e-09, -9.9739231e-11,
  };

  private static final double[][] MIXED = {
    {
      0.1693443461530087,
      -10.46914743455169,
      71.96353469546523,
      -704.7478054272792,
      3924.090430035045,
      -12101.64659068747,
      22486.46550400788,
      -26055.62982188164,
      18523.73922069467,
      -7420.201433430137,
      1285.617841998974,
    },
    {
      -0.0119301300505701,
      0.2517399633803461,
      -2.170575700536993,
      13.53034988843029,
      -50.29988758547014,
      109.635566657757,
      -142.2753946421155,
      108.043594285623,
      -44.14153236817392,
      7.442971530188783,
    },
    {
      -0.0006802995733503803,
      0.01876837790289664,
      -0.2002561813734156,
      1.02299296671922,
      -2.895696483903638,
      4.810060584300675,
      -4.672147440794683,
      2.458043105903461,
      -0.5411227621436812,
    },
    {
      4.075376675622027e-06, -8.76305857347111e-06, 6.515031360099368e-06, -1.51578483698721e-06,
    },
    {
      -2.788074354782409e-08, 1.345612883493354e-08,
    },
  };

  private EthanolWaterDensity() {}

  /**
   * Density, kg/m³.
   *
   * @param massFraction ethanol by mass, 0 to 1
   * @param temperatureC −20 to 40 °C
   */
  public static double densityKgPerM3(double massFraction, double temperatureC) {
    OutOfRange.check("ethanol by mass", massFraction, "(fraction)", 0, 1);
    OutOfRange.check("spirit temperature", temperatureC, "°C", COLDEST_C, HOTTEST_C);
    double t = temperatureC - REFERENCE_C;
    double density = polynomial(BY_SHARE, massFraction) + t * polynomial(BY_TEMPERATURE, t);
    double power = t;
    for (double[] row : MIXED) {
      density += power * massFraction * polynomial(row, massFraction);
      power *= t;
    }
    return density;
  }

  /** Strength by volume at 20 °C, per cent, of a share by mass, 0 to 1. */
  public static double volumePct(double massFraction) {
    return volumePct(massFraction, REFERENCE_C);
  }

  /**
   * Strength by volume when both volumes are taken at a temperature, per cent.
   *
   * @param massFraction 0 to 1
   * @param referenceC 20 °C, or 60 °F for US proof; −20 to 40 °C
   */
  public static double volumePct(double massFraction, double referenceC) {
    return 100
        * massFraction
        * densityKgPerM3(massFraction, referenceC)
        / densityKgPerM3(1, referenceC);
  }

  /** Share by mass, 0 to 1, of a strength by volume at 20 °C, 0 to 100 %. */
  public static double massFraction(double volumePct) {
    return massFraction(volumePct, REFERENCE_C);
  }

  /** Share by mass, 0 to 1, of a strength by volume at a temperature, 0 to 100 %. */
  public static double massFraction(double volumePct, double referenceC) {
    OutOfRange.check("spirit strength", volumePct, "% vol", 0, 100);
    double low = 0;
    double high = 1;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = 0.5 * (low + high);
      if (volumePct(middle, referenceC) < volumePct) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /**
   * True strength of spirit whose alcoholometer (marked for 20 °C) reads so much while the spirit
   * is at another temperature. Warm spirit is thinner and reads too strong.
   *
   * @param readingVolPct what the stem shows, 1 to 100 %
   * @param temperatureC of the spirit, 0 to 40 °C
   * @return strength by volume at 20 °C, per cent
   */
  public static double strengthFromReading(double readingVolPct, double temperatureC) {
    return strengthFromReading(readingVolPct, temperatureC, REFERENCE_C);
  }

  /**
   * The same for an alcoholometer whose scale is marked for another temperature. At the marked
   * temperature the stem tells the truth; away from it glass and spirit both swell.
   *
   * @param readingVolPct strength by volume at {@code markedForC} that the stem shows, 1 to 100 %
   * @param temperatureC of the spirit, 0 to 40 °C
   * @param markedForC 20 °C, or 60 °F for a scale of US proof; −20 to 40 °C
   * @return strength by volume at 20 °C, per cent
   */
  public static double strengthFromReading(
      double readingVolPct, double temperatureC, double markedForC) {
    OutOfRange.check("alcoholometer reading", readingVolPct, "% vol", 1, 100);
    OutOfRange.check("spirit temperature", temperatureC, "°C", 0, HOTTEST_C);
    double marked = densityKgPerM3(massFraction(readingVolPct, markedForC), markedForC);
    double floats = marked * (1 - GLASS_EXPANSION * (temperatureC - markedForC));
    if (densityKgPerM3(1, temperatureC) > floats) {
      throw new OutOfRange(
          "an alcoholometer cannot read %.1f %% vol at %.1f °C; pure ethanol is denser than that. Read it again at eye level"
              .formatted(readingVolPct, temperatureC));
    }
    double low = 0;
    double high = 1;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = 0.5 * (low + high);
      if (densityKgPerM3(middle, temperatureC) > floats) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return volumePct(high);
  }

  private static double polynomial(double[] coefficients, double x) {
    double value = 0;
    for (int i = coefficients.length - 1; i >= 0; i--) {
      value = value * x + coefficients[i];
    }
    return value;
  }
}
