package coatwright.film;

import coatwright.film.Prediction.Knowledge;
import coatwright.film.Prediction.NextTest;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Which one piece of knowledge would take most of the variance out of ln(rub-out) of a curing film:
 * a gauged wet film, one's own limit, or the thumbnail at its best moment, made in thought on every
 * member.
 */
final class CureNarrowing {
  private static final double OWN_LIMIT_LEAVES_LN = 0.12;
  private static final double WORTH_NAMING = 0.02;
  private static final int MOMENTS = 24;

  private final CureEnsemble ensemble;
  private final CureJob job;
  private final double[] lnRubOut;
  private final double[] weights;

  CureNarrowing(CureEnsemble ensemble, CureJob job) {
    this.ensemble = ensemble;
    this.job = job;
    this.weights = ensemble.members().weights();
    this.lnRubOut = ensemble.secondsTo(Milestone.RUB_OUT);
    for (int i = 0; i < lnRubOut.length; i++) {
      lnRubOut[i] = Math.log(Math.min(CureEnsemble.HORIZON_S, lnRubOut[i]));
    }
  }

  Optional<NextTest> best() {
    double total = variance(weights);
    if (!(total > 1e-9)) {
      return Optional.empty();
    }
    List<NextTest> tests = new ArrayList<>();
    tests.add(measured(Knowledge.WET_FILM, CureAxis.WET_FILM, Spreads.GAUGED_WET_LN, total));
    tests.add(measured(Knowledge.RUBBED_OUT, CureAxis.OWN_LATE, OWN_LIMIT_LEAVES_LN, total));
    tests.add(thumbnail(total));
    return tests.stream()
        .filter(t -> t.narrowsBy() >= WORTH_NAMING)
        .max(Comparator.comparingDouble(NextTest::narrowsBy));
  }

  /** What goes straight with the axis, less what its instrument leaves. */
  private NextTest measured(Knowledge knowledge, CureAxis axis, double leavesLn, double total) {
    double sd = axis.sd(job.spreads());
    if (sd <= leavesLn) {
      return new NextTest(knowledge, 0, 0);
    }
    double meanZ = 0;
    double meanLn = 0;
    for (int i = 0; i < lnRubOut.length; i++) {
      meanZ += weights[i] * z(i, axis);
      meanLn += weights[i] * lnRubOut[i];
    }
    double both = 0;
    double alone = 0;
    for (int i = 0; i < lnRubOut.length; i++) {
      both += weights[i] * (z(i, axis) - meanZ) * (lnRubOut[i] - meanLn);
      alone += weights[i] * Math.pow(z(i, axis) - meanZ, 2);
    }
    double slope = both / alone;
    double takenAway = slope * slope * Math.max(0, alone - Math.pow(leavesLn / sd, 2));
    return new NextTest(knowledge, 0, Math.min(1, takenAway / total));
  }

  private double z(int member, CureAxis axis) {
    return ensemble.members().z(member, axis.index());
  }

  private NextTest thumbnail(double total) {
    double[] hardS = ensemble.secondsTo(Milestone.DRY_HARD);
    double low = Double.POSITIVE_INFINITY;
    double high = 0;
    for (double s : hardS) {
      if (s <= CureEnsemble.HORIZON_S) {
        low = Math.min(low, s);
        high = Math.max(high, s);
      }
    }
    double best = 0;
    double bestAtS = 0;
    for (int k = 0; k < MOMENTS && high > low; k++) {
      double sinceS = low * Math.pow(high / low, (k + 0.5) / MOMENTS);
      double narrows = 1 - left(sinceS) / total;
      if (sinceS + job.lastCoat().atS() >= job.nowS() && narrows > best) {
        best = narrows;
        bestAtS = sinceS;
      }
    }
    return new NextTest(Knowledge.THUMBNAIL, bestAtS, best);
  }

  private double left(double sinceS) {
    double[] ifPassed = new double[lnRubOut.length];
    double[] ifFailed = new double[lnRubOut.length];
    double passes = 0;
    for (int i = 0; i < lnRubOut.length; i++) {
      double chance = ensemble.chance(i, BenchTest.THUMBNAIL, sinceS, true);
      ifPassed[i] = weights[i] * chance;
      ifFailed[i] = weights[i] * (1 - chance);
      passes += ifPassed[i];
    }
    return passes * variance(ifPassed) + (1 - passes) * variance(ifFailed);
  }

  private double variance(double[] weight) {
    double total = 0;
    double first = 0;
    double second = 0;
    for (int i = 0; i < lnRubOut.length; i++) {
      total += weight[i];
      first += weight[i] * lnRubOut[i];
      second += weight[i] * lnRubOut[i] * lnRubOut[i];
    }
    double mean = first / total;
    return Math.max(0, second / total - mean * mean);
  }
}
