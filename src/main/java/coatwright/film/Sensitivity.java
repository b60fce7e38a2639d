package coatwright.film;

import coatwright.quantity.OutOfRange;
import coatwright.solvent.AirFlow;
import java.util.Arrays;
import java.util.Optional;

/**
 * How the answer of one job moves with everything that is not known exactly, found by running the
 * model again at these very conditions, one thing moved by one standard deviation at a time.
 *
 * <p>The moved runs use a coarser grid than the answer itself; only their differences count. What
 * follows from another run is not run: still air and draught act through one coefficient; the
 * activation energy and the air to come act through the film's own clock; the resin's glass
 * transition and the owner's limit change what is read off a run and not the run, and share one.
 * {@code EnsembleTest} holds each of these against the run it replaces.
 *
 * <p>Reuse one as long as the coats stay and only more air or more tests have come in: hardening is
 * kept by the film's own clock, on which the air's course hardly matters.
 */
public final class Sensitivity {
  private static final SimulationOptions COARSE =
      new SimulationOptions(6, 2.2, 2e-4, true, false, Double.POSITIVE_INFINITY);

  /** For several coats: their hardening comes out within a thousandth, at half the work. */
  private static final SimulationOptions COARSER =
      new SimulationOptions(6, 2.2, 2e-3, true, false, Double.POSITIVE_INFINITY);

  private static final double SAME_S = 1e-3;
  private static final Axis[] AXES = Axis.values();

  private final double[][] slopes;
  private final double[] afterS;
  private final double[] sds;

  private Sensitivity(double[][] slopes, double[] afterS, double[] sds) {
    this.slopes = slopes;
    this.afterS = afterS;
    this.sds = sds;
  }

  /** Runs the moved cases. */
  static Sensitivity of(
      Axis.Case c, Spreads spreads, double[] momentsS, double horizonS, double thinK) {
    return new Runs(thinned(c, thinK), spreads, momentsS, horizonS).found();
  }

  /** The slopes along one axis by runs of its own; for checking what is read off another's. */
  static double[] byOwnRuns(
      Axis axis, Axis.Case c, Spreads spreads, double[] momentsS, double horizonS) {
    return new Runs(c, spreads, momentsS, horizonS).slope(axis, axis.sd(spreads));
  }

  private static Axis.Case thinned(Axis.Case c, double thinK) {
    FilmJob job = c.job();
    if (job.air().size() < 3) {
      return c;
    }
    AirCourse air = job.air().thinned(thinK, 0.04 * thinK);
    return new Axis.Case(
        c.parameters(),
        new FilmJob(job.coats(), air, job.woodTempC(), job.boardThicknessMm(), job.saturation()),
        c.nowS());
  }

  private static double lastCoatS(FilmJob job) {
    return job.coats().get(job.coats().size() - 1).atS();
  }

  private static double[] sds(FilmJob job, Spreads spreads) {
    boolean stack = job.coats().size() > 1;
    double[] sds = new double[AXES.length];
    for (Axis axis : AXES) {
      sds[axis.index()] = stack && axis.onlyWhileWet() ? 0 : axis.sd(spreads);
    }
    return sds;
  }

  private static double[] sinceLastCoat(FilmJob job, double[] momentsS) {
    double lastS = lastCoatS(job);
    return Arrays.stream(momentsS).map(m -> m - lastS).toArray();
  }

  /** These slopes for the same coats known otherwise; empty where they are not of that job. */
  Optional<Sensitivity> forJob(FilmJob job, Spreads spreads, double[] momentsS) {
    double[] wanted = sinceLastCoat(job, momentsS);
    if (wanted.length != afterS.length) {
      return Optional.empty();
    }
    for (int i = 0; i < wanted.length; i++) {
      if (Math.abs(wanted[i] - afterS[i]) > SAME_S) {
        return Optional.empty();
      }
    }
    double[] now = sds(job, spreads);
    if (Arrays.equals(now, sds)) {
      return Optional.of(this);
    }
    double[][] scaled = new double[AXES.length][];
    for (int a = 0; a < AXES.length; a++) {
      if (now[a] > 0 && sds[a] == 0) {
        return Optional.empty();
      }
      double by = now[a] > 0 ? now[a] / sds[a] : 0;
      scaled[a] = Arrays.stream(slopes[a]).map(s -> s * by).toArray();
    }
    return Optional.of(new Sensitivity(scaled, afterS, now));
  }

