package coatwright.film;

import coatwright.quantity.OutOfRange;
import coatwright.solvent.Solvent;
import java.util.List;

/**
 * Every number of the film model that is not a property of the job in hand.
 *
 * <p>Answers given to people use {@link #SHELLAC}. {@link #REFERENCE} is the earlier set, in which
 * sorbed water also plasticised the resin; it is kept because an independent program was run with
 * it. The diffusion constants of both were fitted to common practice (rub-out after 3 days at 24 °C
 * and 5 days at 15 °C; no source): the bench test decides, the model predicts.
 *
 * @param name the set's name, carried into the {@link ModelStamp}
 * @param medium what the film is made of
 */
public record FilmParameters(
    String name,
    Diffusion diffusion,
    Solution solution,
    Surroundings surroundings,
    HazeGrowth hazeGrowth,
    Criteria criteria,
    Medium medium) {

  private static final Solution SHELLAC_SOLUTION = new Solution(0.5, 2.5, 0.5, 1.4, 0.2, 323.15);
  private static final Surroundings SHOP = Surroundings.boardAt9PercentMoisture(3.0, 0.3, 0.9);
  private static final HazeGrowth HAZE = new HazeGrowth(10, 2e-6, 0.03);

  /**
   * The set that every answer uses: water does not speed the spirit, rub-out counts from the last
   * coat.
   */
  public static final FilmParameters SHELLAC =
      new FilmParameters(
          "shellac",
          new Diffusion(3.83e-15, 3e-10, 5.08, 41.0e3, 15e3, 5, 0.3, 0),
          SHELLAC_SOLUTION,
          SHOP,
          HAZE,
          new Criteria(55, 40.0, 20.7, 5, 0.010, 0.005, 0.002, 8, true),
          new Medium.Spirit());

  /** The earlier set, for comparison with an independent program only. */
  public static final FilmParameters REFERENCE =
      new FilmParameters(
          "reference",
          new Diffusion(3.065e-15, 3e-10, 5.00, 42.0e3, 15e3, 5, 0.3, 0.3),
          SHELLAC_SOLUTION,
          SHOP,
          HAZE,
          new Criteria(55, 38.5, 20.7, 5, 0.010, 0.005, 0.002, 8, false),
          new Medium.Spirit());

  /**
   * Nitrocellulose lacquer. Only the wet hour rests on published figures, those of its solvents;
   * how water and resin take to them is an order of magnitude, assumed.
   *
   * <p>It hardens as shellac does, with two figures of its own: the diffusivity, set so that three
   * coats (100 µm wet, a fifth resin, regular blend, an hour apart) rub out after ten days at 25 °C
   * and 50 % (one to two weeks: common practice, no source), and dry to recoat at the blocking
   * level, 1e7 Pa s, which the third coat reaches in just under the hour that data sheets ask for.
   * Rested is 1e8 Pa s, assumed.
   */
  public static final FilmParameters LACQUER =
      new FilmParameters(
          "lacquer",
          new Diffusion(1.89e-15, 3e-10, 5.08, 41.0e3, 15e3, 5, 0.3, 0),
          new Solution(0.45, 2.5, 0.45, 1.4, 0.2, 330),
          SHOP,
          HAZE,
          new Criteria(55, 20.7, 15.4, 5, 0.010, 0.005, 0.002, 8, true),
          new Medium.Lacquer(
              1400,
              1500,
              45,
              List.of(
                  new FilmLiquid(Solvent.ACETONE, 100, 0.45, 1, 1, 6),
                  new FilmLiquid(Solvent.ISOPROPANOL, 121, 0.45, 0.6, 1, 3),
                  new FilmLiquid(Solvent.TOLUENE, 117, 0.45, 0.6, 1, 300),
                  new FilmLiquid(Solvent.BUTANOL, 118, 0.45, 0.5, 1, 5),
                  new FilmLiquid(Solvent.BUTYL_ACETATE, 120, 0.45, 0.5, 1, 30),
                  new FilmLiquid(Solvent.BUTOXYETHANOL, 160, 0.45, 0.3, 1, 4))));

  /**
   * How fast the volatiles creep through the resin.
   *
   * <p>ln D runs from the glass to the liquid as the share q of spirit grows: ln D = ln Dg +
   * ln(Dl/Dg) (1−e^(−kq))/(1−e^(−k)) − (Eg(1−q)+El q)/R · (1/T − 1/293.15 K).
   *
   * @param glassM2PerS diffusivity in the dry resin at 20 °C, m²/s; fitted to common practice, no
   *     source
   * @param liquidM2PerS diffusivity in the liquid, m²/s; assumed
   * @param steepness k, how early the resin loosens; fitted
   * @param glassEnergyJPerMol Eg, J/mol; fitted
   * @param liquidEnergyJPerMol El, J/mol; assumed
   * @param waterFactor water moves this many times faster than spirit; assumed
   * @param retarderFactor 2-butoxyethanol moves this many times faster; assumed
   * @param waterLoosening the part of sorbed water that counts as spirit in q
   */
  public record Diffusion(
      double glassM2PerS,
      double liquidM2PerS,
      double steepness,
      double glassEnergyJPerMol,
      double liquidEnergyJPerMol,
      double waterFactor,
      double retarderFactor,
      double waterLoosening) {
    public Diffusion {
      OutOfRange.check("glass diffusivity", glassM2PerS, "m²/s", 1e-19, 1e-11);
      OutOfRange.check("liquid diffusivity", liquidM2PerS, "m²/s", 1e-12, 1e-8);
      OutOfRange.check("steepness of loosening", steepness, "", 1, 15);
      OutOfRange.check("activation energy in the glass", glassEnergyJPerMol, "J/mol", 0, 200e3);
      OutOfRange.check("activation energy in the liquid", liquidEnergyJPerMol, "J/mol", 0, 100e3);
      OutOfRange.check("water's speed", waterFactor, "", 0.01, 100);
      OutOfRange.check("retarder's speed", retarderFactor, "", 0.001, 10);
      OutOfRange.check("loosening by water", waterLoosening, "", 0, 1);
    }
  }

  /**
   * How resin, spirit and water tolerate each other (Flory-Huggins) and when the resin is a glass.
   *
   * @param chiEthanol resin-spirit interaction; assumed
   * @param chiWater resin-water interaction; assumed, gives 1.7 % water by volume at 50 % RH
   * @param chiRetarder resin-retarder interaction; assumed
   * @param spiritWater spirit-water interaction in the stability limit; set so that a 1.5 lb
   *     solution gives way at 83.6 % spirit by volume
   * @param crossTerm resin-spirit term of the stability limit; as spiritWater
   * @param resinGlassK glass transition of the dry resin, K; assumed from softening at 65 to 70 °C
   */
  public record Solution(
      double chiEthanol,
      double chiWater,
      double chiRetarder,
      double spiritWater,
      double crossTerm,
      double resinGlassK) {
    public Solution {
      OutOfRange.check("resin-spirit interaction", chiEthanol, "", 0, 2);
      OutOfRange.check("resin-water interaction", chiWater, "", 1, 5);
      OutOfRange.check("resin-retarder interaction", chiRetarder, "", 0, 2);
      OutOfRange.check("spirit-water interaction", spiritWater, "", 0.5, 3);
      OutOfRange.check("cross term", crossTerm, "", 0, 1);
      OutOfRange.check("glass transition of the resin", resinGlassK, "K", 290, 400);
    }
  }

  /**
   * What the film gives heat to and takes heat from.
   *
   * @param woodConductivityWPerMK across the board, W/(m K)
   * @param woodDensityKgPerM3 kg/m³
   * @param woodHeatJPerKgK J/(kg K)
   * @param stillAirWPerM2K heat transfer in still air, W/(m² K); correlation, from memory
   * @param plateLengthM length the draught runs along, m; assumed
   * @param emissivity of film and walls
   */
  public record Surroundings(
      double woodConductivityWPerMK,
      double woodDensityKgPerM3,
      double woodHeatJPerKgK,
      double stillAirWPerM2K,
      double plateLengthM,
      double emissivity) {
    public Surroundings {
      OutOfRange.check("wood conductivity", woodConductivityWPerMK, "W/(m K)", 0.02, 1);
      OutOfRange.check("wood density", woodDensityKgPerM3, "kg/m³", 100, 1400);
      OutOfRange.check("wood heat capacity", woodHeatJPerKgK, "J/(kg K)", 800, 4000);
      OutOfRange.check("still-air heat transfer", stillAirWPerM2K, "W/(m² K)", 0.3, 30);
      OutOfRange.check("length along the draught", plateLengthM, "m", 0.01, 5);
      OutOfRange.check("emissivity", emissivity, "", 0, 1);
    }

    /**
     * Hardwood of specific gravity 0.55 at 9 % moisture and 20 °C: conductivity G(0.1941+0.004064
     * M)+ 0.01864 and heat capacity after the USDA Wood Handbook, chapter 4.
     */
    static Surroundings boardAt9PercentMoisture(
        double stillAirWPerM2K, double plateLengthM, double emissivity) {
      double gravity = 0.55;
      double moisturePct = 9;
      double kelvin = 293.15;
      double conductivity = gravity * (0.1941 + 0.004064 * moisturePct) + 0.01864;
      double dryHeat = 0.1031 + 0.003867 * kelvin;
      double bound = moisturePct * (-0.06191 + 2.36e-4 * kelvin - 1.33e-4 * moisturePct);
      double heat = 1000 * ((dryHeat + 4.18 * moisturePct / 100) / (1 + moisturePct / 100) + bound);
      double density = gravity * 1000 * (1 + moisturePct / 100);
      return new Surroundings(
          conductivity, density, heat, stillAirWPerM2K, plateLengthM, emissivity);
    }
  }

  /**
   * How fast micro-voids open and sinter shut again: time constant tau0 + viscosity · drop /
   * tension.
   *
   * @param baseS tau0, s; assumed
   * @param dropM size of the voids, m; assumed
   * @param tensionNPerM surface tension, N/m
   */
  public record HazeGrowth(double baseS, double dropM, double tensionNPerM) {
    public HazeGrowth {
      OutOfRange.check("haze time", baseS, "s", 0.1, 1000);
      OutOfRange.check("void size", dropM, "m", 1e-8, 1e-4);
      OutOfRange.check("surface tension", tensionNPerM, "N/m", 0.005, 0.1);
    }
  }

  /**
   * When the film counts as touchable, recoatable and so on. Softness x is a temperature less the
   * glass transition, in K.
   *
   * @param touchXK dry to touch when the skin's x falls to this (film temperature; 1e3 Pa s by the
   *     Williams-Landel-Ferry curve)
   * @param recoatXK dry to recoat, and above it too tacky; common practice, no source
   * @param restedXK rested; blocking level, 1e7 Pa s
   * @param dryHardXK dry hard; assumed, the thumbnail decides
   * @param rubOutResidue spirit and retarder left, volume per volume of resin; common practice, no
   *     source
   * @param wrapResidue the same for wrapping; assumed
   * @param fullResidue the same for full hardness; assumed
   * @param aboveRoomK the glass transition must stand this far above the room to rub out; assumed
   * @param fromLastCoat hardness is timed from the last coat, else from the first
   */
  public record Criteria(
      double touchXK,
      double recoatXK,
      double restedXK,
      double dryHardXK,
      double rubOutResidue,
      double wrapResidue,
      double fullResidue,
      double aboveRoomK,
      boolean fromLastCoat) {
    public Criteria {
      OutOfRange.check("touch softness", touchXK, "K", 0, 150);
      OutOfRange.check("recoat softness", recoatXK, "K", 0, 150);
      OutOfRange.check("rested softness", restedXK, "K", -20, 150);
      OutOfRange.check("dry-hard softness", dryHardXK, "K", -40, 100);
      OutOfRange.check("residue at rub-out", rubOutResidue, "", 1e-5, 0.5);
      OutOfRange.check("residue at wrapping", wrapResidue, "", 1e-5, 0.5);
      OutOfRange.check("residue at full hardness", fullResidue, "", 1e-5, 0.5);
      OutOfRange.check("glass above room", aboveRoomK, "K", -20, 40);
    }
  }

  /** Which model and which set produced a number. */
  public ModelStamp stamp() {
    return new ModelStamp("film/" + name, ModelStamp.FILM_VERSION);
  }

  /**
   * The same set under another name: a member of an ensemble should not pass for the set itself.
   */
  public FilmParameters withName(String newName) {
    return new FilmParameters(
        newName, diffusion, solution, surroundings, hazeGrowth, criteria, medium);
  }

  public FilmParameters withDiffusion(Diffusion d) {
    return new FilmParameters(name, d, solution, surroundings, hazeGrowth, criteria, medium);
  }

  public FilmParameters withSolution(Solution s) {
    return new FilmParameters(name, diffusion, s, surroundings, hazeGrowth, criteria, medium);
  }

  public FilmParameters withSurroundings(Surroundings s) {
    return new FilmParameters(name, diffusion, solution, s, hazeGrowth, criteria, medium);
  }

  public FilmParameters withHazeGrowth(HazeGrowth h) {
    return new FilmParameters(name, diffusion, solution, surroundings, h, criteria, medium);
  }

  public FilmParameters withMedium(Medium m) {
    return new FilmParameters(name, diffusion, solution, surroundings, hazeGrowth, criteria, m);
  }

  public FilmParameters withCriteria(Criteria c) {
    return new FilmParameters(name, diffusion, solution, surroundings, hazeGrowth, c, medium);
  }

  /** Dg, m²/s at 20 °C. */
  public FilmParameters withGlassDiffusivity(double m2PerS) {
    var d = diffusion;
    return withDiffusion(
        new Diffusion(
            m2PerS,
            d.liquidM2PerS,
            d.steepness,
            d.glassEnergyJPerMol,
            d.liquidEnergyJPerMol,
            d.waterFactor,
            d.retarderFactor,
            d.waterLoosening));
  }

  /** Dl, m²/s at 20 °C. */
  public FilmParameters withLiquidDiffusivity(double m2PerS) {
    var d = diffusion;
    return withDiffusion(
        new Diffusion(
            d.glassM2PerS,
            m2PerS,
            d.steepness,
            d.glassEnergyJPerMol,
            d.liquidEnergyJPerMol,
            d.waterFactor,
            d.retarderFactor,
            d.waterLoosening));
  }

  /** k, how early the resin loosens. */
  public FilmParameters withSteepness(double k) {
    var d = diffusion;
    return withDiffusion(
        new Diffusion(
            d.glassM2PerS,
            d.liquidM2PerS,
            k,
            d.glassEnergyJPerMol,
            d.liquidEnergyJPerMol,
            d.waterFactor,
            d.retarderFactor,
            d.waterLoosening));
  }

  /** Eg, J/mol. */
  public FilmParameters withGlassEnergy(double joulePerMol) {
    var d = diffusion;
    return withDiffusion(
        new Diffusion(
            d.glassM2PerS,
            d.liquidM2PerS,
            d.steepness,
            joulePerMol,
            d.liquidEnergyJPerMol,
            d.waterFactor,
            d.retarderFactor,
            d.waterLoosening));
  }

  /** Heat transfer in still air, W/(m² K). */
  public FilmParameters withStillAir(double wattPerM2K) {
    var s = surroundings;
    return withSurroundings(
        new Surroundings(
            s.woodConductivityWPerMK,
            s.woodDensityKgPerM3,
            s.woodHeatJPerKgK,
            wattPerM2K,
            s.plateLengthM,
            s.emissivity));
  }

  /** Conductivity of the wood across the board, W/(m K). */
  public FilmParameters withWoodConductivity(double wattPerMK) {
    var s = surroundings;
    return withSurroundings(
        new Surroundings(
            wattPerMK,
            s.woodDensityKgPerM3,
            s.woodHeatJPerKgK,
            s.stillAirWPerM2K,
            s.plateLengthM,
            s.emissivity));
  }

  /** Resin-water interaction. */
  public FilmParameters withChiWater(double chi) {
    var s = solution;
    return withSolution(
        new Solution(s.chiEthanol, chi, s.chiRetarder, s.spiritWater, s.crossTerm, s.resinGlassK));
  }

  /** Spirit-water interaction of the stability limit. */
  public FilmParameters withSpiritWater(double g) {
    var s = solution;
    return withSolution(
        new Solution(s.chiEthanol, s.chiWater, s.chiRetarder, g, s.crossTerm, s.resinGlassK));
  }

  /** Glass transition of the dry resin, K. */
  public FilmParameters withResinGlass(double kelvin) {
    var s = solution;
    return withSolution(
        new Solution(s.chiEthanol, s.chiWater, s.chiRetarder, s.spiritWater, s.crossTerm, kelvin));
  }

  /** The residue at which this person rubs out. */
  public FilmParameters withRubOutResidue(double residue) {
    var c = criteria;
    return withCriteria(
        new Criteria(
            c.touchXK,
            c.recoatXK,
            c.restedXK,
            c.dryHardXK,
            residue,
            c.wrapResidue,
            c.fullResidue,
            c.aboveRoomK,
            c.fromLastCoat));
  }
}
