package coatwright.film;

import coatwright.mix.FilmBuild;
import coatwright.solvent.Solvent;
import java.util.ArrayList;
import java.util.List;

/**
 * The volatiles of one run in the model's order, unpacked for the inner loops: the first solvent,
 * water second, then whatever other solvents the coats brought.
 */
final class Species {
  static final int WATER = 1;
  static final int RETARDER = 2;

  static final double KELVIN = 273.15;

  /** Heat capacity of the volatiles, J/(kg K); one figure for all of them, from memory. */
  private static final double LIQUID_HEAT = 2400;

  private static final double SHELLAC_HEAT = 1500;
  private static final double SHELLAC_MOLAR_KG = 1.006;

  /** What the touched part of brush-side moisture and pores adds, J/(m² K); assumed. */
  static final double BASE_HEAT = 50;

  /**
   * Volume of one mole of resin, m³: shellac counts as an oligomer of 1006 g/mol (property sheet).
   */
  static final double SHELLAC_MOLAR_VOLUME = SHELLAC_MOLAR_KG / FilmBuild.RESIN_KG_PER_M3;

  /** Glass transitions of the pure liquids, K; ethanol and water from memory, retarder assumed. */
  private static final double GLASS_ETHANOL = 97;

  private static final double GLASS_WATER = 136;
  private static final double GLASS_RETARDER = 160;

  final int count;
  final Solvent[] solvent;
  final double[] volume;
  final double[] density;
  final double[] heatPerM3;
  final double[] latent;
  final double[] glass;
  final double[] chi;
  final double[] speed;
  final double[] loosening;

  /** Natural logarithm of water's activity coefficient at a trace in each liquid; 0 for water. */
  final double[] lnWaterIn;

  final double resinDensity;
  final double resinHeatPerM3;
  final double resinGlass;

  private Species(List<FilmLiquid> liquids, double density, double heat, double glassK) {
    count = liquids.size();
    solvent = new Solvent[count];
    volume = new double[count];
    this.density = new double[count];
    heatPerM3 = new double[count];
    latent = new double[count];
    glass = new double[count];
    chi = new double[count];
    speed = new double[count];
    loosening = new double[count];
    lnWaterIn = new double[count];
    for (int i = 0; i < count; i++) {
      FilmLiquid liquid = liquids.get(i);
      solvent[i] = liquid.solvent();
      volume[i] = liquid.solvent().molarVolumeM3();
      this.density[i] = liquid.solvent().densityKgPerM3();
      heatPerM3[i] = this.density[i] * LIQUID_HEAT;
      latent[i] = liquid.solvent().latentHeatJPerMol();
      glass[i] = liquid.glassK();
      chi[i] = liquid.chi();
      speed[i] = liquid.speed();
      loosening[i] = liquid.loosening();
      lnWaterIn[i] = Math.log(liquid.waterCoefficient());
    }
    resinDensity = density;
    resinHeatPerM3 = density * heat;
    resinGlass = glassK;
  }

  /** What these coats bring, and water. */
  static Species of(FilmParameters p, List<LaidCoat> coats) {
    return p.medium() instanceof Medium.Lacquer l
        ? ofLacquer(p, l, coats)
        : ofSpirit(p, retarded(coats));
  }

  static Species ofSpirit(FilmParameters p, boolean retarded) {
    FilmParameters.Solution s = p.solution();
    FilmParameters.Diffusion d = p.diffusion();
    List<FilmLiquid> liquids = new ArrayList<>(3);
    liquids.add(new FilmLiquid(Solvent.ETHANOL, GLASS_ETHANOL, s.chiEthanol(), 1, 1, 1));
    liquids.add(water(p));
    if (retarded) {
      liquids.add(
          new FilmLiquid(
              Solvent.BUTOXYETHANOL, GLASS_RETARDER, s.chiRetarder(), d.retarderFactor(), 1, 1));
    }
    return new Species(liquids, FilmBuild.RESIN_KG_PER_M3, SHELLAC_HEAT, s.resinGlassK());
  }

  private static Species ofLacquer(FilmParameters p, Medium.Lacquer l, List<LaidCoat> coats) {
    List<FilmLiquid> liquids = new ArrayList<>();
    for (FilmLiquid liquid : l.liquids()) {
      for (LaidCoat coat : coats) {
        if (coat.poured().perResin(liquid.solvent()) > 0) {
          liquids.add(liquid);
          break;
        }
      }
    }
    liquids.add(Math.min(WATER, liquids.size()), water(p));
    return new Species(liquids, l.resinKgPerM3(), l.resinHeatJPerKgK(), p.solution().resinGlassK());
  }

  private static FilmLiquid water(FilmParameters p) {
    return new FilmLiquid(
        Solvent.WATER,
        GLASS_WATER,
        p.solution().chiWater(),
        p.diffusion().waterFactor(),
        p.diffusion().waterLoosening(),
        1);
  }

  private static boolean retarded(List<LaidCoat> coats) {
    for (int i = 0; i < coats.size(); i++) {
      if (coats.get(i).poured().perResin(Solvent.BUTOXYETHANOL) > 0) {
        return true;
      }
    }
    return false;
  }

  /** Whether runs of these volatiles can share an engine. */
  boolean sameAs(Species other) {
    if (count != other.count) {
      return false;
    }
    for (int i = 0; i < count; i++) {
      if (!solvent[i].equals(other.solvent[i])) {
        return false;
      }
    }
    return true;
  }
}
