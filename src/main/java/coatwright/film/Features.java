package coatwright.film;

import coatwright.mix.FilmBuild;
import coatwright.solvent.Solvent;
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

  static final int MEAN_SOFTNESS = 0;
  static final int SKIN_SOFTNESS = 1;
  static final int VOLATILE_SHARE = 2;
  private static final int BLOCKS = 3;
  private static final double LEAST_SHARE = 1e-9;

  /**
   * Logarithms (and kelvins), then at every moment the mean softness, the skin's softness and the
   * logarithm of the volatile share of the film's mass.
   */
  final double[] value;

  private final boolean[] known;

  private Features(int moments) {
    value = new double[PLAIN + BLOCKS * moments];
    known = new boolean[value.length];
  }

  static int milestone(Milestone m) {
    return FIRST_MILESTONE + m.index();
  }

  /** Told by the film's own clock. */
  static boolean byClock(int i) {
    return i >= milestone(Milestone.DRY_HARD) && i <= milestone(Milestone.FULL_HARDNESS);
  }

  /** Told by what is left in the film and not by its softness. */
  static boolean byResidue(int i) {
    return i >= milestone(Milestone.RUB_OUT) && i <= milestone(Milestone.FULL_HARDNESS);
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
      f.put(PLAIN + 2 * momentsS.length + i, Math.log(volatileShare(sample)));
    }
    return f;
  }

  /**
   * Mass of spirit, water and retarder over the mass of the whole film; a lacquer's solvents are
   * taken to be as heavy as spirit and its resin as shellac.
   */
  static double volatileShare(FilmSample s) {
    double volatiles =
        Math.max(0, s.ethanol()) * Solvent.ETHANOL.densityKgPerM3()
            + Math.max(0, s.water()) * Solvent.WATER.densityKgPerM3()
            + Math.max(0, s.retarder()) * Solvent.BUTOXYETHANOL.densityKgPerM3();
    return Math.max(LEAST_SHARE, volatiles / (volatiles + FilmBuild.RESIN_KG_PER_M3));
  }

  private double horizon;
  private double clockHorizon;

  /** The value, or the horizon's for a time that lies beyond it. */
  double orHorizon(int i) {
    if (known[i]) {
      return value[i];
    }
    return byClock(i) ? clockHorizon : horizon;
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
