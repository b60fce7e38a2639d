package coatwright.mix;

import static coatwright.quantity.OutsideCheck.Kind.PRINTED;
import static coatwright.quantity.OutsideCheck.Kind.PROGRAM;

import coatwright.quantity.Conversions;
import coatwright.quantity.Deviation;
import coatwright.quantity.OutsideCheck;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import coatwright.solvent.EthanolWaterDensity;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** Bench arithmetic against printed tables and separate programs. */
public final class MixChecks {
  static final double FT2_PER_GAL = Conversions.ML_PER_US_GAL / 1000 / Conversions.M2_PER_FT2;

  private static final String EXACT_UNITS =
      "ideal mixing from the exact units by a separate program";
  private static final String CUTS = "0.5…5 lb, two strengths, three resins";

  static final OutsideCheck SOLIDS_BY_MASS =
      new OutsideCheck(
          PROGRAM,
          "solids by weight of a cut",
          EXACT_UNITS,
          CUTS,
          0.001,
          "% by weight",
          d -> cuts(d, Solution::solidsMassPct, "nonvolatile_mass_pct"));

  static final OutsideCheck SOLIDS_BY_VOLUME =
      new OutsideCheck(
          PROGRAM,
          "solids by volume of a cut",
          EXACT_UNITS,
          CUTS,
          0.00051,
          "% by volume",
          d -> cuts(d, Solution::solidsVolumePct, "volume_solids_pct_ideal"));

  static final OutsideCheck MIXTURE_DENSITY =
      new OutsideCheck(
          PROGRAM,
          "density of a cut",
          EXACT_UNITS,
          CUTS,
          0.06,
          "g/L",
          d -> cuts(d, Solution::densityKgPerM3, "density_mixture_g_per_L_ideal"));

  static final OutsideCheck SWELL =
      new OutsideCheck(
          PROGRAM,
          "volume of the mixture from a litre of spirit",
          EXACT_UNITS,
          CUTS,
          5.1e-5,
          "L",
          d -> cuts(d, mixture -> mixture.volumeMl() / 1000, "mixture_L_per_L_alcohol_ideal"));

  static final OutsideCheck FLAKES =
      new OutsideCheck(
          PROGRAM,
          "flakes for a volume of spirit",
          EXACT_UNITS,
          "a cup to a gallon",
          0.0011,
          "g",
          MixChecks::flakes);

  static final OutsideCheck WORKSHOP_CHART =
      new OutsideCheck(
          PRINTED,
          "flakes for a volume of spirit",
          "a printed workshop mixing chart",
          "a cup to a gallon, 1…5 lb",
          1e-9,
          "oz",
          MixChecks::workshopChart);

  static final OutsideCheck THINNING =
      new OutsideCheck(
          PROGRAM,
          "spirit to thin a cut, parts to one, two resin densities",
          EXACT_UNITS,
          "0.5…5 lb",
          0.00051,
          "parts",
          MixChecks::thinning);

  static final OutsideCheck THINNING_CHART =
      new OutsideCheck(
          PRINTED,
          "spirit to thin a cut; three doubtful cells left out by name",
          "a chart in circulation, once printed in a magazine",
          "0.5…5 lb",
          15,
          "% of the parts or of 0.3",
          MixChecks::thinningChart);

  static final OutsideCheck CUT_OF_SOLIDS =
      new OutsideCheck(
          PROGRAM,
          "cut from solids by weight",
          EXACT_UNITS,
          "5…45 %, two strengths",
          0.003,
          "%",
          MixChecks::cutOfSolids);

  static final OutsideCheck WEIGHINGS =
      new OutsideCheck(
          PROGRAM,
          "share that stays, from three weighings",
          "principle of ISO 3251 by a separate program",
          "four samples",
          0.000051,
          "% by weight",
          MixChecks::weighings);

  static final OutsideCheck COVERAGE =
      new OutsideCheck(
          PROGRAM,
          "coverage of a film",
          "volume balance by a separate program",
          "5…50 % solids",
          0.000051,
          "m²/L",
          MixChecks::coverage);

  static final OutsideCheck WET_FILM =
      new OutsideCheck(
          PROGRAM,
          "wet film for a dry one",
          "volume balance by a separate program",
          "5…50 % solids",
          0.00051,
          "µm",
          MixChecks::wetFilm);

  static final OutsideCheck COVERAGE_PRINTED =
      new OutsideCheck(
          PRINTED,
          "coverage and wet film; two figures that contradict themselves left out",
          "published coating guides and coverage tables",
          "35…100 % solids",
          0.3,
          "%",
          MixChecks::coveragePrinted);

  static final OutsideCheck CUPS =
      new OutsideCheck(
          PROGRAM,
          "viscosity from a cup's time",
          "equations of ISO 2431, DIN 53211, ASTM D1200 and D4212, as quoted, by a separate"
              + " program",
          "each cup's own range",
          0.000051,
          "mm²/s",
          MixChecks::cups);

