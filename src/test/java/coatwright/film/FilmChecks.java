package coatwright.film;

import static coatwright.quantity.OutsideCheck.Kind.EQUATION;
import static coatwright.quantity.OutsideCheck.Kind.OWN;
import static coatwright.quantity.OutsideCheck.Kind.PRINTED;

import coatwright.air.SaturationFunction;
import coatwright.quantity.Deviation;
import coatwright.quantity.OutsideCheck;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import java.util.List;

/**
 * The film against what stands outside it: the Arrhenius law of its clock, printed statistics, and,
 * not counted among the outside checks, our own prototype and what the trade says.
 */
public final class FilmChecks {
  private static final String LAW = "Arrhenius law, R = 8.314462618, by a separate program";

  static final OutsideCheck PACE =
      new OutsideCheck(
          EQUATION,
          "pace of the film's clock against 20 °C",
          LAW,
          "5…40 °C, 40…100 kJ/mol",
          5,
          "ppm",
          FilmChecks::pace);

  static final OutsideCheck TEN_DEGREES =
      new OutsideCheck(
          EQUATION,
          "how much ten degrees quicken it",
          LAW,
          "5…40 °C, 40…100 kJ/mol",
          1,
          "ppm",
          FilmChecks::tenDegrees);

  static final OutsideCheck DOUBLING =
      new OutsideCheck(
          EQUATION,
          "the energy at which ten degrees double it",
          "R ln 2/(1/T₁ − 1/T₂) by a separate program",
          "5…40 °C",
          2,
          "ppm",
          FilmChecks::doubling);

  static final OutsideCheck NORMAL =
      new OutsideCheck(
          PRINTED,
          "normal law, used to weigh the members",
          "Abramowitz & Stegun Table 26.1",
          "−1…3",
          1e-7,
          "(a chance)",
          FilmChecks::normal);

  static final OutsideCheck PROTOTYPE_MAP =
      new OutsideCheck(
          OWN,
          "clouding S over the weather, same four cells",
          "our own prototype",
          "12…36 °C, 30…95 %",
          0.002,
          "in S",
          FilmChecks::prototypeMap);

  static final OutsideCheck TRADE_RUB_OUT =
      new OutsideCheck(
          OWN,
          "rub-out of six coats; two parameters were fitted to these two days",
          "common practice, no source",
          "5 d at 15 °C, 3 d at 24 °C",
          2,
          "%",
          FilmChecks::tradeRubOut);

  private FilmChecks() {}

  public static List<OutsideCheck> all() {
    return List.of(PACE, TEN_DEGREES, DOUBLING, NORMAL, PROTOTYPE_MAP, TRADE_RUB_OUT);
  }

  private static double paceOf(double energyKjPerMol, double tempC) {
    AirCourse air = AirCourse.steady(tempC, 0.5, 0.1);
    return new EquivalentTime(air, 1000 * energyKjPerMol).at(1000) / 1000;
  }

  private static void pace(Deviation d) {
    for (Row row : ReferenceTable.read("kinetics/arrhenius_check.csv")) {
      double ours = paceOf(row.number("ea_kJ_per_mol"), row.number("t_C"));
      d.addPpm(ours, row.number("rate_ratio"), row.cells());
    }
  }

  private static void tenDegrees(Deviation d) {
    for (Row row : ReferenceTable.read("kinetics/arrhenius_check.csv")) {
      double energy = row.number("ea_kJ_per_mol");
      double tempC = row.number("t_C");
      double ours = paceOf(energy, tempC + 5) / paceOf(energy, tempC - 5);
      d.addPpm(ours, row.number("q10_at_midpoint"), row.cells());
    }
  }

  private static void doubling(Deviation d) {
    for (Row row : ReferenceTable.read("kinetics/doubling_energy.csv")) {
      double energy = row.number("ea_for_doubling_kJ_per_mol");
      double ours = paceOf(energy, row.number("t2_C")) / paceOf(energy, row.number("t1_C"));
      d.addPpm(ours, 2, row.cells());
    }
  }

  private static void normal(Deviation d) {
    double[][] printed = {
      {0, 0.5}, {1, 0.8413447461}, {2, 0.9772498681}, {-1, 0.1586552539}, {3, 0.9986501020}
    };
    for (double[] row : printed) {
      d.add(NormalLaw.below(row[0]), row[1], "z " + row[0]);
    }
  }

  private static void prototypeMap(Deviation d) {
    var fourCells = new SimulationOptions(4, 2.5, 1e-4, false, true, 2);
    var simulation = new FilmSimulation(FilmParameters.SHELLAC, fourCells);
    for (var row : ReferenceTable.read("film/shellac/blush_map.csv")) {
      var job =
          Jobs.job(
              List.of(Jobs.usualCoat()),
              row.number("T_C"),
              row.number("RH"),
              SaturationFunction.MAGNUS_WATER);
      double ours = simulation.run(job, 3600).lastCoat().peakS();
      d.add(ours, row.number("S_max"), row.cells());
    }
  }

  private static void tradeRubOut(Deviation d) {
    d.addPct(rubOutDays(15), 5, "15 °C");
    d.addPct(rubOutDays(24), 3, "24 °C");
  }

  static double rubOutDays(double airC) {
    var simulation = new FilmSimulation(FilmParameters.SHELLAC, SimulationOptions.DEFAULT);
    return simulation.run(Jobs.sixCoats(airC, 0.5), 8700 + 12 * Jobs.DAY_S).rubOutS().orElseThrow()
        / Jobs.DAY_S;
  }
}
