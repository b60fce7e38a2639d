package coatwright.review;

import coatwright.film.AirCourse;
import coatwright.film.Ensemble;
import coatwright.film.EnsembleJob;
import coatwright.film.FilmJob;
import coatwright.film.FilmParameters;
import coatwright.film.FilmRun;
import coatwright.film.FilmSimulation;
import coatwright.film.LaidCoat;
import coatwright.film.Milestone;
import coatwright.film.Percentiles;
import coatwright.film.SimulationOptions;
import coatwright.outlook.CoatJob;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import coatwright.review.Why.AirAtFault;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Decides why a film was still soft when it was noted so: the air, the time, or neither.
 *
 * <ol>
 *   <li>Older than nine in ten such films need in this very air: no; the jar first, then the coats.
 *   <li>In the finish's reference air it would have been ready by then, and in this air not yet:
 *       yes.
 *   <li>It would not have been ready in the reference air either: no, it is early; partly where
 *       this air adds a quarter or more.
 *   <li>Past the middle of its range but inside it: partly where the air adds a quarter, else it
 *       can't be told, and the test decides.
 * </ol>
 */
final class SoftCause {
  private static final double HORIZON_S = 60 * 86_400.0;
  private static final double SLOWER = 1.25;
  private static final double THINNER = 2.0 / 3;
  private static final double REST_S = 3600;
  private static final double SHORT_REST_S = 3000;
  private static final FilmSimulation SIMULATION =
      new FilmSimulation(FilmParameters.SHELLAC, SimulationOptions.DEFAULT);

  private final CoatJob known;
  private final double ageS;
  private final JarStory jar;
  private final Percentiles ready;
  private final OptionalDouble readyS;
  private final OptionalDouble inReferenceS;

  /**
   * @param ageS how old the film was when it was noted soft, s from its last coat
   */
  SoftCause(CoatJob known, double ageS, JarStory jar) {
    this.known = known;
    this.ageS = ageS;
    this.jar = jar;
    this.ready =
        Ensemble.predict(
                EnsembleJob.untested(FilmParameters.SHELLAC, known.stack(), known.spreads()))
            .milestone(Milestone.RUB_OUT);
    this.readyS = run(known.stack()).rubOutS();
    this.inReferenceS = run(inReference()).rubOutS();
  }

  private static FilmRun run(FilmJob job) {
    double lastS = job.coats().get(job.coats().size() - 1).atS();
    return SIMULATION.run(job, lastS + HORIZON_S);
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

  Finding find() {
    String age = days(OptionalDouble.of(ageS));
    String range =
        "%s in this air (%s to %s)".formatted(days(readyS), days(ready.p10()), days(ready.p90()));
    if (ready.p90().isPresent() && ageS > ready.p90().getAsDouble()) {
      return new Finding(
          "The air was not the cause: %s was still soft after %s, and a film like it is ready to rub out after %s; %s"
              .formatted(known.part(), age, range, suspects()),
          AirAtFault.NO);
    }
    boolean readyByNow = readyS.isPresent() && readyS.getAsDouble() <= ageS;
    if (readyByNow) {
      return new Finding(
          "%s was soft after %s, within the range of such films (%s); the test decides, not the clock%s"
              .formatted(known.part(), age, range, jar.pastItsTest() ? ", and " + suspects() : ""),
          slower() ? AirAtFault.PARTLY : AirAtFault.CANT_TELL);
    }
    String inReference = days(inReferenceS);
    if (inReferenceS.isPresent() && inReferenceS.getAsDouble() <= ageS) {
      return new Finding(
          "%s was still soft after %s because of its air, %s on average: there it needs %s, where %s °C would have let it be ready after %s"
              .formatted(
                  known.part(),
                  age,
                  meanAir(),
                  days(readyS),
                  Show.fixed(known.finish().referenceTempC(), 0),
                  inReference),
          AirAtFault.YES);
    }
    return new Finding(
        "%s is not late: it was noted soft after %s, and a film like it is ready to rub out after %s; at %s °C it would be %s"
            .formatted(
                known.part(),
                age,
                range,
                Show.fixed(known.finish().referenceTempC(), 0),
                inReference),
        slower() ? AirAtFault.PARTLY : AirAtFault.NO);
  }

  private boolean slower() {
    if (readyS.isEmpty() || inReferenceS.isEmpty()) {
      return inReferenceS.isPresent();
    }
    return readyS.getAsDouble() >= SLOWER * inReferenceS.getAsDouble();
  }

  private String suspects() {
    if (!jar.spoiledElsewhere().isEmpty()) {
      return "the same jar spoiled " + jar.spoiledElsewhere().get(0) + ", so look at the jar first";
    }
    return jar.pastItsTest()
        ? "its jar is past the age of its test, so look at the jar first"
        : "look at the jar, then at how heavy and how close its coats were";
  }

  /** What would have changed the date; nothing where the film cannot be computed so. */
  List<Why.Counterfactual> counterfactuals(double spread) {
    List<Why.Counterfactual> told = new ArrayList<>();
    String was = "ready to rub out after " + days(readyS);
    told(
            "the air at "
                + Show.temperature(known.finish().referenceTempC(), UnitSystem.METRIC)
                + " and "
                + Show.relativeHumidity(known.finish().referenceRhPct())
                + " throughout",
            meanAir() + ", " + was,
            inReference(),
            spread)
        .ifPresent(told::add);
    told("coats a third thinner", was, thinner(), spread).ifPresent(told::add);
    rested()
        .flatMap(job -> told("an hour's rest between coats", was, job, spread))
        .ifPresent(told::add);
    return told;
  }

  /** A film that gets there where the other does not, or before it. */
  private boolean isSooner(OptionalDouble rubOutS) {
    return rubOutS.isPresent()
        && (readyS.isEmpty() || rubOutS.getAsDouble() < readyS.getAsDouble());
  }

  private Optional<Why.Counterfactual> told(String change, String was, FilmJob job, double spread) {
    FilmRun run = run(job);
    if (run.coats().size() < job.coats().size()) {
      return Optional.empty();
    }
    CloudingRun clouding = CloudingRun.of(job, spread);
    return Optional.of(
        new Why.Counterfactual(
            change,
            was,
            "ready to rub out after " + days(run.rubOutS()),
            clouding.level().toString(),
            run.lastCoat().waterPeakPct(),
            run.lastCoat().waterLimitPct(),
            isSooner(run.rubOutS())));
  }

  private FilmJob thinner() {
    List<LaidCoat> coats = new ArrayList<>();
    for (LaidCoat c : known.stack().coats()) {
      coats.add(
          new LaidCoat(
              c.atS(),
              Math.max(10, THINNER * c.wetFilmUm()),
              c.cutGPerL(),
              c.strengthVolPct(),
              c.retarderVolPct(),
              c.liquidTempC()));
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

  private String meanAir() {
    AirCourse air = known.stack().air();
    List<LaidCoat> coats = known.stack().coats();
    double fromS = coats.get(coats.size() - 1).atS();
    int samples = 96;
    double sum = 0;
    for (int i = 0; i < samples; i++) {
      sum += air.airTempCAt(fromS + ageS * (i + 0.5) / samples);
    }
    return Show.temperature(sum / samples, UnitSystem.METRIC);
  }

  private static String days(OptionalDouble seconds) {
    return seconds.isPresent()
        ? Show.duration(Duration.ofSeconds((long) seconds.getAsDouble()))
        : "more than 60 d";
  }
}
