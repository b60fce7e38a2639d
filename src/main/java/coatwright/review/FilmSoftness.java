package coatwright.review;

import coatwright.film.AirCourse;
import coatwright.film.Ensemble;
import coatwright.film.EnsembleJob;
import coatwright.film.FilmJob;
import coatwright.film.FilmRun;
import coatwright.film.FilmSimulation;
import coatwright.film.LaidCoat;
import coatwright.film.Milestone;
import coatwright.film.SimulationOptions;
import coatwright.outlook.CoatJob;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How long a film that dries by its solvents stays soft, as it was laid and with one thing changed.
 */
final class FilmSoftness {
  private static final double HORIZON_S = 60 * 86_400.0;
  private static final double THINNER = 2.0 / 3;
  private static final double REST_S = 3600;
  private static final double SHORT_REST_S = 3000;

  private final CoatJob known;
  private final FilmSimulation simulation;
  private final Softness softness;

  FilmSoftness(CoatJob known) {
    this.known = known;
    this.simulation = new FilmSimulation(known.parameters(), SimulationOptions.DEFAULT);
    this.softness =
        new Softness(
            known.part().toString(),
            known.finish(),
            Ensemble.predict(
                    EnsembleJob.untested(known.parameters(), known.stack(), known.spreads()))
                .milestone(Milestone.RUB_OUT),
            run(known.stack()).rubOutS(),
            run(inReference()).rubOutS(),
            known.stack().air(),
            known.lastCoatS(),
            "ready to rub out",
            "more than 60 d");
  }

  Softness softness() {
    return softness;
  }

  private FilmRun run(FilmJob job) {
    double lastS = job.coats().get(job.coats().size() - 1).atS();
    return simulation.run(job, lastS + HORIZON_S);
  }

  private FilmJob inReference() {
    AirCourse steady =
        AirCourse.steady(
            known.finish().referenceTempC(),
            known.finish().referenceRhPct() / 100,
            known.stack().air().draughtMPerS());
    FilmJob stack = known.stack();
    return new FilmJob(
        stack.coats(),
        steady,
        known.finish().referenceTempC(),
        stack.boardThicknessMm(),
        stack.saturation());
  }

  /**
   * What would have changed the date; nothing where the film cannot be computed so.
   *
   * @param ageS how old the film was when it was noted soft, s
   * @param spread of the water ratio, p90 over p50
   */
  List<Why.Counterfactual> counterfactuals(double ageS, double spread) {
    List<Why.Counterfactual> told = new ArrayList<>();
    String was = softness.was();
    told(softness.referenceWords(), softness.meanAir(ageS) + ", " + was, inReference(), spread)
        .ifPresent(told::add);
    told("coats a third thinner", was, thinner(), spread).ifPresent(told::add);
    rested()
        .flatMap(job -> told("an hour's rest between coats", was, job, spread))
        .ifPresent(told::add);
    return told;
  }

  private Optional<Why.Counterfactual> told(String change, String was, FilmJob job, double spread) {
    FilmRun run = run(job);
    if (run.coats().size() < job.coats().size()) {
      return Optional.empty();
    }
    CloudingRun clouding = CloudingRun.of(known.parameters(), job, spread);
    return Optional.of(
        new Why.Counterfactual(
            change,
            was,
            softness.after(run.rubOutS()),
            clouding.level().toString(),
            OptionalDouble.of(run.lastCoat().waterPeakPct()),
            OptionalDouble.of(run.lastCoat().waterLimitPct()),
            softness.isSooner(run.rubOutS())));
  }

  private FilmJob thinner() {
    List<LaidCoat> coats = new ArrayList<>();
    for (LaidCoat c : known.stack().coats()) {
      coats.add(c.withWetFilm(Math.max(10, THINNER * c.wetFilmUm())));
    }
    return withCoats(coats);
  }

  /** Empty where the coats had an hour's rest already. */
  private Optional<FilmJob> rested() {
    List<LaidCoat> laid = known.stack().coats();
    List<LaidCoat> coats = new ArrayList<>(laid);
    boolean moved = false;
    for (int i = laid.size() - 2; i >= 0; i--) {
      double gapS = laid.get(i + 1).atS() - laid.get(i).atS();
      moved |= gapS < SHORT_REST_S;
      coats.set(i, laid.get(i).at(coats.get(i + 1).atS() - Math.max(gapS, REST_S)));
    }
    return moved ? Optional.of(withCoats(coats)) : Optional.empty();
  }

  private FilmJob withCoats(List<LaidCoat> coats) {
    FilmJob stack = known.stack();
    return new FilmJob(
        coats, stack.air(), stack.woodTempC(), stack.boardThicknessMm(), stack.saturation());
  }
}
