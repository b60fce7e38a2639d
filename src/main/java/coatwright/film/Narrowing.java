package coatwright.film;

import coatwright.film.Prediction.Knowledge;
import coatwright.film.Prediction.NextTest;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Which one piece of knowledge would take most of the variance out of ln(rub-out).
 *
 * <p>A measured input leaves what its instrument leaves; a thumbnail test, at each of the sampled
 * moments, is made in thought on every member, and the variance left is the mean of the two
 * outcomes by their chance.
 */
final class Narrowing {
  private static final double CUT_AFTER_SAMPLE_LN = 0.04;
  private static final double WORTH_NAMING = 0.02;

  private final Ensemble ensemble;

  Narrowing(Ensemble ensemble) {
    this.ensemble = ensemble;
  }

  Optional<NextTest> best() {
    Optional<double[]> ln = ensemble.lnRubOut();
    if (ln.isEmpty()) {
      return Optional.empty();
    }
    double[] weights = ensemble.members().weights();
    double total = variance(ln.get(), weights);
    if (!(total > 0)) {
      return Optional.empty();
    }
    List<NextTest> tests = new ArrayList<>();
    tests.add(measured(Knowledge.WET_FILM, Axis.WET_FILM, Spreads.GAUGED_WET_LN, total));
    tests.add(measured(Knowledge.CUT, Axis.CUT, CUT_AFTER_SAMPLE_LN, total));
    tests.add(measured(Knowledge.RUBBED_OUT, Axis.OWN_THRESHOLD, 0.25, total));
    tests.add(thumbnail(ln.get(), weights, total));
    return tests.stream()
        .filter(t -> t.narrowsBy() >= WORTH_NAMING)
        .max(Comparator.comparingDouble(NextTest::narrowsBy));
  }

  private NextTest measured(Knowledge knowledge, Axis axis, double leavesLn, double total) {
    double slope = ensemble.sensitivity().slope(axis, Features.milestone(Milestone.RUB_OUT));
    double now = slope * slope * ensemble.members().variance(axis);
    double sd = ensemble.sdOf(axis);
    double then = sd > 0 ? slope * slope * Math.pow(leavesLn / sd, 2) : 0;
    return new NextTest(knowledge, 0, Math.max(0, Math.min(1, (now - then) / total)));
  }

  private NextTest thumbnail(double[] ln, double[] weights, double total) {
    double best = 0;
    double bestAtS = 0;
    double[] momentsS = ensemble.momentsS();
    for (int i = 0; i < momentsS.length; i++) {
      double afterS = momentsS[i] - ensemble.lastCoatS();
      if (afterS <= 0 || momentsS[i] < ensemble.nowS()) {
        continue;
      }
      double narrows = 1 - left(i, ln, weights) / total;
      if (narrows > best) {
        best = narrows;
        bestAtS = afterS;
      }
    }
    return new NextTest(Knowledge.THUMBNAIL, bestAtS, best);
  }

  private double left(int moment, double[] ln, double[] weights) {
    double[] ifPassed = new double[ln.length];
    double[] ifFailed = new double[ln.length];
    double passes = 0;
    double all = 0;
    BenchTest test = BenchTest.THUMBNAIL;
    for (int i = 0; i < ln.length; i++) {
      double x = ensemble.value(i, Features.PLAIN + moment);
      double chance = BenchTest.chance((test.limitK - x) / test.scatter, true);
      ifPassed[i] = weights[i] * chance;
      ifFailed[i] = weights[i] * (1 - chance);
      passes += ifPassed[i];
      all += weights[i];
    }
    double share = passes / all;
    return share * variance(ln, ifPassed) + (1 - share) * variance(ln, ifFailed);
  }

  private static double variance(double[] values, double[] weights) {
    double total = 0;
    double first = 0;
    double second = 0;
    for (int i = 0; i < values.length; i++) {
      total += weights[i];
      first += weights[i] * values[i];
      second += weights[i] * values[i] * values[i];
    }
    double mean = first / total;
    return Math.max(0, second / total - mean * mean);
  }
}
