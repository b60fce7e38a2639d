package coatwright.mix;

import coatwright.mix.VapourLoad.Airing;
import coatwright.mix.VapourLoad.Part;
import coatwright.quantity.Figure;
import coatwright.quantity.Panel;
import coatwright.quantity.Panel.Scale;
import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import java.util.List;

/** Bench arithmetic as the register draws it. */
public final class MixFigure {
  private MixFigure() {}

  public static Figure figure() {
    return new Figure(
        "mixing",
        "Solids of a cut with points of a separate program, thinning beside a chart in circulation,"
            + " flow cups with printed examples, and ethanol in a room's air over its air changes",
        List.of(solids(), thinning(), cups(), vapour()));
  }

  private static Solution ofCut(double lb) {
    return Solution.ofSpirit(Cut.ofLbPerUsGal(lb), 1000, 95);
  }

  private static Panel solids() {
    Panel panel =
        new Panel(
            "Solids of a cut in 95 % spirit (dots: other program)",
            Scale.of("cut, lb per US gallon of spirit", 0, 5, 1), Scale.of("solids, %", 0, 45, 5));
    panel.curve(0, 0.05, 5, lb -> ofCut(lb).solidsMassPct());
    panel.curve(1, 0.05, 5, lb -> ofCut(lb).solidsVolumePct());
    for (Row row : ReferenceTable.read("mix/pound_cut.csv")) {
      boolean usual = row.number("shellac_sg_assumed") == 1.14 && MixChecks.strength(row) == 95;
      if (usual && row.number("cut_lb_per_gal_alcohol") <= 5) {
        double lb = row.number("cut_lb_per_gal_alcohol");
        panel.dot(0, lb, row.number("nonvolatile_mass_pct"));
        panel.dot(1, lb, row.number("volume_solids_pct_ideal"));
      }
    }
    return panel.word(0, 2.2, 33, "by weight").word(1, 3.1, 20.5, "by volume");
  }

  private static Panel thinning() {
    Panel panel =
        new Panel(
            "Thinning a cut (dots: a chart in circulation)",
            Scale.of("cut in hand, lb per US gallon", 1, 5, 1),
            Scale.of("parts of spirit to one of the cut", 0, 6, 1));
    double[] wanted = {0.5, 1, 2};
    for (int i = 0; i < wanted.length; i++) {
      Cut to = Cut.ofLbPerUsGal(wanted[i]);
      panel.curve(i, Math.max(1, wanted[i]), 5, lb -> parts(lb, to));
      panel.word(i, 4.05, parts(4.05, to) - 0.35, "to " + wanted[i] + " lb");
      for (Row row : ReferenceTable.read("mix/dilution.csv")) {
        if (row.number("target_cut") == wanted[i]) {
          panel.dot(i, row.number("existing_cut"), row.number("parts_alcohol_chart"));
        }
      }
    }
    return panel;
  }

  private static double parts(double lb, Cut to) {
    Solution mixture = Solution.ofVolume(Cut.ofLbPerUsGal(lb), 1000, 95);
    return (mixture.thinnedTo(to).spiritMl() - mixture.spiritMl()) / mixture.volumeMl();
  }

  private static Panel cups() {
    Panel panel =
        new Panel(
            "Flow cups in their ranges (dots: printed examples)",
            Scale.log("seconds", 20, 160, 20, 40, 80, 160),
            Scale.log("viscosity, mm²/s", 5, 1000, 10, 100, 1000));
    List<FlowCup> shown =
        List.of(FlowCup.ISO_3, FlowCup.ISO_4, FlowCup.ZAHN_2, FlowCup.FORD_4, FlowCup.DIN_4);
    for (int i = 0; i < shown.size(); i++) {
      FlowCup cup = shown.get(i);
      panel.curve(i, cup.shortestS(), cup.longestS(), cup::viscosityMm2PerS);
      for (Row row : ReferenceTable.read("mix/flow_cups_printed.csv")) {
        if (MixChecks.cup(row) == cup && !row.text("kind").equals("arithmetic")) {
          panel.dot(i, row.number("t_s"), row.number("nu_mm2_per_s"));
        }
      }
    }
    panel.word(0, 104, 39, "ISO 3 mm").word(1, 104, 126, "ISO 4 mm").word(2, 84, 222, "Zahn 2");
    return panel.word(3, 104, 345, "Ford 4").word(4, 82, 620, "DIN 4 mm");
  }

  private static Panel vapour() {
    Panel panel =
        new Panel(
            "100 mL of ethanol in an hour, 40 m³, evenly mixed",
            Scale.of("air changes an hour", 0, 10, 2),
            Scale.of("ethanol in the air, ppm", 0, 1200, 200));
    Part part = new Part(VapourLimits.ETHANOL, 100);
    VapourLoad load = new VapourLoad(List.of(part), 40, 20, 101_325);
    panel.curve(1, changes -> load.peakPpm(part, new Airing(changes, 1)));
    panel.curve(0, changes -> load.eightHourPpm(part, new Airing(changes, 1)));
    double limit = VapourLimits.ETHANOL.eightHourPpm();
    panel.dashed(5, 0, limit, 10, limit);
    panel.word(5, 4.2, limit + 25, "OSHA, NIOSH: 1000 ppm over 8 h");
    return panel.word(1, 2.2, 520, "at its highest").word(0, 1, 190, "mean of 8 h");
  }
}
