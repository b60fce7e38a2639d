package coatwright.film;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** One job at a time: lays the coats, steps between them, and hands every step to the trackers. */
final class FilmEngine {
  private final FilmParameters parameters;
  private final SimulationOptions options;
  private final int mostCoats;
  private final Species species;
  private final FilmGrid grid;
  private final FilmSolution solution;
  private final FilmEquations equations;
  private final RosenbrockStepper stepper;
  private final Moment moment;
  private final MilestoneTracker milestones;
  private final CloudingTracker clouding;
  private final HazeTracker haze;
  private final double[] between;

  private AirCursor cursor = AirCursor.still();
  private double[] samples = {};
  private int nextSample;
  private final List<FilmSample> trace = new ArrayList<>();

  FilmEngine(FilmParameters p, SimulationOptions o, Species species, int mostCoats) {
    parameters = p;
    options = o;
    this.mostCoats = mostCoats;
    this.species = species;
    grid = new FilmGrid(species, mostCoats, o);
    solution = FilmSolution.of(p, species);
    equations = new FilmEquations(p, grid, solution);
    stepper = new RosenbrockStepper(grid, equations, o.rtol());
    moment = new Moment(grid);
    milestones = new MilestoneTracker(p, solution, moment);
    clouding = new CloudingTracker(solution, moment, equations);
    haze = new HazeTracker(p, grid, solution);
    between = new double[grid.mostUnknowns()];
  }

  Species species() {
    return species;
  }

  int mostCoats() {
    return mostCoats;
  }

  FilmRun run(FilmJob job, double untilS, double[] sampleTimesS) {
    List<LaidCoat> coats = job.coats();
    double startS = coats.get(0).atS();
    cursor = new AirCursor(job.air(), startS);
    samples = sampleTimesS;
    nextSample = 0;
    trace.clear();
    grid.clear(job.boardThicknessMm() / 1000);
    equations.prepare(job, cursor);
    stepper.clear(startS);
    for (int i = 0; i <= FilmGrid.WOOD_CELLS; i++) {
      stepper.y[i] = job.woodTempC() + Species.KELVIN;
    }
    List<CoatOutcome> outcomes = new ArrayList<>(coats.size());
    boolean anyCondensation = false;
    for (int i = 0; i < coats.size(); i++) {
      double woodC = stepper.y[grid.film() + 1] - Species.KELVIN;
      equations.airAt(stepper.timeS);
      boolean condensation = woodC <= equations.gas.dewPointC();
      anyCondensation |= condensation;
      OptionalDouble soft = lay(coats.get(i), i == 0);
      go(i + 1 < coats.size() ? coats.get(i + 1).atS() : untilS);
      outcomes.add(outcome(coats.get(i), soft, woodC, condensation));
    }
    return result(outcomes, anyCondensation, untilS);
  }

  /** Lays a coat on the state as it stands; the softness it met, absent on bare wood. */
  private OptionalDouble lay(LaidCoat coat, boolean first) {
    double airC = cursor.tempC(stepper.timeS);
    OptionalDouble soft =
        first ? OptionalDouble.empty() : OptionalDouble.of(milestones.softnessNow(airC));
    double met = first ? stepper.y[grid.film() + 1] : stepper.y[grid.film()];
    grid.lay(coat, stepper.y);
    double liquid = coat.liquidTempC().orElse(airC) + Species.KELVIN;
    stepper.y[grid.film()] = 0.5 * (liquid + met);
    stepper.restart();
    moment.begin(stepper.y, stepper.f);
    milestones.begin(coat, cursor);
    clouding.begin(coat.atS());
    haze.begin(coat.atS(), clouding.jarS);
    while (nextSample < samples.length && samples[nextSample] <= stepper.timeS) {
      sample(stepper.timeS, stepper.y);
      nextSample++;
    }
    return soft;
  }

