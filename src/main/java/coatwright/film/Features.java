package coatwright.film;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * What the ensemble keeps of one run, as numbers that go nearly straight with the inputs:
 * logarithms of times and of S, and the softness of the film at chosen moments.
 */
final class Features {
  static final int OPEN_TIME = 0;
  static final int PEAK_S = 1;
  static final int MARGIN = 2;
  static final int SOFT_BEFORE = 3;
  private static final int FIRST_MILESTONE = 4;
  static final int MILESTONES = Milestone.values().length;
  static final int PLAIN = FIRST_MILESTONE + MILESTONES;

  /** Logarithms (and kelvins), then mean softness at the moments, then skin softness at them. */
  final double[] value;

  private final boolean[] known;

  private Features(int moments) {
    value = new double[PLAIN + 2 * moments];
    known = new boolean[value.length];
  }

  static int milestone(Milestone m) {
    return FIRST_MILESTONE + m.index();
  }

  boolean known(int i) {
    return known[i];
  }

  /**
   * @param run of the case, with the moments as its samples
   * @param horizonS what stands for a time that was not reached, s
   */
  static Features of(Axis.Case c, FilmRun run, double[] momentsS, double horizonS) {
    Features f = new Features(momentsS.length);
    CoatOutcome last = run.lastCoat();
    f.ln(OPEN_TIME, last.openTimeS());
    f.put(PEAK_S, Math.log(last.peakS()));
    f.put(MARGIN, last.marginK());
    if (last.xBeforeK().isPresent()) {
      f.put(SOFT_BEFORE, last.xBeforeK().getAsDouble());
    }
    f.ln(milestone(Milestone.DRY_TO_TOUCH), last.touchS());
    f.ln(milestone(Milestone.DRY_TO_RECOAT), last.recoatS());
    f.ln(milestone(Milestone.RESTED), last.restedS());
    EquivalentTime clock =
        new EquivalentTime(c.job().air(), c.parameters().diffusion().glassEnergyJPerMol());
    double fromS = run.clockFromS();
    f.clock(Milestone.DRY_HARD, run.dryHardS(), clock, fromS);
    f.clock(Milestone.RUB_OUT, run.rubOutS(), clock, fromS);
    f.clock(Milestone.WRAP, run.wrapS(), clock, fromS);
    f.clock(Milestone.FULL_HARDNESS, run.fullHardnessS(), clock, fromS);
    f.horizon = Math.log(horizonS);
    f.clockHorizon = Math.log(clock.at(fromS + horizonS) - clock.at(fromS));
    for (int i = 0; i < momentsS.length; i++) {
      FilmSample sample = sampleAt(run, momentsS[i]);
      f.put(PLAIN + i, sample.xMeanK());
      f.put(PLAIN + momentsS.length + i, sample.filmTempC() - sample.tgSkinC());
    }
    return f;
  }

  private double horizon;
  private double clockHorizon;

  /** The value, or the horizon's for a time that lies beyond it. */
  double orHorizon(int i) {
    if (known[i]) {
      return value[i];
    }
    boolean clocked = i >= milestone(Milestone.DRY_HARD) && i <= milestone(Milestone.FULL_HARDNESS);
    return clocked ? clockHorizon : horizon;
  }

  /** Marks a value as not to be had. */
  Features without(int i) {
    known[i] = false;
    return this;
  }

  private static FilmSample sampleAt(FilmRun run, double momentS) {
    FilmSample best = run.trace().get(0);
    for (FilmSample sample : run.trace()) {
      if (Math.abs(sample.atS() - momentS) <= Math.abs(best.atS() - momentS)) {
        best = sample;
      }
    }
    return best;
  }

  private void put(int i, double v) {
    value[i] = v;
    known[i] = true;
  }

  private void ln(int i, OptionalDouble seconds) {
    if (seconds.isPresent() && seconds.getAsDouble() > 0) {
      put(i, Math.log(seconds.getAsDouble()));
    }
  }

  private void clock(Milestone m, OptionalDouble seconds, EquivalentTime clock, double fromS) {
    if (seconds.isPresent() && seconds.getAsDouble() > 0) {
      double worth = clock.at(fromS + seconds.getAsDouble()) - clock.at(fromS);
      put(milestone(m), Math.log(worth));
    }
  }

  @Override
  public String toString() {
    return Arrays.toString(value);
  }
}
