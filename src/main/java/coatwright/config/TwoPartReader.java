package coatwright.config;

import coatwright.film.CureFacts;
import coatwright.film.Drying;
import coatwright.film.Milestone;
import coatwright.film.TwoPartCure;
import coatwright.film.TwoPartCure.Network;
import coatwright.quantity.Quantities;
import java.util.Map;
import java.util.OptionalDouble;

/** Two parts that react. */
final class TwoPartReader implements DryingReader {
  private static final double ENERGY_J_PER_MOL = 55e3;
  private static final double RATE_PER_H = 0.1;
  private static final double POT_LIFE_H = 2;
  private static final double LEAST = 0.001;
  private static final double MOST = 0.995;
  private static final Network NETWORK = new Network(-40, 68, 0.45, 5, 4);

  /** Conversions; assumed. */
  private static final Map<Milestone, Double> SEEDS =
      Map.of(
          Milestone.DRY_TO_TOUCH, 0.45,
          Milestone.DRY_TO_RECOAT, 0.55,
          Milestone.DRY_HARD, 0.72,
          Milestone.RUB_OUT, 0.85,
          Milestone.WRAP, 0.86,
          Milestone.FULL_HARDNESS, 0.88);

  @Override
  public Drying read(Section file, ReferenceAir reference, BasisReader basis) {
    CureFacts facts = CureReader.facts(file, reference, basis, 45, false);
    basis.know(
        "energy",
        "rate",
        "pot-life",
        "glass-start",
        "glass-full",
        "glass-shape",
        "vitrifies-beyond",
        "vitrifies-within");
    Section cure = file.section("cure");
    double energy = CureReader.energyJPerMol(cure, "energy", ENERGY_J_PER_MOL);
    double rate = CureReader.perHour(cure, "rate", RATE_PER_H);
    double potLifeH = CureReader.hours(cure, "pot-life").orElse(POT_LIFE_H);
    double startC = cure.quantity("glass-start", -40.0, Quantities::temperatureC);
    double fullC = cure.quantity("glass-full", 68.0, Quantities::temperatureC);
    double shape = cure.number("glass-shape", NETWORK.lambda(), 0.05, 1);
    double beyondK = cure.quantity("vitrifies-beyond", 5.0, Quantities::temperatureStepK);
    double withinK = cure.quantity("vitrifies-within", 4.0, Quantities::temperatureStepK);
    cure.refuseOthers();
    Section thresholds = file.section(CureReader.THRESHOLDS);
    Map<Milestone, Double> conversions =
        CureReader.milestones(
            basis, SEEDS, (key, seed) -> thresholds.number(key, seed, LEAST, MOST));
    OptionalDouble until =
        thresholds.optional(CureReader.UNTIL).isPresent()
            ? OptionalDouble.of(thresholds.number(CureReader.UNTIL, 0.75, LEAST, MOST))
            : OptionalDouble.empty();
    thresholds.refuseOthers();
    TwoPartCure seeded =
        new TwoPartCure(
            facts,
            ENERGY_J_PER_MOL,
            RATE_PER_H,
            NETWORK,
            POT_LIFE_H,
            SEEDS,
            OptionalDouble.empty());
    TwoPartCure finish =
        CureReader.checked(
            file,
            file.has(CureReader.THRESHOLDS) ? CureReader.THRESHOLDS : "cure",
            seeded,
            () ->
                new TwoPartCure(
                    facts,
                    energy,
                    rate,
                    new Network(startC, fullC, shape, beyondK, withinK),
                    potLifeH,
                    conversions,
                    until));
    return CureReader.fitted(file, finish, true, false);
  }

  @Override
  public String usualLayer() {
    return "two-part";
  }
}
