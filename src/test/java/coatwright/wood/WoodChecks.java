package coatwright.wood;

import static coatwright.quantity.OutsideCheck.Kind.EQUATION;
import static coatwright.quantity.OutsideCheck.Kind.PRINTED;
import static coatwright.quantity.OutsideCheck.Kind.PROGRAM;

import coatwright.quantity.Deviation;
import coatwright.quantity.OutsideCheck;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import coatwright.wood.Board.Faces;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/** Wood against the handbook's tables and the textbook's solutions. */
public final class WoodChecks {
  private static final SpeciesTable TABLE = SpeciesTable.shipped();
  private static final String HANDBOOK = "Wood Handbook FPL-GTR-190";

  /** Incropera et al., 7th ed., Table 5.1, plane wall: Biot number, ζ₁, C₁. */
  static final double[][] PLANE_WALL = {
    {0.1, 0.3111, 1.0161}, {1, 0.8603, 1.1191}, {10, 1.4289, 1.2620}
  };

  static final Board VENEER = new Board(1, Faces.BOTH, 0.5, 8e5, 5);

  static final OutsideCheck MOISTURE_PRINTED =
      new OutsideCheck(
          PRINTED,
          "equilibrium moisture; one misprinted cell and those from memory left out",
          HANDBOOK + " Table 4-2",
          "30…130 °F, 5…90 %",
          0.06,
          "points",
          WoodChecks::moisturePrinted);

  static final OutsideCheck MOISTURE_WORKED =
      new OutsideCheck(
          PRINTED,
          "equilibrium moisture, worked value",
          HANDBOOK + ", 8.4 % at 140 °F and 55 %",
          "one state",
          0.05,
          "points",
          d -> d.add(EquilibriumMoisture.pct(60, 55), 8.4, "140 °F, 55 %"));

  static final OutsideCheck MOISTURE_BY_PROGRAM =
      new OutsideCheck(
          PROGRAM,
          "equilibrium moisture",
          "Simpson 1998 (FPL-RN-0268) by a separate program",
          "0…40 °C, 5…95 %",
          1e-4,
          "points",
          WoodChecks::moistureByProgram);

  static final OutsideCheck MOISTURE_EQUATION =
      new OutsideCheck(
          EQUATION,
          "equilibrium moisture",
          "Simpson 1998, coefficients as another reader copied them out",
          "0…60 °C, 5…95 %",
          1e-9,
          "points",
          WoodChecks::moistureEquation);

  static final OutsideCheck CONDUCTIVITY =
      new OutsideCheck(
          PROGRAM,
          "conductivity across the grain",
          HANDBOOK + " eq. 4-15 by a separate program",
          "gravity 0.35…0.68, 6…12 %",
          6e-6,
          "W/(m K)",
          d ->
              thermal(
                  d,
                  row ->
                      WoodThermal.conductivityWPerMK(
                          row.number("specific_gravity"), row.number("mc_pct")),
                  "k_across_W_per_mK"));

  static final OutsideCheck HEAT_CAPACITY =
      new OutsideCheck(
          PROGRAM,
          "heat capacity",
          HANDBOOK + " eq. 4-16, 4-17 by a separate program",
          "10…30 °C, 6…12 %",
          6e-6,
          "kJ/(kg K)",
          d ->
              thermal(
                  d,
                  row ->
                      WoodThermal.heatCapacityJPerKgK(row.number("t_C"), row.number("mc_pct"))
                          / 1000,
                  "cp_kJ_per_kgK"));

  static final OutsideCheck DENSITY =
      new OutsideCheck(
          PROGRAM,
          "density of moist wood",
          HANDBOOK + " by a separate program",
          "gravity 0.35…0.68, 6…12 %",
          0.006,
          "kg/m³",
          d ->
              thermal(
                  d,
                  row ->
                      WoodThermal.densityKgPerM3(
                          row.number("specific_gravity"), row.number("mc_pct")),
                  "density_kg_per_m3"));

  static final OutsideCheck HEAT_CAPACITY_WORKED =
      new OutsideCheck(
          PRINTED,
          "heat capacity, worked value",
          HANDBOOK + ", 1.91 kJ/(kg K) at 12 % and 340 K",
          "one state",
          0.005,
          "kJ/(kg K)",
          d -> d.add(WoodThermal.heatCapacityJPerKgK(340 - 273.15, 12) / 1000, 1.91, "340 K"));

  static final OutsideCheck DENSITY_WORKED =
      new OutsideCheck(
          PRINTED,
          "density of white ash, worked value",
          HANDBOOK + " ch. 4, 678 kg/m³",
          "12 %",
          0.6,
          "kg/m³",
          d -> d.add(WoodThermal.densityKgPerM3(0.605, 12), 678, "white ash"));

