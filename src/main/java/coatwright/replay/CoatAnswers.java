package coatwright.replay;

import coatwright.climate.AirPoint;
import coatwright.climate.Climate;
import coatwright.climate.RoomAir;
import coatwright.climate.WoodPoint;
import coatwright.film.Curing;
import coatwright.film.Milestone;
import coatwright.film.Percentiles;
import coatwright.film.Prediction;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Retarder;
import coatwright.outlook.FilmJobs;
import coatwright.outlook.LaidJob;
import coatwright.outlook.NextCoat;
import coatwright.outlook.Outlook;
import coatwright.outlook.OutlookRequest;
import coatwright.outlook.OutlookSettings;
import coatwright.outlook.Outlooks;
import coatwright.outlook.Predictions;
import coatwright.outlook.Rebuilt;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The outlook of a coat as it goes on, and its milestones as they stand when the record ends. */
final class CoatAnswers {
  private static final Duration WOOD_FRESH = Duration.ofMinutes(60);
  private static final double TOLD_WOOD_ERROR_K = 0.5;
  private static final double COLDEST_C = -5;
  private static final double HOTTEST_C = 45;
  private static final double DRIEST_PCT = 3;

  private final Climate climate;
  private final Outlooks outlooks;
  private final FilmJobs jobs;
  private final OutlookSettings settings;
  private final String room;

  CoatAnswers(
      Climate climate, Outlooks outlooks, FilmJobs jobs, OutlookSettings settings, String room) {
    this.climate = climate;
    this.outlooks = outlooks;
    this.jobs = jobs;
    this.settings = settings;
    this.room = room;
  }

  /**
   * @param laid coats on the same face, oldest first
   */
  Outlook before(ReplayCoat coat, List<Entry> laid) {
    List<Entry> beneath = jobs.hardeningWith(coat.finish(), laid);
    RoomAir now = climate.now(room);
    Optional<AirPoint> air = now.air().filter(CoatAnswers::modelled);
    if (air.isEmpty()) {
      return outlooks.ofPart(NextCoat.on(coat.part(), room), coat.start());
    }
    Optional<Retarder> retarder = coat.retarder().map(t -> Retarder.parse("retarder", t));
    Optional<WoodPoint> probe =
        now.wood().filter(w -> !w.at().plus(WOOD_FRESH).isBefore(coat.start()));
    OptionalDouble wood = coat.woodTempC();
    double woodErrorK = wood.isPresent() ? TOLD_WOOD_ERROR_K : 0;
    if (wood.isEmpty() && probe.isPresent()) {
      wood = OptionalDouble.of(probe.get().woodTempC());
      woodErrorK = probe.get().errorK();
    }
    return outlooks.of(
        new OutlookRequest(
            coat.finish(),
            air.get().airTempC(),
            air.get().rhPct(),
            settings.pressurePa(),
            air.get().temperatureErrorK(),
            air.get().rhErrorPct(),
            wood,
            woodErrorK,
            coat.cutGPerL(),
            coat.wetFilmUm(),
            coat.method().toString(),
            coat.strengthVolPct(),
            retarder.map(r -> r.volPct().orElse(0)).orElse(0.0),
            retarder.flatMap(Retarder::drops),
            settings.draughtMPerS(),
            beneath.size(),
            intervalMin(coat, beneath),
            settings.boardThicknessMm(),
            OptionalDouble.empty(),
            List.of()));
  }

  private static boolean modelled(AirPoint air) {
    return air.airTempC() >= COLDEST_C
        && air.airTempC() <= HOTTEST_C
        && air.rhPct() >= DRIEST_PCT
        && air.rhPct() <= 100;
  }

  /** The coats beneath are taken evenly spaced. */
  private static double intervalMin(ReplayCoat coat, List<Entry> beneath) {
    if (beneath.isEmpty()) {
      return 0;
    }
    Instant first = ((Coat) beneath.get(0).body()).start();
    return Duration.between(first, coat.start()).toSeconds() / 60.0 / beneath.size();
  }

  List<Replayed.Milestone> milestones(Entry entry, Instant end) {
    if (!(jobs.forCoat(entry, end) instanceof Rebuilt.Known known)) {
      return List.of();
    }
    LaidJob job = known.job();
    Prediction prediction = Predictions.of(job, List.of(), end, Optional.empty());
    List<Replayed.Milestone> milestones = new ArrayList<>();
    for (Milestone m : Milestone.values()) {
      boolean told =
          job.finish().drying() instanceof Curing curing
              ? curing.milestones().contains(m)
              : m != Milestone.RESTED;
      if (told) {
        Percentiles p = prediction.milestone(m);
        milestones.add(
            new Replayed.Milestone(
                m.toString(), at(job, p.p10()), at(job, p.p50()), at(job, p.p90())));
      }
    }
    return milestones;
  }

  private static Optional<Instant> at(LaidJob job, OptionalDouble seconds) {
    return seconds.isPresent()
        ? Optional.of(job.laidAt().plusSeconds(Math.round(seconds.getAsDouble())))
        : Optional.empty();
  }
}
