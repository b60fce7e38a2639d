package coatwright.film;

import coatwright.quantity.Figure;
import coatwright.quantity.Panel;
import coatwright.quantity.Panel.Scale;
import java.util.ArrayList;
import java.util.List;

/** How honest the ranges are and what tests do to them, as the register draws it. */
public final class RangeFigure {
  private static final Spreads READ_IN_THE_SHOP = new Spreads(0.2, 0.07, 0.3, 0.3, 2, 0.5, 1);

  private RangeFigure() {}

  public static Figure figure() {
    return new Figure(
        "range",
        "The share of 500 invented shops whose truth lay within the 80 % range, for eleven dates"
            + " and figures, beside the band that is asked; and the range of days to rub-out over"
            + " temperature",
        List.of(coverage(), overTemperature()));
  }

  private static Panel coverage() {
    List<Coverage.Share> all = new ArrayList<>(Coverage.ofSixCoats());
    all.addAll(Coverage.ofTheNextPart());
    all.addAll(Coverage.ofOneCoat());
    Panel panel =
        new Panel(
            "500 invented shops: truths within the 80 % range",
            Scale.of("% of the shops", 60, 90, 5),
            new Scale("one line, one date or figure", 0, all.size() + 1, false, List.of()));
    panel.cell("#e3eff7", 75, 0, 85, all.size() + 1).dashed(5, 80, 0, 80, all.size() + 1);
    for (int i = 0; i < all.size(); i++) {
      double y = all.size() - i;
      panel.dot(1, 100 * all.get(i).within(), y);
      panel.word(5, 60.4, y - 0.15, WORDS.get(i));
    }
    return panel;
  }

  /** In the order of the tallies. */
  private static final List<String> WORDS =
      List.of(
          "six coats: rub-out",
          "wrap",
          "full hardness",
          "rub-out, two tests",
          "a shop's fifth part",
          "the same, two tests",
          "one coat: S",
          "film over dew point",
          "open time",
          "touch",
          "recoat");

  private static Panel overTemperature() {
    Panel panel =
        new Panel(
            "Six coats: p10, p50, p90 (dots: common practice)",
            Scale.of("air, °C", 12, 26, 2),
            Scale.log("days to rub-out", 0.5, 20, 0.5, 1, 2, 5, 10, 20));
    List<double[]> p10 = new ArrayList<>();
    List<double[]> p50 = new ArrayList<>();
    List<double[]> p90 = new ArrayList<>();
    for (int airC = 12; airC <= 26; airC++) {
      EnsembleJob job =
          EnsembleJob.untested(FilmParameters.SHELLAC, Jobs.sixCoats(airC, 0.5), READ_IN_THE_SHOP);
      Percentiles days = Ensemble.predict(job).milestone(Milestone.RUB_OUT);
      p10.add(new double[] {airC, days.p10().orElseThrow() / Jobs.DAY_S});
      p50.add(new double[] {airC, days.p50().orElseThrow() / Jobs.DAY_S});
      p90.add(new double[] {airC, days.p90().orElseThrow() / Jobs.DAY_S});
    }
    panel.line(0, true, p10).line(0, false, p50).line(0, true, p90);
    return panel.dot(0, 15, 5).dot(0, 24, 3);
  }
}
