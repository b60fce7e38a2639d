package coatwright.solvent;

import coatwright.air.SaturationFunction;
import coatwright.quantity.OutOfRange;

/**
 * A pure liquid.
 *
 * @param name as a finisher would say it
 * @param molarMassKgPerMol kg/mol
 * @param densityKgPerM3 at 20 °C, kg/m³
 * @param latentHeatJPerMol heat of evaporation near 20 to 25 °C, J/mol
 * @param diffusionVolume Fuller's diffusion volume, cm³/mol
 * @param vapourPressure saturation pressure over the pure liquid
 */
public record Solvent(
    String name,
    double molarMassKgPerMol,
    double densityKgPerM3,
    double latentHeatJPerMol,
    double diffusionVolume,
    VapourPressure vapourPressure) {

  /** Antoine constants: Smith, Van Ness and Abbott, app. B.2. */
  public static final Solvent ETHANOL =
      new Solvent(
          "ethanol",
          0.04607,
          789,
          42.3e3,
          fullerVolume(2, 6, 1),
          new VapourPressure.Antoine(16.8958, 3795.17, 230.918));

  /** Saturation over liquid water after Hyland and Wexler, as in the rest of the product. */
  public static final Solvent WATER =
      new Solvent(
          "water",
          0.01802,
          998,
          44.2e3,
          12.7,
          new VapourPressure.OfWater(SaturationFunction.HYLAND_WEXLER_WATER));

  /** Clausius-Clapeyron through 117 Pa at 25 °C and the boiling point 171 °C, both from memory. */
  public static final Solvent BUTOXYETHANOL =
      new Solvent(
          "2-butoxyethanol",
          0.11817,
          900,
          56.6e3,
          fullerVolume(6, 14, 2),
          new VapourPressure.TwoPoint(25, 117, 171, 101325));

  /** Antoine constants: Smith, Van Ness and Abbott, app. B.2. */
  public static final Solvent METHANOL =
      new Solvent(
          "methanol",
          0.03204,
          791,
          37.8e3,
          fullerVolume(1, 4, 1),
          new VapourPressure.Antoine(16.5785, 3638.27, 239.500));

  /** Antoine constants: Smith, Van Ness and Abbott, app. B.2. */
  public static final Solvent BUTANOL =
      new Solvent(
          "n-butanol",
          0.07412,
          810,
          52.4e3,
          fullerVolume(4, 10, 1),
          new VapourPressure.Antoine(15.3144, 3212.43, 182.739));

  /**
   * The liquid evaporation numbers are relative to. Antoine, log10 bar: 4.1564 −
   * 1371.13/(204.273+t).
   */
  public static final Solvent BUTYL_ACETATE =
      new Solvent(
          "n-butyl acetate",
          0.11616,
          882,
          43.9e3,
          fullerVolume(6, 12, 2),
          VapourPressure.Antoine.ofLog10Bar(4.1564, 1371.13, 204.273));

  /** Antoine constants: Smith, Van Ness and Abbott, app. B.2. Density and heat: CRC Handbook. */
  public static final Solvent ACETONE =
      new Solvent(
          "acetone",
          0.05808,
          790,
          31.0e3,
          fullerVolume(3, 6, 1),
          new VapourPressure.Antoine(14.3145, 2756.22, 228.060));

  /**
   * Antoine constants: Smith, Van Ness and Abbott, app. B.2, from memory; within 1.5 % of the
   * median of the published equations from 5 to 40 °C. An aromatic ring takes 20.2 off Fuller's
   * volume.
   */
  public static final Solvent TOLUENE =
      new Solvent(
          "toluene",
          0.09214,
          867,
          38.0e3,
          fullerVolume(7, 8, 0) - 20.2,
          new VapourPressure.Antoine(13.9320, 3056.96, 217.625));

  /**
   * Antoine, log10 Pa: 10.24268 − 1580.92/(T − 53.54): Poling, Prausnitz and O'Connell, app. A;
   * other published equations lie up to 5 % lower. Density from memory, heat: CRC Handbook.
   */
  public static final Solvent ISOPROPANOL =
      new Solvent(
          "2-propanol",
          0.06010,
          785,
          45.4e3,
          fullerVolume(3, 8, 1),
          VapourPressure.Antoine.ofLog10PaKelvin(10.24268, 1580.92, -53.54));

  public Solvent {
    OutOfRange.check("molar mass", molarMassKgPerMol, "kg/mol", 0.01, 1);
    OutOfRange.check("density", densityKgPerM3, "kg/m³", 500, 2000);
    OutOfRange.check("latent heat", latentHeatJPerMol, "J/mol", 1e4, 2e5);
    OutOfRange.check("diffusion volume", diffusionVolume, "cm³/mol", 5, 500);
  }

  /** Volume of one mole of the liquid, m³/mol. */
  public double molarVolumeM3() {
    return molarMassKgPerMol / densityKgPerM3;
  }

  /**
   * Saturation vapour pressure, Pa.
   *
   * @param temperatureC −30 to 100 °C
   */
  public double vapourPressurePa(double temperatureC) {
    return vapourPressure.pressurePa(temperatureC);
  }

  /** The same liquid with another vapour-pressure curve. */
  public Solvent with(VapourPressure other) {
    return new Solvent(
        name, molarMassKgPerMol, densityKgPerM3, latentHeatJPerMol, diffusionVolume, other);
  }

  /** The same liquid with another heat of evaporation, J/mol. */
  public Solvent withLatentHeat(double joulePerMol) {
    return new Solvent(
        name, molarMassKgPerMol, densityKgPerM3, joulePerMol, diffusionVolume, vapourPressure);
  }

  /**
   * Atomic contributions C 16.5, H 1.98, O 5.48 of Fuller, Schettler and Giddings, Industrial and
   * Engineering Chemistry 58 (1966) 18.
   */
  private static double fullerVolume(int carbon, int hydrogen, int oxygen) {
    return 16.5 * carbon + 1.98 * hydrogen + 5.48 * oxygen;
  }
}
