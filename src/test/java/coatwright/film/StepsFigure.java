package coatwright.film;

import coatwright.quantity.Figure;
import coatwright.quantity.Panel;
import coatwright.quantity.Panel.Scale;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/** How far the film's answers hang on the step and the grid, as the register draws it. */
public final class StepsFigure {
  private StepsFigure() {}

  public static Figure figure() {
    return new Figure(
        "stepping",
        "Error over the number of fixed steps beside a slope of three, and what the tolerance of"
            + " the stepping does to rub-out and clouding",
        List.of(order(), tolerance()));
  }

  private static Panel order() {
    Panel panel =
        new Panel(
            "Order of the steps in the critical minutes",
            Scale.log("equal steps", 80, 1280, 80, 160, 320, 640, 1280),
            Scale.log("error, K or volume ratio", 1e-9, 1e-3, 1e-8, 1e-6, 1e-4));
    double[] truth = FilmStepsTest.Fixed.afterTheWetStage().goOn(5120);
    int film = FilmStepsTest.Fixed.afterTheWetStage().grid().film();
    int[] unknowns = {film, 8, film - 2};
    List<List<double[]>> errors = List.of(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    for (int steps = 80; steps <= 1280; steps *= 2) {
      double[] found = FilmStepsTest.Fixed.afterTheWetStage().goOn(steps);
      for (int i = 0; i < 3; i++) {
        double error = twoDigits(found[unknowns[i]] - truth[unknowns[i]]);
        errors.get(i).add(new double[] {steps, error});
      }
    }
    String[] names = {"film temperature and", "middle", "spirit, top"};
    double[] beside = {9, 1.3, 3};
    for (int i = 0; i < 3; i++) {
      panel.line(i, false, errors.get(i));
      int colour = i;
      errors.get(i).forEach(point -> panel.dot(colour, point[0], point[1]));
      panel.word(i, i == 1 ? 740 : 170, errors.get(i).get(i == 1 ? 3 : 1)[1] * beside[i], names[i]);
    }
    return panel.dashed(5, 80, 4.2e-6, 1280, 4.2e-6 / 4096).word(5, 330, 8e-9, "slope 3");
  }

  private static Panel tolerance() {
    Panel panel =
        new Panel(
            "What the tolerance costs; 1e-4 is used",
            Scale.log("relative tolerance of a step", 1e-5, 1e-2, 1e-5, 1e-4, 0.001, 0.01),
            Scale.log("deviation from 1e-8", 1e-8, 1, 1e-8, 1e-6, 1e-4, 0.01, 1));
    FilmRun fine = run(1e-8);
    List<double[]> rubOut = new ArrayList<>();
    List<double[]> clouding = new ArrayList<>();
    for (double rtol : new double[] {1e-5, 1e-4, 1e-3, 1e-2}) {
      FilmRun run = run(rtol);
      double days = run.rubOutS().orElseThrow() / fine.rubOutS().orElseThrow() - 1;
      double s = run.coats().get(0).peakS() - fine.coats().get(0).peakS();
      rubOut.add(new double[] {rtol, twoDigits(days)});
      clouding.add(new double[] {rtol, twoDigits(s)});
    }
    panel.line(0, false, rubOut).line(1, false, clouding);
    rubOut.forEach(point -> panel.dot(0, point[0], point[1]));
    clouding.forEach(point -> panel.dot(1, point[0], point[1]));
    return panel
        .word(0, 1.3e-4, rubOut.get(1)[1] / 6, "rub-out of six coats, a share")
        .word(1, 4e-4, 0.1, "S of the first coat");
  }

  /** A difference of nearly equal runs, to the digits that are the same on every machine. */
  private static double twoDigits(double difference) {
    return new BigDecimal(Math.abs(difference)).round(new MathContext(2)).doubleValue();
  }

  private static FilmRun run(double rtol) {
    var simulation =
        new FilmSimulation(FilmParameters.SHELLAC, SimulationOptions.DEFAULT.withTolerance(rtol));
    return simulation.run(Jobs.sixCoats(20, 0.5), 8700 + 6 * Jobs.DAY_S);
  }
}