  static final OutsideCheck CUPS_WORKED =
      new OutsideCheck(
          PRINTED,
          "viscosity from a cup's time",
          "worked examples of a public calculation library",
          "four cups",
          1e-4,
          "mm²/s",
          d -> cupsPrinted(d, true));

  static final OutsideCheck CUPS_OILS =
      new OutsideCheck(
          PRINTED,
          "a cup's time from viscosity; theirs is in whole seconds",
          "a viscosity standard's table of reference oils",
          "Ford 4, Zahn 2",
          0.7,
          "s",
          d -> cupsPrinted(d, false));

  static final OutsideCheck PROOF =
      new OutsideCheck(
          PROGRAM,
          "US proof, twice the strength at 60 °F",
          "OIML R 22 (1975) by a separate program",
          "0…200 proof",
          0.0005,
          "proof",
          MixChecks::proof);

  static final OutsideCheck PPM =
      new OutsideCheck(
          PROGRAM,
          "weight of a part per million",
          "ideal gas by a separate program",
          "25 °C, 1 atm",
          0.01,
          "%",
          MixChecks::ppm);

  static final OutsideCheck SHRINKAGE =
      new OutsideCheck(
          PROGRAM,
          "volume of 100 g of half and half",
          "OIML R 22 (1975) by a separate program",
          "50 % by volume",
          0.001,
          "mL",
          MixChecks::shrinkage);

  private MixChecks() {}

  public static List<OutsideCheck> all() {
    return List.of(
        SOLIDS_BY_MASS,
        SOLIDS_BY_VOLUME,
        MIXTURE_DENSITY,
        SWELL,
        FLAKES,
        WORKSHOP_CHART,
        THINNING,
        THINNING_CHART,
        CUT_OF_SOLIDS,
        WEIGHINGS,
        COVERAGE,
        WET_FILM,
        COVERAGE_PRINTED,
        CUPS,
        CUPS_WORKED,
        CUPS_OILS,
        PROOF,
        SHRINKAGE,
        PPM);
  }

  static double strength(Row row) {
    return row.text("alcohol").startsWith("95") ? 95 : 100;
  }

  private static void cuts(Deviation d, ToDoubleFunction<Solution> ours, String column) {
    for (Row row : ReferenceTable.read("mix/pound_cut.csv")) {
      d.add(ours.applyAsDouble(mixture(row)), row.number(column), row.cells());
    }
  }

  static Solution mixture(Row row) {
    Cut cut = Cut.ofLbPerUsGal(row.number("cut_lb_per_gal_alcohol"));
    return Solution.ofSpirit(cut, 1000, strength(row))
        .withResin(1000 * row.number("shellac_sg_assumed"));
  }

  private static void flakes(Deviation d) {
    for (Row row : ReferenceTable.read("mix/mixing_table.csv")) {
      Cut cut = Cut.ofLbPerUsGal(row.number("cut_lb_per_gal"));
      double ours = Solution.ofSpirit(cut, row.number("alcohol_mL"), 95).flakesG();
      d.add(ours, row.number("flakes_g"), row.cells());
    }
  }

  private static void workshopChart(Deviation d) {
    for (Row row : ReferenceTable.read("mix/mixing_chart_printed.csv")) {
      double spiritMl =
          switch (row.text("alcohol_volume")) {
            case "1 gallon" -> 3785.411784;
            case "1/2 gallon" -> 3785.411784 / 2;
            case "1 quart" -> 3785.411784 / 4;
            case "1 pint" -> 3785.411784 / 8;
            case "1 cup" -> 3785.411784 / 16;
            default -> throw new IllegalArgumentException(row.toString());
          };
      Cut cut = Cut.ofLbPerUsGal(row.number("cut_lb_per_gal"));
      double flakesG = Solution.ofSpirit(cut, spiritMl, 95).flakesG();
      d.add(flakesG / 28.349523125, row.number("flakes_oz"), row.cells());
    }
  }

  private static Cut from(Row row) {
    return Cut.ofLbPerUsGal(row.number("existing_cut"));
  }

  private static double parts(Solution mixture, Row row) {
    Cut to = Cut.ofLbPerUsGal(row.number("target_cut"));
    return (mixture.thinnedTo(to).spiritMl() - mixture.spiritMl()) / mixture.volumeMl();
  }

  private static void thinning(Deviation d) {
    for (Row row : ReferenceTable.read("mix/dilution.csv")) {
      Solution usual = Solution.ofVolume(from(row), 1000, 95);
      Solution denser = Solution.ofSpirit(from(row), 1000, 95).withResin(1200);
      d.add(parts(usual, row), row.number("parts_alcohol_computed_sg1.14"), row.cells());
      d.add(parts(denser, row), row.number("parts_alcohol_computed_sg1.20"), row.cells());
    }
  }

  private static void thinningChart(Deviation d) {
    for (Row row : ReferenceTable.read("mix/dilution.csv")) {
      if (row.text("doubtful").equals("no")) {
        double ours = parts(Solution.ofVolume(from(row), 1000, 95), row);
        double base = Math.max(ours, 0.3);
        d.add(100 * ours / base, 100 * row.number("parts_alcohol_chart") / base, row.cells());
      }
    }
  }

