package coatwright.film;

import java.util.ArrayList;
import java.util.List;

/**
 * One thing an answer depends on and nobody knows exactly. A member of the ensemble stands so many
 * standard deviations along each.
 *
 * <p>Spreads of the model's constants: assumed, from the scatter of the facts they were fitted to
 * (diffusion constants, wood, surface) or from the trade's own differences (rub-out threshold).
 */
enum Axis {
  WET_FILM(true),
  CUT(true),
  STRENGTH(false),
  GLASS_DIFFUSIVITY(true),
  STEEPNESS(true),
  GLASS_ENERGY(false),
  LIQUID_DIFFUSIVITY(false),
  STILL_AIR(true),
  DRAUGHT(true),
  WOOD_CONDUCTIVITY(false),
  CHI_WATER(false),
  SPIRIT_WATER(false),
  RESIN_GLASS(false),
  OWN_THRESHOLD(true),
  AIR_TEMPERATURE(false),
  HUMIDITY(false),
  WOOD_TEMPERATURE(false),
  COMING_AIR(false),
  /** What this shop's films, and its eye, bear before they call it cloud; no run knows it. */
  CLOUDING_LIMIT(false);

  /** How solvents take to water is known ten times less well than how spirit does; assumed. */
  private static final double LACQUER_WATER = 10;

  static final double GLASS_ENERGY_LN = 0.15;
  static final double GLASS_DIFFUSIVITY_LN = 0.5;
  static final double OWN_THRESHOLD_LN = 0.35;

  /** Half of the 1.0 to 1.2 in which bloom turns from likely to certain, natural log; assumed. */
  static final double CLOUDING_LIMIT_LN = 0.06;

  /** Both sides are run; for the others one side is near enough to straight. */
  final boolean bothSides;

  Axis(boolean bothSides) {
    this.bothSides = bothSides;
  }

  /** Its place in the members' coordinates; lives in memory only. */
  @SuppressWarnings("EnumOrdinal")
  int index() {
    return ordinal();
  }

  /** Matters to a coat while it is wet and clouding, not to how a stack hardens. */
  boolean onlyWhileWet() {
    return this == STRENGTH
        || this == SPIRIT_WATER
        || this == WOOD_CONDUCTIVITY
        || this == WOOD_TEMPERATURE;
  }

  /** A parameter set and a job, the one run of them. */
  record Case(FilmParameters parameters, FilmJob job, double nowS) {}

  /** One standard deviation, in the axis' own unit; 0 = known. */
  double sd(Spreads s) {
    return switch (this) {
      case WET_FILM -> s.wetFilmLn();
      case CUT -> s.cutLn();
      case STRENGTH -> s.strengthPct();
      case GLASS_DIFFUSIVITY -> GLASS_DIFFUSIVITY_LN;
      case DRAUGHT -> 0.5;
      case STEEPNESS -> 0.06;
      case GLASS_ENERGY -> GLASS_ENERGY_LN;
      case LIQUID_DIFFUSIVITY -> 0.4;
      case STILL_AIR -> 0.25;
      case WOOD_CONDUCTIVITY -> 0.15;
      case CHI_WATER -> 0.03;
      case SPIRIT_WATER -> 0.05;
      case RESIN_GLASS -> 4;
      case OWN_THRESHOLD -> OWN_THRESHOLD_LN;
      case AIR_TEMPERATURE -> s.airTempK();
      case HUMIDITY -> s.rhPct();
      case WOOD_TEMPERATURE -> s.woodTempK();
      case COMING_AIR -> s.comingAirK();
      case CLOUDING_LIMIT -> CLOUDING_LIMIT_LN;
    };
  }

  /**
   * The case moved along the axis by so much of its own unit: a factor e^step for the logarithmic
   * ones, a difference for the others.
   *
   * @throws coatwright.quantity.OutOfRange where the model does not hold
   */
  Case moved(Case c, double step) {
    FilmParameters p = c.parameters();
    FilmJob job = c.job();
    double factor = Math.exp(step);
    return switch (this) {
      case WET_FILM, CUT, STRENGTH -> new Case(p, withCoats(job, step), c.nowS());
      case GLASS_DIFFUSIVITY ->
          with(c, p.withGlassDiffusivity(p.diffusion().glassM2PerS() * factor));
      case STEEPNESS -> with(c, p.withSteepness(p.diffusion().steepness() * factor));
      case GLASS_ENERGY -> with(c, p.withGlassEnergy(p.diffusion().glassEnergyJPerMol() * factor));
      case LIQUID_DIFFUSIVITY ->
          with(c, p.withLiquidDiffusivity(p.diffusion().liquidM2PerS() * factor));
      case STILL_AIR -> with(c, p.withStillAir(p.surroundings().stillAirWPerM2K() * factor));
      case WOOD_CONDUCTIVITY ->
          with(c, p.withWoodConductivity(p.surroundings().woodConductivityWPerMK() * factor));
      case CHI_WATER -> with(c, p.withChiWater(p.solution().chiWater() * factor));
      case SPIRIT_WATER ->
          with(
              c,
              p.medium() instanceof Medium.Lacquer l
                  ? p.withMedium(l.withWaterTimes(Math.exp(LACQUER_WATER * step)))
                  : p.withSpiritWater(p.solution().spiritWater() * factor));
      case RESIN_GLASS -> with(c, p.withResinGlass(p.solution().resinGlassK() + step));
      case OWN_THRESHOLD -> with(c, p.withRubOutResidue(p.criteria().rubOutResidue() * factor));
      case DRAUGHT -> with(c, AirCourses.withDraught(job.air(), job.air().draughtMPerS() * factor));
      case AIR_TEMPERATURE -> with(c, AirCourses.warmer(job.air(), step));
      case HUMIDITY -> with(c, AirCourses.damper(job.air(), step / 100));
      case WOOD_TEMPERATURE ->
          new Case(
              p,
              new FilmJob(
                  job.coats(),
                  job.air(),
                  job.woodTempC() + step,
                  job.boardThicknessMm(),
                  job.saturation()),
              c.nowS());
      case COMING_AIR ->
          with(c, AirCourses.warmerBetween(job.air(), c.nowS(), Double.POSITIVE_INFINITY, step));
      case CLOUDING_LIMIT -> c;
    };
  }

  private FilmJob withCoats(FilmJob job, double step) {
    List<LaidCoat> moved = new ArrayList<>();
    for (LaidCoat coat : job.coats()) {
      moved.add(
          switch (this) {
            case WET_FILM -> coat.withWetFilm(coat.wetFilmUm() * Math.exp(step));
            case CUT -> coat.withResinTimes(Math.exp(step));
            default -> coat.withStrengthMoved(step);
          });
    }
    return new FilmJob(moved, job.air(), job.woodTempC(), job.boardThicknessMm(), job.saturation());
  }

  private static Case with(Case c, FilmParameters parameters) {
    return new Case(parameters, c.job(), c.nowS());
  }

  private static Case with(Case c, AirCourse air) {
    FilmJob job = c.job();
    return new Case(
        c.parameters(),
        new FilmJob(job.coats(), air, job.woodTempC(), job.boardThicknessMm(), job.saturation()),
        c.nowS());
  }
}
