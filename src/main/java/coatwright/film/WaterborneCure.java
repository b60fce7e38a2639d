package coatwright.film;

import coatwright.quantity.OutOfRange;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Resin particles in water: the water has to leave, then the particles have to flow together.
 *
 * <p>The water leaves by the same gas side as any solvent, the film standing at the temperature
 * where the heat of air, walls and wood balances the evaporation; t1 is the time its whole water
 * would need. Coalescence runs by a clock of its own, exp(−Ec/R (1/T − 1/293.15 K)) hours for every
 * hour; t2 is the coalescence time. A milestone is reached when so many t1 of water have left and
 * after that so many t2 have passed, and never before the milestone that comes first. Where the
 * film is colder than its minimum film-forming temperature (ISO 2115, ASTM D2354) when its water
 * has left, the particles stay apart and no milestone is reached.
 *
 * @param facts what all curing finishes have
 * @param coalescenceEnergyJPerMol Ec, J/mol, 10 000 to 150 000
 * @param coalescenceHours t2 at 20 °C, hours, 0.01 to 100
 * @param lowestFilmC minimum film-forming temperature, °C, −5 to 40
 * @param surface what the wet film exchanges with
 * @param goals what each milestone needs
 * @param recoatUntil after that a new coat no longer bonds unless the film is scuffed
 */
public record WaterborneCure(
    CureFacts facts,
    double coalescenceEnergyJPerMol,
    double coalescenceHours,
    double lowestFilmC,
    Surface surface,
    Map<Milestone, Goal> goals,
    Optional<Goal> recoatUntil)
    implements Curing {
  private static final ModelStamp STAMP = new ModelStamp("cure/waterborne", "1");

  /**
   * What a milestone needs.
   *
   * @param dryings t1, so many times the film's water at its evaporation, 0 to 20
   * @param coalescences t2, so many coalescence times after that, 0 to 100 000
   */
  public record Goal(double dryings, double coalescences) {
    public Goal {
      OutOfRange.check("share of the drying time", dryings, "", 0, 20);
      OutOfRange.check("share of the coalescence time", coalescences, "", 0, 1e5);
    }

    Goal times(double factor) {
      return new Goal(dryings * factor, coalescences * factor);
    }
  }

  /**
   * What the wet film exchanges heat with.
   *
   * @param woodWPerM2K conductance into the wood over the time it dries, W/(m² K), 0 to 100
   * @param stillAirWPerM2K convection without a draught, W/(m² K), 0.5 to 20
   * @param lengthM along the draught, m, 0.01 to 5
   * @param radiationWPerM2K from walls at air temperature, W/(m² K), 0 to 10
   */
  public record Surface(
      double woodWPerM2K, double stillAirWPerM2K, double lengthM, double radiationWPerM2K) {
    public Surface {
      OutOfRange.check("conductance into the wood", woodWPerM2K, "W/(m² K)", 0, 100);
      OutOfRange.check("still-air convection", stillAirWPerM2K, "W/(m² K)", 0.5, 20);
      OutOfRange.check("length along the draught", lengthM, "m", 0.01, 5);
      OutOfRange.check("radiation", radiationWPerM2K, "W/(m² K)", 0, 10);
    }
  }

  public WaterborneCure {
    OutOfRange.check("activation energy", coalescenceEnergyJPerMol, "J/mol", 10e3, 150e3);
    OutOfRange.check("coalescence time", coalescenceHours, "h", 0.01, 100);
    OutOfRange.check("minimum film-forming temperature", lowestFilmC, "°C", -5, 40);
    goals = CureChecks.complete(goals);
  }

  @Override
  public String family() {
    return "waterborne";
  }

  @Override
  public ModelStamp stamp() {
    return STAMP;
  }

  @Override
  public Set<Milestone> milestones() {
    return goals.keySet();
  }

  @Override
  public boolean hasLateEnd() {
    return recoatUntil.isPresent();
  }

  @Override
  public OptionalDouble potLifeH(double airTempC) {
    return OptionalDouble.empty();
  }

  /** Water a wet film holds, kg/m²; what is not solids is taken as water of 1000 kg/m³. */
  double waterKgPerM2(double wetFilmUm, double reducedPct) {
    return (wetFilmUm - facts.dryFilmUm(wetFilmUm, reducedPct)) * 1e-3;
  }

  double coalescenceRate(double tempC, double energyFactor) {
    return Arrhenius.factor(coalescenceEnergyJPerMol * energyFactor, tempC);
  }

  @Override
  public WaterborneCure fitted(StatedTimes stated) {
    double t1H =
        waterKgPerM2(stated.wetFilmUm(), 0)
            / (WetFilm.in(this, stated.tempC(), stated.rhPct() / 100, stated.tempC(), 0.1)
                    .waterKgPerM2S()
                * 3600);
    double t2H = coalescenceHours / coalescenceRate(stated.tempC(), 1);
    Map<Milestone, Double> hours = new EnumMap<>(Milestone.class);
    goals.forEach((m, g) -> hours.put(m, g.dryings() * t1H + g.coalescences() * t2H));
    Fitting fitting = new Fitting(Collections.unmodifiableMap(hours));
    stated.hours().forEach(fitting::given);
    Map<Milestone, Goal> fitted = new EnumMap<>(Milestone.class);
    fitting
        .thresholds()
        .forEach((m, h) -> fitted.put(m, goal(m).times(h / hours.getOrDefault(m, h))));
    Optional<Goal> until =
        recoatUntil.map(
            g ->
                g.times(
                    stated.recoatUntilH().isPresent()
                        ? stated.recoatUntilH().getAsDouble()
                            / (g.dryings() * t1H + g.coalescences() * t2H)
                        : fitting.middleFactor()));
    if (until.isEmpty() && stated.recoatUntilH().isPresent()) {
      until = Optional.of(new Goal(0, stated.recoatUntilH().getAsDouble() / t2H));
    }
    return new WaterborneCure(
        facts.withBasis(fitting.basis(stated)),
        coalescenceEnergyJPerMol,
        coalescenceHours,
        stated.lowestFilmC().orElse(lowestFilmC),
        surface,
        fitted,
        until);
  }

  Goal goal(Milestone milestone) {
    Goal goal = goals.get(milestone);
    if (goal == null) {
      throw new IllegalArgumentException("no goal for " + milestone);
    }
    return goal;
  }
}
