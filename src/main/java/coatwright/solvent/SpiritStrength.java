package coatwright.solvent;

import coatwright.quantity.OutOfRange;

/**
 * How strong a spirit is, and so how much water comes in with it.
 *
 * @param volumePct ethanol by volume at 20 °C, per cent, 0 to 100
 */
public record SpiritStrength(double volumePct) {

  public SpiritStrength {
    OutOfRange.check("spirit strength", volumePct, "% vol", 0, 100);
  }

  /** From US proof (twice the percentage by volume), 0 to 200. */
  public static SpiritStrength ofProof(double proof) {
    return new SpiritStrength(OutOfRange.check("proof", proof, "proof", 0, 200) / 2);
  }

  /** From ethanol by mass, 0 to 100 %. */
  public static SpiritStrength ofMassPct(double massPct) {
    OutOfRange.check("ethanol by mass", massPct, "%", 0, 100);
    return new SpiritStrength(Math.min(100, EthanolWaterDensity.volumePct(massPct / 100)));
  }

  /** From an alcoholometer marked for 20 °C, read in spirit at another temperature. */
  public static SpiritStrength ofReading(double readingVolPct, double temperatureC) {
    return new SpiritStrength(
        Math.min(100, EthanolWaterDensity.strengthFromReading(readingVolPct, temperatureC)));
  }

  /** Ethanol by mass, per cent. */
  public double massPct() {
    return 100 * EthanolWaterDensity.massFraction(volumePct);
  }

  /** Mole fraction of ethanol. */
  public double ethanolFraction() {
    double mass = massPct() / 100;
    double ethanol = mass / Solvent.ETHANOL.molarMassKgPerMol();
    double water = (1 - mass) / Solvent.WATER.molarMassKgPerMol();
    return ethanol / (ethanol + water);
  }

  /** Density at a temperature, kg/m³; −20 to 40 °C. */
  public double densityKgPerM3(double temperatureC) {
    return EthanolWaterDensity.densityKgPerM3(massPct() / 100, temperatureC);
  }

  /**
   * Water by volume when the two volumes are simply added, per cent, as the film model counts it;
   * the true volumes shrink by up to 1 % between 80 and 100 %.
   */
  public double waterVolPct() {
    return 100 - volumePct;
  }

  /** Pressure of spirit vapour over the liquid, Pa; −30 to 100 °C. */
  public double spiritVapourPa(double temperatureC) {
    double x = ethanolFraction();
    return x
        * Math.exp(VanLaar.lnGammaSpirit(1 - x))
        * Solvent.ETHANOL.vapourPressurePa(temperatureC);
  }

  /** Pressure of water vapour over the liquid, Pa; −30 to 100 °C. */
  public double waterVapourPa(double temperatureC) {
    double w = 1 - ethanolFraction();
    return w * Math.exp(VanLaar.lnGammaWater(w)) * Solvent.WATER.vapourPressurePa(temperatureC);
  }
}