  static final OutsideCheck MOVEMENT_PRINTED =
      new OutsideCheck(
          PRINTED,
          "movement coefficients of 17 woods, both cuts",
          HANDBOOK + " Table 13-5, another reader's copy",
          "6…14 % moisture",
          0,
          "per %",
          WoodChecks::movementPrinted);

  static final OutsideCheck MOVEMENT_BY_SHRINKAGE =
      new OutsideCheck(
          PRINTED,
          "movement coefficients from the shrinkage of 13 woods, C = (S/30)/(1 − S·20/30)",
          HANDBOOK + " Table 4-3",
          "6…14 % moisture",
          2.5e-5,
          "per %",
          WoodChecks::movementByShrinkage);

  static final OutsideCheck MOVEMENT_WORKED =
      new OutsideCheck(
          PROGRAM,
          "movement of a board, worked examples",
          HANDBOOK + " eq. 13-2; one of a printed flooring table",
          "127…600 mm",
          6e-5,
          "mm",
          WoodChecks::movementWorked);

  static final OutsideCheck PLANE_WALL_ROOT =
      new OutsideCheck(
          PRINTED,
          "slowest mode of a plane wall, ζ₁",
          "Incropera et al., 7th ed., Table 5.1",
          "Bi 0.1, 1, 10",
          6e-5,
          "rad",
          WoodChecks::planeWallRoot);

  static final OutsideCheck WARMING =
      new OutsideCheck(
          PRINTED,
          "share of a change of air that a board's face has followed",
          "Incropera et al., 7th ed., Table 5.1 and eq. 5.43, 5.44",
          "Bi 0.1, 1, 10; Fourier 0.7…3",
          5e-4,
          "of the step",
          WoodChecks::warming);

  static final OutsideCheck LAG_ONE_TERM =
      new OutsideCheck(
          EQUATION,
          "face of a board in changed air, finite volumes",
          "Incropera et al. eq. 5.43, 5.44, one term",
          "20…100 mm, 20 K, Fourier from 0.4",
          0.01,
          "K",
          WoodChecks::lagOneTerm);

  static final OutsideCheck LAG_LUMPED =
      new OutsideCheck(
          EQUATION,
          "a thin veneer",
          "Incropera et al. eq. 5.6, lumped",
          "1 mm, 10 K",
          0.02,
          "K",
          WoodChecks::lagLumped);

  static final OutsideCheck LAG_HALF_SPACE =
      new OutsideCheck(
          EQUATION,
          "a thick slab's first two hours",
          "Carslaw & Jaeger, 2nd ed., § 2.7, half-space with surface resistance",
          "150 mm, 20 K",
          0.02,
          "K",
          WoodChecks::lagHalfSpace);

  static final OutsideCheck ERFC =
      new OutsideCheck(
          PRINTED,
          "exp(x²) erfc(x)",
          "Abramowitz & Stegun Table 7.1 and its continuation",
          "0…3",
          6e-8,
          "(a ratio)",
          WoodChecks::erfc);

  static final OutsideCheck HALF_TIME =
      new OutsideCheck(
          PRINTED,
          "time in which a board has taken up half its water, in L²/D",
          "Crank, 2nd ed., § 10.6: 0.049",
          "20 mm, both faces",
          5e-4,
          "L²/D",
          d ->
              d.add(
                  MoistureEqualising.days(20, Faces.BOTH, 1e-10, 0.5) * 86_400 * 1e-10 / 4e-4,
                  0.049,
                  "half way"));

  private WoodChecks() {}

  public static List<OutsideCheck> all() {
    return List.of(
        MOISTURE_PRINTED,
        MOISTURE_WORKED,
        MOISTURE_BY_PROGRAM,
        MOISTURE_EQUATION,
        CONDUCTIVITY,
        HEAT_CAPACITY,
        DENSITY,
        HEAT_CAPACITY_WORKED,
        DENSITY_WORKED,
        MOVEMENT_PRINTED,
        MOVEMENT_BY_SHRINKAGE,
        MOVEMENT_WORKED,
        PLANE_WALL_ROOT,
        WARMING,
        LAG_ONE_TERM,
        LAG_LUMPED,
        LAG_HALF_SPACE,
        ERFC,
        HALF_TIME);
  }

  /** A cell that was looked up and is no known misprint. */
  static boolean sound(Row row) {
    return row.text("basis").equals("looked up") && row.text("flag").isEmpty();
  }

  private static void moisturePrinted(Deviation d) {
    for (Row row : ReferenceTable.read("wood/emc_table.csv")) {
      if (sound(row)) {
        double tempC = (row.number("t_F") - 32) / 1.8;
        double ours = EquilibriumMoisture.pct(tempC, row.number("rh_pct"));
        d.add(ours, row.number("emc_table_pct"), row.cells());
      }
    }
  }

