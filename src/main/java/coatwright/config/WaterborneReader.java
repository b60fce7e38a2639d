package coatwright.config;

import coatwright.film.CureFacts;
import coatwright.film.Drying;
import coatwright.film.Milestone;
import coatwright.film.WaterborneCure;
import coatwright.film.WaterborneCure.Goal;
import coatwright.film.WaterborneCure.Surface;
import coatwright.quantity.Quantities;
import java.util.Map;
import java.util.Optional;

/** Resin particles in water. */
final class WaterborneReader implements DryingReader {
  private static final double ENERGY_J_PER_MOL = 55e3;
  private static final double COALESCENCE_H = 0.5;
  private static final double LOWEST_FILM_C = 8;
  private static final Surface SURFACE = new Surface(6, 3.0, 0.3, 5.1);

  /** Shares of drying and coalescence time; assumed. */
  private static final Map<Milestone, Goal> SEEDS =
      Map.of(
          Milestone.DRY_TO_TOUCH, new Goal(0.9, 0.1),
          Milestone.DRY_TO_RECOAT, new Goal(1.15, 2),
          Milestone.DRY_HARD, new Goal(1.3, 3),
          Milestone.RUB_OUT, new Goal(1.3, 144),
          Milestone.WRAP, new Goal(1.3, 240),
          Milestone.FULL_HARDNESS, new Goal(0, 336));

  @Override
  public Drying read(Section file, ReferenceAir reference, BasisReader basis) {
    CureFacts facts = CureReader.facts(file, reference, basis, 33, false);
    basis.know("energy", "coalescence", "mfft", "wood-conductance");
    Section cure = file.section("cure");
    double energy = CureReader.energyJPerMol(cure, "energy", ENERGY_J_PER_MOL);
    double coalescenceH = CureReader.hours(cure, "coalescence").orElse(COALESCENCE_H);
    double lowestC = cure.quantity("mfft", LOWEST_FILM_C, Quantities::temperatureC);
    double woodWPerM2K = cure.number("wood-conductance", SURFACE.woodWPerM2K(), 0, 100);
    cure.refuseOthers();
    Section thresholds = file.section(CureReader.THRESHOLDS);
    Map<Milestone, Goal> goals =
        CureReader.milestones(basis, SEEDS, (key, seed) -> goal(thresholds, key, seed));
    Optional<Goal> until =
        thresholds.has(CureReader.UNTIL) && thresholds.isSection(CureReader.UNTIL)
            ? Optional.of(goal(thresholds, CureReader.UNTIL, new Goal(0, 0)))
            : none(thresholds);
    thresholds.refuseOthers();
    WaterborneCure seeded =
        new WaterborneCure(
            facts,
            ENERGY_J_PER_MOL,
            COALESCENCE_H,
            LOWEST_FILM_C,
            SURFACE,
            SEEDS,
            Optional.empty());
    WaterborneCure finish =
        CureReader.checked(
            file,
            "cure",
            seeded,
            () ->
                new WaterborneCure(
                    facts,
                    energy,
                    coalescenceH,
                    lowestC,
                    new Surface(
                        woodWPerM2K,
                        SURFACE.stillAirWPerM2K(),
                        SURFACE.lengthM(),
                        SURFACE.radiationWPerM2K()),
                    goals,
                    until));
    return CureReader.fitted(file, finish, false, true);
  }

  private static Optional<Goal> none(Section thresholds) {
    if (thresholds.optional(CureReader.UNTIL).isPresent()) {
      thresholds.fault(
          CureReader.UNTIL,
          "shares of drying and coalescence are expected, or none",
          "write it like {drying: 1.15, coalescence: 144}");
    }
    return Optional.empty();
  }

  private static Goal goal(Section thresholds, String key, Goal seed) {
    if (!thresholds.has(key)) {
      // Asked all the same, so that the key is known.
      thresholds.section(key);
      return seed;
    }
    Section shares = thresholds.section(key);
    double dryings = shares.number("drying", seed.dryings(), 0, 20);
    double coalescences = shares.number("coalescence", seed.coalescences(), 0, 1e5);
    shares.refuseOthers();
    return new Goal(dryings, coalescences);
  }

  @Override
  public String usualLayer() {
    return "waterborne";
  }
}