  /** By how much a feature moves with one standard deviation along the axis. */
  double slope(Axis axis, int feature) {
    return slopes[axis.index()][feature];
  }

  /** The slopes along an axis, feature by feature. */
  double[] slopes(Axis axis) {
    return slopes[axis.index()];
  }

  /** The moved runs of one job. */
  private static final class Runs {
    private final Axis.Case base;
    private final double[] momentsS;
    private final double horizonS;
    private final double[] sds;
    private final Features still;
    private final double[][] slopes = new double[AXES.length][];

    Runs(Axis.Case base, Spreads spreads, double[] momentsS, double horizonS) {
      this.base = base;
      this.momentsS = momentsS;
      this.horizonS = horizonS;
      sds = sds(base.job(), spreads);
      still = run(base).orElseThrow();
      for (int a = 0; a < AXES.length; a++) {
        slopes[a] = new double[still.value.length];
      }
    }

    Sensitivity found() {
      for (Axis axis : AXES) {
        switch (axis) {
          case OWN_THRESHOLD, RESIN_GLASS, CLOUDING_LIMIT -> {}
          case DRAUGHT, STILL_AIR, GLASS_ENERGY, AIR_TEMPERATURE, COMING_AIR -> {}
          default -> byRun(axis);
        }
      }
      readOtherwise();
      gasSide();
      air();
      glassEnergy();
      return new Sensitivity(slopes, sinceLastCoat(base.job(), momentsS), sds);
    }

    private double sd(Axis axis) {
      return sds[axis.index()];
    }

    private Optional<Features> run(Axis.Case c) {
      double untilS = lastCoatS(c.job()) + horizonS;
      SimulationOptions options = c.job().coats().size() == 1 ? COARSE : COARSER;
      FilmRun run = new FilmSimulation(c.parameters(), options).run(c.job(), untilS, momentsS);
      return run.condensation()
          ? Optional.empty()
          : Optional.of(Features.of(c, run, momentsS, horizonS));
    }

    /** A step out of the model's range, or into dew, leaves only the other side to look at. */
    private Optional<Features> moved(Axis axis, double step) {
      try {
        return run(axis.moved(base, step));
      } catch (OutOfRange outside) {
        return Optional.empty();
      }
    }

    private void byRun(Axis axis) {
      if (sd(axis) > 0) {
        slopes[axis.index()] = slope(axis, sd(axis));
      }
    }

    private double[] slope(Axis axis, double sd) {
      Optional<Features> up = moved(axis, sd);
      boolean downWanted = axis.bothSides || up.isEmpty();
      Optional<Features> down = downWanted ? moved(axis, -sd) : Optional.empty();
      double[] slope = new double[still.value.length];
      if (up.isEmpty() && down.isEmpty()) {
        return slope;
      }
      Features to = up.orElse(still);
      Features from = down.orElse(still);
      double steps = (up.isPresent() ? 1 : 0) + (down.isPresent() ? 1 : 0);
      for (int i = 0; i < slope.length; i++) {
        if (still.known(i)) {
          slope[i] = (to.orHorizon(i) - from.orHorizon(i)) / steps;
        }
      }
      return slope;
    }

    /**
     * Another glass transition and another limit leave the run as it is: one run is read with the
     * glass moved up, and for both sides of the limit.
     */
    private void readOtherwise() {
      FilmParameters p = base.parameters();
      FilmParameters.Criteria c = p.criteria();
      double factor = Math.exp(sd(Axis.OWN_THRESHOLD));
      FilmParameters.Criteria sides =
          new FilmParameters.Criteria(
              c.touchXK(),
              c.recoatXK(),
              c.restedXK(),
              c.dryHardXK(),
              c.rubOutResidue(),
              c.rubOutResidue() * factor,
              c.rubOutResidue() / factor,
              c.aboveRoomK(),
              c.fromLastCoat());
      double glassK = p.solution().resinGlassK() + sd(Axis.RESIN_GLASS);
      Optional<Features> read =
          run(new Axis.Case(p.withCriteria(sides).withResinGlass(glassK), base.job(), base.nowS()));
      if (read.isEmpty()) {
        return;
      }
      int rubOut = Features.milestone(Milestone.RUB_OUT);
      if (still.known(rubOut)) {
        slopes[Axis.OWN_THRESHOLD.index()][rubOut] =
            0.5
                * (read.get().orHorizon(Features.milestone(Milestone.WRAP))
                    - read.get().orHorizon(Features.milestone(Milestone.FULL_HARDNESS)));
      }
      double[] glass = slopes[Axis.RESIN_GLASS.index()];
      for (int i = 0; i < glass.length; i++) {
        if (still.known(i) && !Features.byResidue(i)) {
          glass[i] = read.get().orHorizon(i) - still.value[i];
        }
      }
    }

