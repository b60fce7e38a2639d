package coatwright.film;

import coatwright.mix.FilmBuild;
import coatwright.solvent.Solvent;

/** The three volatiles in the model's order, unpacked for the inner loop. */
final class Species {
  static final int ETHANOL = 0;
  static final int WATER = 1;
  static final int RETARDER = 2;

  static final double KELVIN = 273.15;

  private static final Solvent[] ALL = {Solvent.ETHANOL, Solvent.WATER, Solvent.BUTOXYETHANOL};

  /** Heat capacity of the volatiles, J/(kg K); one figure for all three, from memory. */
  private static final double LIQUID_HEAT = 2400;

  private static final double RESIN_HEAT = 1500;
  private static final double RESIN_MOLAR_KG = 1.006;

  /** What the touched part of brush-side moisture and pores adds, J/(m² K); assumed. */
  static final double BASE_HEAT = 50;

  static final double RESIN_DENSITY = FilmBuild.RESIN_KG_PER_M3;
  static final double RESIN_HEAT_PER_M3 = RESIN_DENSITY * RESIN_HEAT;

  /**
   * Volume of one mole of resin, m³: shellac counts as an oligomer of 1006 g/mol (property sheet).
   */
  static final double RESIN_MOLAR_VOLUME = RESIN_MOLAR_KG / RESIN_DENSITY;

  static final double VOL_E = ALL[ETHANOL].molarVolumeM3();
  static final double VOL_W = ALL[WATER].molarVolumeM3();
  static final double VOL_R = ALL[RETARDER].molarVolumeM3();
  private static final double[] VOLUME = {VOL_E, VOL_W, VOL_R};

  static final double RHO_E = ALL[ETHANOL].densityKgPerM3();
  static final double RHO_W = ALL[WATER].densityKgPerM3();
  static final double RHO_R = ALL[RETARDER].densityKgPerM3();
  private static final double[] HEAT_PER_M3 = {
    RHO_E * LIQUID_HEAT, RHO_W * LIQUID_HEAT, RHO_R * LIQUID_HEAT
  };

  static final double LATENT_E = ALL[ETHANOL].latentHeatJPerMol();
  static final double LATENT_W = ALL[WATER].latentHeatJPerMol();
  static final double LATENT_R = ALL[RETARDER].latentHeatJPerMol();

  /** Glass transitions of the pure liquids, K; ethanol and water from memory, retarder assumed. */
  static final double GLASS_E = 97;

  static final double GLASS_W = 136;
  static final double GLASS_R = 160;

  private Species() {}

  static double molarVolume(int species) {
    return VOLUME[species];
  }

  static double heatPerM3(int species) {
    return HEAT_PER_M3[species];
  }
}
