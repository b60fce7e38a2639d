package coatwright.film;

import coatwright.quantity.OutOfRange;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Two parts that react in the pot and in the film.
 *
 * <p>Conversion X: dX/dt = k(T) (1−X)² s, k by Arrhenius; s = 1/(1 + exp((Tg(X) − T −
 * offset)/width)) stops the reaction where the network's own glass transition passes the room's
 * temperature (vitrification), Tg(X) = (λ X Tg∞ + (1−X) Tg0)/(1 − (1−λ) X) after DiBenedetto. A
 * cold room stops it for good; heat starts it again. Milestones are thresholds on X. Every figure
 * is assumed unless the finish file says otherwise.
 *
 * @param facts what all curing finishes have
 * @param energyJPerMol Ea, J/mol, 20 000 to 120 000
 * @param ratePerHour k at 20 °C, 1/h, 1e-4 to 100
 * @param network how its glass transition rises
 * @param potLifeHours of the mixed pot at 20 °C, hours, 0.05 to 1440
 * @param conversions thresholds on X, 0.001 to 0.995, in the order of the milestones
 * @param recoatUntilConversion after that a new coat no longer bonds unless the film is scuffed
 */
public record TwoPartCure(
    CureFacts facts,
    double energyJPerMol,
    double ratePerHour,
    Network network,
    double potLifeHours,
    Map<Milestone, Double> conversions,
    OptionalDouble recoatUntilConversion)
    implements Curing {
  private static final ModelStamp STAMP = new ModelStamp("cure/two-part", "1");
  private static final double LEAST = 0.001;
  private static final double MOST = 0.995;

  /**
   * How the network stiffens.
   *
   * @param startGlassC Tg of the unreacted mix, °C, −120 to 20
   * @param fullGlassC Tg of the complete network, °C, 20 to 200
   * @param lambda DiBenedetto's shape, 0.05 to 1
   * @param offsetK so far past the room's temperature the reaction is at half its speed, K, −10 to
   *     40
   * @param widthK over how many kelvin it stops, K, 0.5 to 20
   */
  public record Network(
      double startGlassC, double fullGlassC, double lambda, double offsetK, double widthK) {
    public Network {
      OutOfRange.check("glass transition of the mix", startGlassC, "°C", -120, 20);
      OutOfRange.check("glass transition of the network", fullGlassC, "°C", 20, 200);
      OutOfRange.check("shape of the glass transition", lambda, "", 0.05, 1);
      OutOfRange.check("offset of vitrification", offsetK, "K", -10, 40);
      OutOfRange.check("width of vitrification", widthK, "K", 0.5, 20);
    }

    /**
     * Tg at a conversion, °C.
     *
     * @param conversion 0 to 1
     */
    public double glassC(double conversion) {
      OutOfRange.check("conversion", conversion, "", 0, 1);
      return (lambda * conversion * fullGlassC + (1 - conversion) * startGlassC)
          / (1 - (1 - lambda) * conversion);
    }

    /** s: the share of its speed that vitrification leaves, 0 to 1. */
    double mobility(double conversion, double tempC) {
      return 1 / (1 + Math.exp((glassC(conversion) - tempC - offsetK) / widthK));
    }

    /** d Tg / d X, K. */
    double glassSlope(double conversion) {
      double below = 1 - (1 - lambda) * conversion;
      return lambda * (fullGlassC - startGlassC) / (below * below);
    }
  }

  public TwoPartCure {
    OutOfRange.check("activation energy", energyJPerMol, "J/mol", 20e3, 120e3);
    OutOfRange.check("rate at 20 °C", ratePerHour, "1/h", 1e-4, 100);
    OutOfRange.check("pot life at 20 °C", potLifeHours, "h", 0.05, 1440);
    conversions = CureChecks.rising("", conversions, LEAST, MOST);
    recoatUntilConversion.ifPresent(
        x -> OutOfRange.check("late end of the recoat window", x, "", LEAST, MOST));
  }

  @Override
  public String family() {
    return "two-part";
  }

  @Override
  public ModelStamp stamp() {
    return STAMP;
  }

  @Override
  public Set<Milestone> milestones() {
    return conversions.keySet();
  }

  @Override
  public boolean hasLateEnd() {
    return recoatUntilConversion.isPresent();
  }

  @Override
  public OptionalDouble potLifeH(double airTempC) {
    OutOfRange.check("air temperature", airTempC, "°C", -5, 45);
    return OptionalDouble.of(potLifeHours / Arrhenius.factor(energyJPerMol, airTempC));
  }

  /** k, 1/h. */
  double ratePerHour(double tempC, double energyFactor) {
    return ratePerHour * Arrhenius.factor(energyJPerMol * energyFactor, tempC);
  }

  /**
   * The rate is moved by the middle factor first, so that the thresholds stay where the network
   * still moves; then each stated time sets its own threshold.
   */
  @Override
  public TwoPartCure fitted(StatedTimes stated) {
    Conversion steady = Conversion.steady(this, stated.tempC());
    double lnFactor = 0;
    int counted = 0;
    for (Map.Entry<Milestone, Double> s : stated.hours().entrySet()) {
      double modelH = steady.hoursTo(conversion(s.getKey()));
      if (Double.isFinite(modelH)) {
        lnFactor += Math.log(s.getValue() / modelH);
        counted++;
      }
    }
    double factor = counted > 0 ? Math.exp(lnFactor / counted) : 1;
    TwoPartCure faster = withRate(ratePerHour / factor);
    Conversion moved = Conversion.steady(faster, stated.tempC());
    Fitting fitting = new Fitting(conversions);
    stated.hours().forEach((m, h) -> fitting.given(m, moved.after(h)));
    Map<Milestone, Double> fitted = new EnumMap<>(Milestone.class);
    fitting.unmoved().forEach(fitted::put);
    OptionalDouble until =
        stated.recoatUntilH().isPresent()
            ? OptionalDouble.of(moved.after(stated.recoatUntilH().getAsDouble()))
            : recoatUntilConversion;
    double potH =
        stated.potLifeH().isPresent()
            ? stated.potLifeH().getAsDouble() * Arrhenius.factor(energyJPerMol, stated.tempC())
            : potLifeHours * factor;
    return new TwoPartCure(
        facts.withBasis(fitting.basis(stated)),
        energyJPerMol,
        faster.ratePerHour,
        network,
        potH,
        fitted,
        until);
  }

  private TwoPartCure withRate(double perHour) {
    return new TwoPartCure(
        facts, energyJPerMol, perHour, network, potLifeHours, conversions, recoatUntilConversion);
  }

  double conversion(Milestone milestone) {
    Double x = conversions.get(milestone);
    if (x == null) {
      throw new IllegalArgumentException("no threshold for " + milestone);
    }
    return x;
  }
}
