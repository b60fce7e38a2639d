package coatwright.mix;

import coatwright.quantity.OutOfRange;
import coatwright.solvent.EthanolWaterDensity;
import coatwright.solvent.SpiritStrength;

/**
 * A bottle of spirit: so much, so strong, at 20 °C. Mixing counts weights, so that the shrinking of
 * spirit with water (up to some 4 % near half and half) comes out by itself.
 *
 * <p>Densities are those of ethanol and water after OIML R 22. Denatured alcohol holds other things
 * as well, and its hydrometer reading is that much less exact.
 *
 * @param volumeMl at 20 °C, mL, above 0 to 1000 L
 * @param strengthVolPct ethanol by volume at 20 °C, per cent, 0 to 100
 */
public record Spirit(double volumeMl, double strengthVolPct) {
  /** Temperature at which strengths and volumes are meant, °C. */
  public static final double REFERENCE_C = 20;

  /** Temperature US proof is defined at: 60 °F, in °C. */
  public static final double PROOF_C = EthanolWaterDensity.SIXTY_FAHRENHEIT_C;

  private static final double MOST_ML = 1e6;

  public Spirit {
    OutOfRange.check("spirit", volumeMl, "mL", 1e-3, MOST_ML);
    OutOfRange.check("spirit strength", strengthVolPct, "% vol", 0, 100);
  }

  /**
   * True strength, per cent by volume at 20 °C, of spirit whose glass alcoholometer reads so much
   * while the spirit is at another temperature.
   *
   * @param readingVolPct what the stem shows, 1 to 100 %; of a US proof scale half the proof
   * @param spiritTempC 0 to 40 °C
   * @param markedForC temperature the scale is marked for: {@link #REFERENCE_C} or {@link #PROOF_C}
   */
  public static double strengthFromReading(
      double readingVolPct, double spiritTempC, double markedForC) {
    return Math.min(
        100, EthanolWaterDensity.strengthFromReading(readingVolPct, spiritTempC, markedForC));
  }

  /**
   * Strength by volume at 60 °F, the base of US proof, of a strength at 20 °C, per cent.
   *
   * @param strengthVolPct 0 to 100 %
   */
  public static double strengthAtProofTemperature(double strengthVolPct) {
    return EthanolWaterDensity.volumePct(EthanolWaterDensity.massFraction(strengthVolPct), PROOF_C);
  }

  /** Its weight, g. */
  public double massG() {
    return volumeMl * density() / 1000;
  }

  /** Both poured together. */
  public Spirit with(Spirit other) {
    double mass = massG() + other.massG();
    double share = (ethanolG() + other.ethanolG()) / mass;
    return ofMass(mass, share);
  }

  /**
   * How much of another liquid brings this to a strength between the two.
   *
   * @param wantedVolPct between the two strengths
   * @param otherVolPct strength of what is poured in; water is 0 %
   */
  public Spirit toReach(double wantedVolPct, double otherVolPct) {
    boolean between =
        wantedVolPct >= Math.min(strengthVolPct, otherVolPct)
            && wantedVolPct <= Math.max(strengthVolPct, otherVolPct)
            && wantedVolPct != otherVolPct;
    if (!between) {
      throw new OutOfRange(
          "%.1f %% cannot be reached from %.1f %% with %.1f %%; a blend lies between what goes into it"
              .formatted(wantedVolPct, strengthVolPct, otherVolPct));
    }
    double wanted = EthanolWaterDensity.massFraction(wantedVolPct);
    double here = EthanolWaterDensity.massFraction(strengthVolPct);
    double there = EthanolWaterDensity.massFraction(otherVolPct);
    double addG = massG() * (wanted - here) / (there - wanted);
    return new Spirit(Math.max(1e-3, addG * 1000 / densityOf(there)), otherVolPct);
  }

  /** What is lost in volume when the other is poured in, mL. */
  public double shrinkageMl(Spirit other) {
    return volumeMl + other.volumeMl() - with(other).volumeMl();
  }

  private double ethanolG() {
    return volumeMl * strengthVolPct / 100 * densityOf(1) / 1000;
  }

  private double density() {
    return densityOf(EthanolWaterDensity.massFraction(strengthVolPct));
  }

  private static double densityOf(double massFraction) {
    return EthanolWaterDensity.densityKgPerM3(massFraction, REFERENCE_C);
  }

  private static Spirit ofMass(double massG, double massFraction) {
    return new Spirit(
        massG * 1000 / densityOf(massFraction),
        SpiritStrength.ofMassPct(100 * massFraction).volumePct());
  }
}