  private static void cutOfSolids(Deviation d) {
    for (Row row : ReferenceTable.read("mix/nonvolatile_to_cut.csv")) {
      Cut cut = Cut.ofSolidsMassPct(row.number("nonvolatile_mass_pct"), strength(row));
      d.addPct(cut.gPerL(), row.number("flakes_g_per_L_alcohol"), row.cells());
    }
  }

  private static void weighings(Deviation d) {
    for (Row row : ReferenceTable.read("mix/nonvolatile_weighing.csv")) {
      DriedSample sample =
          DriedSample.inDish(row.number("m0_g"), row.number("m1_g"), row.number("m2_g"));
      d.add(sample.solidsMassPct(), row.number("nonvolatile_mass_pct"), row.cells());
    }
  }

  private static void coverage(Deviation d) {
    for (Row row : ReferenceTable.read("mix/film_thickness.csv")) {
      double solids = row.number("volume_solids_pct") / 100;
      double ours = FilmBuild.coverageM2PerL(row.number("dry_um"), solids);
      d.add(ours, row.number("coverage_m2_per_L"), row.cells());
    }
  }

  private static void wetFilm(Deviation d) {
    for (Row row : ReferenceTable.read("mix/film_thickness.csv")) {
      double solids = row.number("volume_solids_pct") / 100;
      d.add(FilmBuild.wetFilmUm(row.number("dry_um"), solids), row.number("wet_um"), row.cells());
    }
  }

  /** Ours for a printed figure, in its own unit. */
  static double ofPrinted(Row row) {
    double solids = row.number("volume_solids_pct") / 100;
    double dryUm = row.number("dry") * (row.text("unit").equals("mil") ? 25.4 : 1);
    double thinned =
        row.text("case").startsWith("thinned")
            ? FilmBuild.thinnedSolidsFraction(solids, 10)
            : solids;
    return switch (row.text("result_unit")) {
      case "ft2/gal" -> FilmBuild.coverageM2PerL(dryUm, solids) * FT2_PER_GAL;
      case "m2/L" -> FilmBuild.coverageM2PerL(dryUm, solids);
      default -> FilmBuild.wetFilmUm(dryUm, thinned) / 25.4;
    };
  }

  private static void coveragePrinted(Deviation d) {
    for (Row row : ReferenceTable.read("mix/film_thickness_printed.csv")) {
      if (row.text("doubtful").equals("no")) {
        d.addPct(ofPrinted(row), row.number("result"), row.cells());
      }
    }
  }

  static FlowCup cup(Row row) {
    String name = row.text("cup").toLowerCase(Locale.ROOT);
    String word =
        name.replaceFirst("^iso 2431 (\\d) mm$", "iso$1")
            .replaceFirst("^din 53211 4 mm$", "din4")
            .replaceFirst("^astm d\\d+ ", "")
            .replace(" #", "");
    return FlowCup.named(word).orElseThrow(() -> new IllegalArgumentException(name));
  }

  private static void cups(Deviation d) {
    for (Row row : ReferenceTable.read("mix/flow_cups_grid.csv")) {
      if (row.text("in_range").equals("yes")) {
        double ours = cup(row).viscosityMm2PerS(row.number("t_s"));
        d.add(ours, row.number("nu_mm2_per_s"), row.cells());
      }
    }
  }

  private static void cupsPrinted(Deviation d, boolean worked) {
    for (Row row : ReferenceTable.read("mix/flow_cups_printed.csv")) {
      double viscosity = row.number("nu_mm2_per_s");
      if (worked && row.text("kind").equals("worked example")) {
        d.add(cup(row).viscosityMm2PerS(row.number("t_s")), viscosity, row.cells());
      } else if (!worked && row.text("kind").startsWith("reference-oil")) {
        d.add(cup(row).seconds(viscosity).orElseThrow(), row.number("t_s"), row.cells());
      }
    }
  }

  private static void proof(Deviation d) {
    for (Row row : ReferenceTable.read("solvent/strength_at_60F.csv")) {
      double at20 = Math.min(100, EthanolWaterDensity.volumePct(row.number("mass_pct") / 100));
      d.add(2 * Spirit.strengthAtProofTemperature(at20), row.number("us_proof"), row.cells());
    }
  }

  /** The masses that make 50 % out of pure ethanol and water are 42.4257 to 57.5743. */
  private static void shrinkage(Deviation d) {
    Spirit ethanol = new Spirit(42.4257 * 1000 / 789.2391, 100);
    Spirit water = new Spirit(57.5743 * 1000 / 998.20123, 0);
    d.add(ethanol.with(water).volumeMl(), 100_000 / 930.142, "half and half");
  }

  private static void ppm(Deviation d) {
    for (Row row : ReferenceTable.read("mix/ppm_to_mg.csv")) {
      double ours =
          VapourLimits.named(row.text("solvent")).orElseThrow().mgPerM3PerPpm(25, 101_325);
      d.addPct(ours, row.number("mg_per_m3_per_ppm_25C_1atm"), row.cells());
    }
  }
}