  private static void moistureByProgram(Deviation d) {
    for (Row row : ReferenceTable.read("wood/emc_equation_grid.csv")) {
      double ours = EquilibriumMoisture.pct(row.number("t_C"), row.number("rh_pct"));
      d.add(ours, row.number("emc_pct"), row.cells());
    }
  }

  private static void moistureEquation(Deviation d) {
    for (int tempC = 0; tempC <= 60; tempC += 5) {
      for (int rhPct = 5; rhPct <= 95; rhPct += 5) {
        d.add(
            EquilibriumMoisture.pct(tempC, rhPct),
            simpson("C", tempC, rhPct),
            tempC + " °C " + rhPct);
      }
    }
  }

  static double simpson(String unit, double temp, double rhPct) {
    double kh = coefficient(unit, "K", temp) * rhPct / 100;
    double k1 = coefficient(unit, "K1", temp);
    double k2 = coefficient(unit, "K2", temp);
    double first = k1 * kh;
    double second = k1 * k2 * kh * kh;
    return 1800
        / coefficient(unit, "W", temp)
        * (kh / (1 - kh) + (first + 2 * second) / (1 + first + second));
  }

  private static double coefficient(String unit, String symbol, double temp) {
    Row row =
        ReferenceTable.read("wood/emc_coefficients.csv").stream()
            .filter(r -> r.text("unit_of_T").equals(unit) && r.text("symbol").equals(symbol))
            .findFirst()
            .orElseThrow();
    return row.number("constant") + temp * (row.number("linear") + temp * row.number("quadratic"));
  }

  private interface OfRow {
    double apply(Row row);
  }

  private static void thermal(Deviation d, OfRow ours, String column) {
    for (Row row : ReferenceTable.read("wood/thermal_computed.csv")) {
      d.add(ours.apply(row), row.number(column), row.cells());
    }
  }

  /** The reference's names where ours differ. */
  private static final Map<String, String> OURS =
      Map.ofEntries(
          Map.entry("mahogany (genuine)", "genuine mahogany"),
          Map.entry("mahogany (African)", "african mahogany"),
          Map.entry("maple, sugar (hard)", "sugar maple"),
          Map.entry("maple, red (soft)", "red maple"),
          Map.entry("maple, silver (soft)", "silver maple"),
          Map.entry("white oak, commercial", "white oak"),
          Map.entry("red oak, commercial", "red oak"));

  static WoodSpecies ours(Row row) {
    String theirs = row.text("species");
    return TABLE.named(OURS.getOrDefault(theirs, theirs));
  }

  private static void movementPrinted(Deviation d) {
    for (Row row : ReferenceTable.read("wood/species.csv")) {
      if (row.text("dim_change_basis").equals("looked up")) {
        WoodSpecies wood = ours(row);
        d.add(
            wood.movementPerPct(Sawn.QUARTER),
            row.number("dim_change_radial_per_pct_mc"),
            row.cells());
        d.add(
            wood.movementPerPct(Sawn.FLAT),
            row.number("dim_change_tangential_per_pct_mc"),
            row.cells());
      }
    }
  }

  /**
   * Rows whose shrinkage is from memory, and the commercial groups, whose shrinkage row is of one
   * species, are left out.
   */
  private static void movementByShrinkage(Deviation d) {
    for (Row row : ReferenceTable.read("wood/species.csv")) {
      WoodSpecies wood = ours(row);
      boolean known = wood.tangentialPerPct().isPresent();
      if (known && row.text("shrink_basis").equals("looked up") && row.text("flag").isEmpty()) {
        d.add(wood.movementPerPct(Sawn.QUARTER), implied(row, "shrink_radial_pct"), row.cells());
        d.add(wood.movementPerPct(Sawn.FLAT), implied(row, "shrink_tangential_pct"), row.cells());
      }
    }
  }

  private static double implied(Row row, String column) {
    double shrinkage = row.number(column) / 100;
    return shrinkage / 30 / (1 - shrinkage * 20 / 30);
  }

  private static void movementWorked(Deviation d) {
    for (Row row : ReferenceTable.read("wood/movement_examples.csv")) {
      d.add(
          WoodMovement.changeMm(
              row.number("width_mm"),
              row.number("coefficient_per_pct"),
              row.number("mc_from_pct"),
              row.number("mc_to_pct")),
          row.number("change_mm"),
          row.cells());
    }
  }

  private static void planeWallRoot(Deviation d) {
    for (double[] printed : PLANE_WALL) {
      d.add(BoardLag.firstRoot(printed[0]), printed[1], "Bi " + printed[0]);
    }
  }

  /** A wall of that Biot number, its other figures those of wood. */
  static Board wall(double biot) {
    return new Board(40, Faces.BOTH, 0.15, 9e5, biot * 0.15 / 0.02);
  }