  private void go(double endS) {
    while (stepper.timeS < endS) {
      double limit = Math.min(endS, cursor.nextKnotS());
      stepper.step(limit);
      double from = stepper.timeS;
      double h = stepper.stepS;
      double to = stepper.endS(limit);
      moment.finish(stepper.yEnd, stepper.fEnd, h);
      milestones.step(from, h);
      clouding.step(from, h);
      along(from, to, h);
      stepper.advance(to);
      moment.advance();
      if (to == cursor.nextKnotS()) {
        cursor.pass();
      }
    }
    clouding.close(stepper.timeS, stepper.y[grid.film()]);
  }

  /** Haze and samples inside the step, in time order. */
  private void along(double from, double to, double h) {
    boolean near = haze.near || clouding.near();
    double every = options.haze() && near ? options.hazeStepS() : Double.POSITIVE_INFINITY;
    double nextHaze = from + every;
    while (true) {
      double wanted = nextSample < samples.length ? samples[nextSample] : Double.POSITIVE_INFINITY;
      double t = Math.min(Math.min(nextHaze, wanted), to);
      boolean last = t >= to;
      double[] state = last ? stepper.yEnd : dense((t - from) / h);
      boolean onlySamples = Double.isInfinite(options.hazeStepS());
      if (options.haze() && (t == wanted || !onlySamples)) {
        haze.update(t, state);
      }
      while (nextSample < samples.length && samples[nextSample] <= t) {
        sample(t, state);
        nextSample++;
      }
      if (last) {
        return;
      }
      if (t >= nextHaze) {
        nextHaze += every;
      }
    }
  }

  private double[] dense(double share) {
    int n = grid.unknowns();
    for (int i = 0; i < n; i++) {
      between[i] = stepper.dense(i, share);
    }
    return between;
  }

  private void sample(double atS, double[] state) {
    trace.add(FilmSampler.sample(atS, cursor.tempC(atS), state, grid, solution, haze.mean));
  }

  private CoatOutcome outcome(
      LaidCoat coat, OptionalDouble soft, double woodBeforeC, boolean condensation) {
    boolean withHaze = options.haze();
    return new CoatOutcome(
        coat.atS(),
        condensation,
        clouding.jarS,
        clouding.peakS,
        clouding.peakAfterS,
        100 * clouding.waterPeak,
        100 * clouding.waterLimit,
        clouding.filmLowK - Species.KELVIN,
        clouding.filmLowAfterS,
        clouding.dewAtLowC,
        clouding.marginK,
        withHaze ? OptionalDouble.of(haze.peak) : OptionalDouble.empty(),
        withHaze ? haze.at1h() : OptionalDouble.empty(),
        withHaze ? OptionalDouble.of(haze.bloomS) : OptionalDouble.empty(),
        withHaze ? timeUnless(condensation, haze.clearsAfterS(), 0) : OptionalDouble.empty(),
        timeUnless(condensation, milestones.openS(), 0),
        timeUnless(condensation, milestones.touchS(), 0),
        timeUnless(condensation, milestones.recoatS(), 0),
        timeUnless(condensation, milestones.restedS(), 0),
        soft,
        woodBeforeC,
        coat.dryFilmUm());
  }

  private FilmRun result(List<CoatOutcome> outcomes, boolean condensation, double untilS) {
    double first = outcomes.get(0).laidAtS();
    double last = outcomes.get(outcomes.size() - 1).laidAtS();
    double shift = parameters.criteria().fromLastCoat() ? 0 : last - first;
    double airC = cursor.tempC(untilS);
    double dry = 0;
    for (CoatOutcome o : outcomes) {
      dry += o.dryFilmUm();
    }
    return new FilmRun(
        parameters.stamp(),
        outcomes,
        condensation,
        last - shift,
        timeUnless(condensation, milestones.dryHardS(), shift),
        timeUnless(condensation, milestones.rubOutS(), shift),
        timeUnless(condensation, milestones.wrapS(), shift),
        timeUnless(condensation, milestones.fullS(), shift),
        MoistureRest.tooSoft(solution, parameters.criteria(), airC, cursor.rhFraction(untilS)),
        dry,
        trace,
        new FilmRun.Work(stepper.steps, stepper.rejected));
  }

  private static OptionalDouble timeUnless(
      boolean condensation, OptionalDouble time, double shift) {
    return condensation || time.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(time.getAsDouble() + shift);
  }
}
