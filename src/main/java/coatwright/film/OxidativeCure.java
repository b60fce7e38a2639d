package coatwright.film;

import coatwright.quantity.OutOfRange;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Oil that hardens by taking up oxygen: oil varnish, and oil wiped on and off.
 *
 * <p>Its clock counts hours at 20 °C and 50 % RH: A = ∫ q dt with q = exp(−Ea/R (1/T − 1/293.15 K))
 * f(RH) (reference film / dry film)^n, and f = 1 − loss · ln(1 + exp((RH − onset)/width)), not
 * below its floor. Every milestone is a threshold on A. The form (first-order steps, one after the
 * other) is that of published linseed kinetics; the figures are assumed or common practice unless
 * the finish file says otherwise.
 *
 * @param facts what all curing finishes have
 * @param energyJPerMol Ea, J/mol, 20 000 to 120 000
 * @param damp how damp air slows it
 * @param referenceDryUm dry film the thresholds hold for, µm, 1 to 300
 * @param thicknessExponent n, 0 to 2
 * @param hours thresholds, hours at 20 °C and 50 % RH, in the order of the milestones
 * @param recoatUntilHours after that a new coat no longer bonds unless the film is scuffed, hours
 */
public record OxidativeCure(
    CureFacts facts,
    double energyJPerMol,
    Damp damp,
    double referenceDryUm,
    double thicknessExponent,
    Map<Milestone, Double> hours,
    OptionalDouble recoatUntilHours)
    implements Curing {
  private static final ModelStamp STAMP = new ModelStamp("cure/oxidative", "1");
  private static final double LONGEST_H = 24 * 365;

  /**
   * How damp air slows the uptake of oxygen; assumed, only the direction is published.
   *
   * @param onsetRhPct where it begins, per cent RH, 0 to 100
   * @param widthRhPct over how many points it sets in, 0.5 to 30
   * @param loss of the rate for every width beyond the onset, 0 to 1
   * @param floor what remains at least, 0.01 to 1
   */
  public record Damp(double onsetRhPct, double widthRhPct, double loss, double floor) {
    public Damp {
      OutOfRange.check("onset of damp", onsetRhPct, "%", 0, 100);
      OutOfRange.check("width of damp", widthRhPct, "%", 0.5, 30);
      OutOfRange.check("loss by damp", loss, "", 0, 1);
      OutOfRange.check("floor of damp", floor, "", 0.01, 1);
    }

    /** f(RH), RH as a fraction. */
    double factor(double rhFraction) {
      double over = (100 * rhFraction - onsetRhPct) / widthRhPct;
      return Math.max(floor, 1 - loss * Math.log1p(Math.exp(over)));
    }
  }

  public OxidativeCure {
    OutOfRange.check("activation energy", energyJPerMol, "J/mol", 20e3, 120e3);
    OutOfRange.check("reference film", referenceDryUm, "µm", 1, 300);
    OutOfRange.check("thickness exponent", thicknessExponent, "", 0, 2);
    hours = CureChecks.rising("h", hours, 1e-3, LONGEST_H);
    recoatUntilHours.ifPresent(
        h -> OutOfRange.check("late end of the recoat window", h, "h", 1e-3, LONGEST_H));
  }

  @Override
  public String family() {
    return "oxidative";
  }

  @Override
  public ModelStamp stamp() {
    return STAMP;
  }

  @Override
  public Set<Milestone> milestones() {
    return hours.keySet();
  }

  @Override
  public boolean hasLateEnd() {
    return recoatUntilHours.isPresent();
  }

  @Override
  public OptionalDouble potLifeH(double airTempC) {
    return OptionalDouble.empty();
  }

  /**
   * Hours of the film's clock an hour of this air is worth, for the reference film.
   *
   * @param tempC of the film, °C, −15 to 60
   * @param rhFraction 0 to 1
   */
  public double rate(double tempC, double rhFraction) {
    OutOfRange.check("film temperature", tempC, "°C", -15, 60);
    OutOfRange.check("relative humidity", rhFraction, "(fraction)", 0, 1);
    return rate(tempC, rhFraction, 1);
  }

  double rate(double tempC, double rhFraction, double energyFactor) {
    return Arrhenius.factor(energyJPerMol * energyFactor, tempC) * damp.factor(rhFraction);
  }

  /** By how much a dry film of that thickness slows the clock; 1 for the reference film. */
  double thicknessFactor(double dryUm) {
    return Math.pow(referenceDryUm / dryUm, thicknessExponent);
  }

  @Override
  public OxidativeCure fitted(StatedTimes stated) {
    double perHour =
        rate(stated.tempC(), stated.rhPct() / 100)
            * thicknessFactor(facts.dryFilmUm(stated.wetFilmUm(), 0));
    Fitting fitting = new Fitting(hours);
    stated.hours().forEach((milestone, h) -> fitting.given(milestone, h * perHour));
    Map<Milestone, Double> fitted = new EnumMap<>(fitting.thresholds());
    OptionalDouble until =
        stated.recoatUntilH().isPresent()
            ? OptionalDouble.of(stated.recoatUntilH().getAsDouble() * perHour)
            : Fitting.scaled(recoatUntilHours, fitting.middleFactor());
    return new OxidativeCure(
        facts.withBasis(fitting.basis(stated)),
        energyJPerMol,
        damp,
        referenceDryUm,
        thicknessExponent,
        fitted,
        until);
  }
}