    /** Still air and draught both act through h = ∛(still³ + forced³). */
    private void gasSide() {
      byRun(Axis.STILL_AIR);
      FilmParameters.Surroundings s = base.parameters().surroundings();
      AirCourse air = base.job().air();
      AirFlow flow = new AirFlow(air.airTempCAt(lastCoatS(base.job())) + Species.KELVIN);
      double draught = air.draughtMPerS();
      double still0 = s.stillAirWPerM2K();
      double stillBy = Math.exp(sd(Axis.STILL_AIR));
      double draughtBy = Math.exp(sd(Axis.DRAUGHT));
      double byStill =
          Math.log(flow.heatTransferWPerM2K(draught, s.plateLengthM(), still0 * stillBy))
              - Math.log(flow.heatTransferWPerM2K(draught, s.plateLengthM(), still0 / stillBy));
      double byDraught =
          Math.log(flow.heatTransferWPerM2K(draught * draughtBy, s.plateLengthM(), still0))
              - Math.log(flow.heatTransferWPerM2K(draught / draughtBy, s.plateLengthM(), still0));
      double ratio = byDraught / byStill;
      double[] from = slopes[Axis.STILL_AIR.index()];
      double[] to = slopes[Axis.DRAUGHT.index()];
      for (int i = 0; i < to.length; i++) {
        to[i] = ratio * from[i];
      }
    }

    /** One run serves the error of what was read and the error of what is expected. */
    private void air() {
      double sd = Math.max(sd(Axis.AIR_TEMPERATURE), sd(Axis.COMING_AIR));
      if (sd == 0) {
        return;
      }
      double[] slope = slope(Axis.AIR_TEMPERATURE, sd);
      double sinceS = Math.max(0, base.nowS() - lastCoatS(base.job()));
      for (int i = 0; i < slope.length; i++) {
        double after = after(i);
        double coming = after > 0 ? Math.max(0, (after - sinceS) / after) : 0;
        slopes[Axis.AIR_TEMPERATURE.index()][i] = slope[i] * sd(Axis.AIR_TEMPERATURE) / sd;
        slopes[Axis.COMING_AIR.index()][i] = slope[i] * coming * sd(Axis.COMING_AIR) / sd;
      }
    }

    /** When a feature is read, seconds after the last coat; what has no time is read at once. */
    private double after(int feature) {
      if (feature >= Features.PLAIN) {
        return momentsS[(feature - Features.PLAIN) % momentsS.length] - lastCoatS(base.job());
      }
      boolean timed = feature == Features.OPEN_TIME || feature > Features.SOFT_BEFORE;
      return timed ? Math.exp(still.orHorizon(feature)) : 1;
    }

    /**
     * The activation energy makes the clock run faster or slower, as the diffusivity in the glass
     * does; hardening times, told by that clock itself, stay.
     */
    private void glassEnergy() {
      double energy = base.parameters().diffusion().glassEnergyJPerMol();
      double moved = energy * Math.exp(sd(Axis.GLASS_ENERGY));
      EquivalentTime clock = new EquivalentTime(base.job().air(), energy);
      EquivalentTime other = new EquivalentTime(base.job().air(), moved);
      double lastS = lastCoatS(base.job());
      double[] diffusivity = slopes[Axis.GLASS_DIFFUSIVITY.index()];
      double[] slope = slopes[Axis.GLASS_ENERGY.index()];
      for (int i = 0; i < slope.length; i++) {
        double after = after(i);
        if (after > 1 && !Features.byClock(i)) {
          double is = clock.at(lastS + after) - clock.at(lastS);
          double would = other.at(lastS + after) - other.at(lastS);
          slope[i] = diffusivity[i] * Math.log(would / is) / sd(Axis.GLASS_DIFFUSIVITY);
        }
      }
    }
  }
}