  static double secondsAt(Board board, double fourier) {
    return fourier
        * board.depthM()
        * board.depthM()
        * board.heatPerVolumeJPerM3K()
        / board.conductivityWPerMK();
  }

  /** What the one-term solution of the printed table leaves, good once the second term is gone. */
  static double oneTermShare(double[] printed, double fourier) {
    double zeta = printed[1];
    return 1 - printed[2] * Math.cos(zeta) * Math.exp(-zeta * zeta * fourier);
  }

  private static void warming(Deviation d) {
    for (double[] printed : PLANE_WALL) {
      Board board = wall(printed[0]);
      for (double fourier : new double[] {0.7, 1, 1.5, 2, 3}) {
        d.add(
            BoardWarming.faceShare(board, secondsAt(board, fourier)),
            oneTermShare(printed, fourier),
            "Bi " + printed[0] + " Fo " + fourier);
      }
    }
  }

  private static Board cherry(double thicknessMm, Faces faces) {
    return Board.ofWood(thicknessMm, faces, 0.5, 8);
  }

  private static double[] every(double stepS, int count) {
    double[] timesS = new double[count];
    for (int i = 0; i < count; i++) {
      timesS[i] = i * stepS;
    }
    return timesS;
  }

  private static double[] faceC(Board board, double[] timesS, double airC, double boardC) {
    double[] airTempsC = new double[timesS.length];
    Arrays.fill(airTempsC, airC);
    return BoardLag.surfaceTempsC(board, timesS, airTempsC, boardC);
  }

  /** First term of the series at the face, C₁ = 4 sin ζ / (2 ζ + sin 2 ζ). */
  private static void lagOneTerm(Deviation d) {
    for (Board board :
        List.of(
            cherry(20, Faces.BOTH),
            cherry(20, Faces.ONE),
            cherry(60, Faces.BOTH),
            cherry(100, Faces.ONE))) {
      double zeta = BoardLag.firstRoot(board.biot());
      double first = 4 * Math.sin(zeta) / (2 * zeta + Math.sin(2 * zeta));
      double tauS = BoardLag.timeConstantS(board);
      double[] timesS = every(tauS / 4, 17);
      double[] face = faceC(board, timesS, 25, 5);
      for (int i = 1; i < timesS.length; i++) {
        if (timesS[i] > secondsAt(board, 0.4)) {
          double left = first * Math.exp(-timesS[i] / tauS) * Math.cos(zeta);
          d.add(face[i], 25 - 20 * left, board.thicknessMm() + " mm, " + timesS[i] + " s");
        }
      }
    }
  }

  /** A thin veneer cools as exp(-h t / (ρ c L)). */
  private static void lagLumped(Deviation d) {
    Board veneer = VENEER;
    double tauS = veneer.heatPerVolumeJPerM3K() * 0.0005 / veneer.surfaceWPerM2K();
    double[] timesS = every(tauS / 5, 21);
    double[] face = faceC(veneer, timesS, 10, 20);
    for (int i = 0; i < timesS.length; i++) {
      d.add(face[i], 10 + 10 * Math.exp(-timesS[i] / tauS), timesS[i] + " s");
    }
  }

  /**
   * The face at time t has gone 1 - exp(x²) erfc(x) of the way, x = h √(α t) / k. A thick slab is a
   * half-space until heat reaches its back.
   */
  private static void lagHalfSpace(Deviation d) {
    Board slab = cherry(150, Faces.ONE);
    double[] timesS = every(300, 25);
    double[] face = faceC(slab, timesS, 25, 5);
    double diffusivity = slab.conductivityWPerMK() / slab.heatPerVolumeJPerM3K();
    for (int i = 1; i < timesS.length; i++) {
      double x =
          slab.surfaceWPerM2K() * Math.sqrt(diffusivity * timesS[i]) / slab.conductivityWPerMK();
      d.add(face[i], 5 + 20 * (1 - integratedErfc(x)), timesS[i] + " s");
    }
  }

  /** exp(x²) erfc(x) = 2/√π ∫₀^∞ exp(-u² - 2 x u) du, by Simpson's rule. */
  private static double integratedErfc(double x) {
    int intervals = 4000;
    double step = 8.0 / intervals;
    double sum = 1;
    for (int i = 1; i < intervals; i++) {
      double u = i * step;
      sum += (i % 2 == 0 ? 2 : 4) * Math.exp(-u * u - 2 * x * u);
    }
    return 2 / Math.sqrt(Math.PI) * sum * step / 3;
  }

  private static void erfc(Deviation d) {
    double[][] printed = {{0, 1}, {0.5, 0.6156903}, {1, 0.4275836}, {2, 0.2553957}, {3, 0.1790012}};
    for (double[] row : printed) {
      d.add(BoardWarming.scaledErfc(row[0]), row[1], "x " + row[0]);
    }
  }
}
