package coatwright.config;

import coatwright.film.CureFacts;
import coatwright.film.Drying;
import coatwright.film.Milestone;
import coatwright.film.OxidativeCure;
import coatwright.quantity.Quantities;
import java.util.Map;
import java.util.OptionalDouble;

/** Oil varnish, and oil that is wiped on and off. */
final class OxidativeReader implements DryingReader {
  private static final double ENERGY_J_PER_MOL = 60e3;

  /** Oil varnish at 20 °C, 50 % and 40 µm dry, hours; common practice, no source. */
  private static final Map<Milestone, Double> SEEDS =
      Map.of(
          Milestone.DRY_TO_TOUCH,
          6.0,
          Milestone.DRY_TO_RECOAT,
          24.0,
          Milestone.DRY_HARD,
          30.0,
          Milestone.RUB_OUT,
          14 * 24.0,
          Milestone.WRAP,
          20 * 24.0,
          Milestone.FULL_HARDNESS,
          28 * 24.0);

  private static final OxidativeCure.Damp DAMP = new OxidativeCure.Damp(65, 5, 0.0625, 0.2);

  @Override
  public Drying read(Section file, ReferenceAir reference, BasisReader basis) {
    CureFacts facts = CureReader.facts(file, reference, basis, 50, true);
    basis.know(
        "energy",
        "reference-film",
        "thickness-exponent",
        "damp-from",
        "damp-width",
        "damp-loss",
        "damp-floor");
    Section cure = file.section("cure");
    double energy = CureReader.energyJPerMol(cure, "energy", ENERGY_J_PER_MOL);
    double filmUm = cure.quantity("reference-film", 40.0, Quantities::lengthUm);
    double exponent = cure.number("thickness-exponent", 0.7, 0, 2);
    double dampFrom = cure.quantity("damp-from", 65.0, Quantities::relativeHumidityPct);
    double dampWidth = cure.quantity("damp-width", 5.0, Quantities::relativeHumidityPct);
    double dampLoss = cure.number("damp-loss", 0.0625, 0, 1);
    double dampFloor = cure.number("damp-floor", 0.2, 0.01, 1);
    cure.refuseOthers();
    Section thresholds = file.section(CureReader.THRESHOLDS);
    Map<Milestone, Double> hours =
        CureReader.milestones(
            basis, SEEDS, (key, seed) -> CureReader.hours(thresholds, key).orElse(seed));
    OptionalDouble until = CureReader.hours(thresholds, CureReader.UNTIL);
    thresholds.refuseOthers();
    OxidativeCure.Damp damp =
        CureReader.checked(
            file,
            "cure",
            DAMP,
            () -> new OxidativeCure.Damp(dampFrom, dampWidth, dampLoss, dampFloor));
    OxidativeCure seeded =
        new OxidativeCure(facts, ENERGY_J_PER_MOL, DAMP, 40, 0.7, SEEDS, OptionalDouble.empty());
    OxidativeCure finish =
        CureReader.checked(
            file,
            file.has(CureReader.THRESHOLDS) ? CureReader.THRESHOLDS : "cure",
            seeded,
            () -> new OxidativeCure(facts, energy, damp, filmUm, exponent, hours, until));
    return CureReader.fitted(file, finish, false, false);
  }

  @Override
  public String usualLayer() {
    return "oil varnish";
  }
}
