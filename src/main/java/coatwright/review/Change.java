package coatwright.review;

import coatwright.film.AirCourse;
import coatwright.film.AirCourses;
import coatwright.film.FilmJob;
import coatwright.film.Finish;
import coatwright.film.LacquerBlend;
import coatwright.film.LaidCoat;
import coatwright.film.Poured;
import coatwright.outlook.CoatJob;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One thing about a coat changed and the rest left as it was.
 *
 * @param kind which thing
 * @param words what was changed, as told: {@code air dried to 50 %}
 * @param was as it was, with its unit
 * @param would what it was changed to, with its unit
 * @param job to run again; its last coat is the one asked about
 */
record Change(Kind kind, String words, String was, String would, FilmJob job) {
  /** What a change is about. */
  enum Kind {
    DAMP_AIR,
    COLD_WOOD,
    WARMER_WOOD,
    WET_SPIRIT,
    THINNER_COAT,
    HEAVIER_COAT,
    STRONGER_CUT,
    SLOWER_BLEND,
    REST,
    DRAUGHT,
    LATER
  }

  private static final double STRONG_SPIRIT_PCT = 99.5;
  private static final double COLD_BY_K = 0.3;
  private static final double WARMED_BY_K = 5;
  private static final double MOST_WOOD_C = 45;
  private static final double THINNER = 2.0 / 3;
  private static final double HEAVIER = 4.0 / 3;
  private static final double LIGHT_DRAUGHT_M_PER_S = 0.5;
  private static final double REST_S = 3600;

  /** Ours: from 12 to 30 °C the film has taken up its water within ten minutes. */
  private static final double TAKES_UP_S = 600;

  private static final double SAMPLE_S = 15;

  /** Every change that makes sense for this coat. */
  static List<Change> all(CoatJob known) {
    FilmJob job = known.alone();
    List<Change> changes = new ArrayList<>();
    dampAir(job, known.finish()).ifPresent(changes::add);
    coldWood(job).ifPresent(changes::add);
    warmerWood(job).ifPresent(changes::add);
    boolean spirit = coat(job).isSpirit();
    if (spirit) {
      wetSpirit(job).ifPresent(changes::add);
    }
    weight(job, Kind.THINNER_COAT, "a thinner coat", THINNER).ifPresent(changes::add);
    weight(job, Kind.HEAVIER_COAT, "a heavier coat", HEAVIER).ifPresent(changes::add);
    (spirit ? strongerCut(job) : slowerBlend(job)).ifPresent(changes::add);
    rest(known).ifPresent(changes::add);
    draught(job).ifPresent(changes::add);
    later(job).ifPresent(changes::add);
    return changes;
  }

  private static LaidCoat coat(FilmJob job) {
    return job.coats().get(job.coats().size() - 1);
  }

  /** The dampest the air became while the film takes up its water. */
  static double dampestRhFraction(AirCourse air, double atS) {
    double most = 0;
    for (double afterS = 0; afterS <= TAKES_UP_S; afterS += SAMPLE_S) {
      most = Math.max(most, air.rhFractionAt(atS + afterS));
    }
    return most;
  }

  /** Drier from the start to the end, at the temperatures that were. */
  static Optional<Change> dampAir(FilmJob job, Finish finish) {
    double rh = dampestRhFraction(job.air(), coat(job).atS());
    double toRh = finish.referenceRhPct() / 100;
    if (rh <= toRh) {
      return Optional.empty();
    }
    AirCourse air = job.air();
    double[] drier = air.rhFraction();
    for (int i = 0; i < drier.length; i++) {
      drier[i] = Math.min(drier[i], toRh);
    }
    AirCourse dried = new AirCourse(air.timeS(), air.airTempC(), drier, air.draughtMPerS());
    return Optional.of(
        new Change(
            Kind.DAMP_AIR,
            "the air dried to " + Show.relativeHumidity(finish.referenceRhPct()),
            Show.relativeHumidity(100 * rh),
            Show.relativeHumidity(finish.referenceRhPct()),
            withAir(job, dried)));
  }

  private static Optional<Change> coldWood(FilmJob job) {
    double airC = job.air().airTempCAt(coat(job).atS());
    if (job.woodTempC() > airC - COLD_BY_K) {
      return Optional.empty();
    }
    return Optional.of(wood(job, Kind.COLD_WOOD, "the wood as warm as the air", airC));
  }

  private static Optional<Change> warmerWood(FilmJob job) {
    double airC = job.air().airTempCAt(coat(job).atS());
    double toC = Math.max(airC, job.woodTempC()) + WARMED_BY_K;
    return toC > MOST_WOOD_C
        ? Optional.empty()
        : Optional.of(
            wood(
                job,
                Kind.WARMER_WOOD,
                "the wood "
                    + Show.temperatureStep(toC - airC, UnitSystem.METRIC)
                    + " above the air",
                toC));
  }

  private static Change wood(FilmJob job, Kind kind, String words, double toC) {
    return new Change(
        kind,
        words,
        Show.temperature(job.woodTempC(), UnitSystem.METRIC),
        Show.temperature(toC, UnitSystem.METRIC),
        new FilmJob(job.coats(), job.air(), toC, job.boardThicknessMm(), job.saturation()));
  }

  private static Optional<Change> wetSpirit(FilmJob job) {
    LaidCoat c = coat(job);
    if (c.strengthVolPct() >= STRONG_SPIRIT_PCT - 0.5) {
      return Optional.empty();
    }
    LaidCoat strong =
        new LaidCoat(
            c.atS(),
            c.wetFilmUm(),
            c.cutGPerL(),
            STRONG_SPIRIT_PCT,
            c.retarderVolPct(),
            c.liquidTempC());
    return Optional.of(
        new Change(
            Kind.WET_SPIRIT,
            "spirit without water",
            Show.fixed(c.strengthVolPct(), 1) + " %",
            Show.fixed(STRONG_SPIRIT_PCT, 1) + " %",
            withCoat(job, strong)));
  }

  private static Optional<Change> weight(FilmJob job, Kind kind, String words, double times) {
    LaidCoat c = coat(job);
    double toUm = c.wetFilmUm() * times;
    if (toUm < 10 || toUm > 300) {
      return Optional.empty();
    }
    return Optional.of(
        new Change(
            kind,
            words,
            Show.film(c.wetFilmUm(), UnitSystem.METRIC),
            Show.film(toUm, UnitSystem.METRIC),
            withCoat(job, c.withWetFilm(toUm))));
  }

  private static Optional<Change> strongerCut(FilmJob job) {
    LaidCoat c = coat(job);
    double to = c.cutGPerL() * HEAVIER;
    if (to > 400) {
      return Optional.empty();
    }
    LaidCoat other =
        new LaidCoat(
            c.atS(), c.wetFilmUm(), to, c.strengthVolPct(), c.retarderVolPct(), c.liquidTempC());
    return Optional.of(
        new Change(
            Kind.STRONGER_CUT,
            "a heavier cut",
            Show.cut(c.cutGPerL(), UnitSystem.US),
            Show.cut(to, UnitSystem.US),
            withCoat(job, other)));
  }

  /** A blend with a tenth of slow glycol ether; empty where the coat had it, and of spirit. */
  private static Optional<Change> slowerBlend(FilmJob job) {
    LaidCoat c = coat(job);
    return c.withBlend(LacquerBlend.SLOWED)
        .filter(slower -> !slower.equals(c))
        .map(
            slower ->
                new Change(
                    Kind.SLOWER_BLEND,
                    "a slower blend",
                    blend(c),
                    blend(slower),
                    withCoat(job, slower)));
  }

  private static String blend(LaidCoat coat) {
    return coat.poured() instanceof Poured.Lacquer l ? l.blend().name() : "";
  }

  /** The coats beneath laid so much earlier that an hour lay between; this one where it was. */
  private static Optional<Change> rest(CoatJob known) {
    List<LaidCoat> coats = known.stack().coats();
    if (coats.size() < 2) {
      return Optional.empty();
    }
    double restedS = coats.get(coats.size() - 1).atS() - coats.get(coats.size() - 2).atS();
    if (restedS >= REST_S) {
      return Optional.empty();
    }
    List<LaidCoat> moved = new ArrayList<>();
    for (LaidCoat c : coats.subList(0, coats.size() - 1)) {
      moved.add(c.at(c.atS() - (REST_S - restedS)));
    }
    moved.add(coats.get(coats.size() - 1));
    FilmJob stack = known.stack();
    return Optional.of(
        new Change(
            Kind.REST,
            "an hour's rest on the coat beneath",
            Show.duration(Duration.ofSeconds((long) restedS)),
            Show.duration(Duration.ofSeconds((long) REST_S)),
            new FilmJob(
                moved,
                stack.air(),
                stack.woodTempC(),
                stack.boardThicknessMm(),
                stack.saturation())));
  }

  private static Optional<Change> draught(FilmJob job) {
    if (job.air().draughtMPerS() >= LIGHT_DRAUGHT_M_PER_S) {
      return Optional.empty();
    }
    return Optional.of(
        new Change(
            Kind.DRAUGHT,
            "a light draught over it",
            Show.fixed(job.air().draughtMPerS(), 1) + " m/s",
            Show.fixed(LIGHT_DRAUGHT_M_PER_S, 1) + " m/s",
            withAir(job, AirCourses.withDraught(job.air(), LIGHT_DRAUGHT_M_PER_S))));
  }

  /** The same coat an hour later, in the air that then was; only where that was read. */
  private static Optional<Change> later(FilmJob job) {
    double[] timeS = job.air().timeS();
    double atS = coat(job).atS();
    if (timeS[timeS.length - 1] < atS + 1.5 * REST_S) {
      return Optional.empty();
    }
    double[] shifted = timeS.clone();
    for (int i = 0; i < shifted.length; i++) {
      shifted[i] -= REST_S;
    }
    AirCourse air = job.air();
    AirCourse moved = new AirCourse(shifted, air.airTempC(), air.rhFraction(), air.draughtMPerS());
    return Optional.of(
        new Change(
            Kind.LATER,
            "laid an hour later, in the air that then was",
            describe(air, atS),
            describe(moved, atS),
            withAir(job, moved)));
  }

  private static String describe(AirCourse air, double atS) {
    return Show.temperature(air.airTempCAt(atS), UnitSystem.METRIC)
        + ", "
        + Show.relativeHumidity(100 * air.rhFractionAt(atS));
  }

  private static FilmJob withAir(FilmJob job, AirCourse air) {
    return new FilmJob(job.coats(), air, job.woodTempC(), job.boardThicknessMm(), job.saturation());
  }

  private static FilmJob withCoat(FilmJob job, LaidCoat coat) {
    List<LaidCoat> coats = new ArrayList<>(job.coats());
    coats.set(coats.size() - 1, coat);
    return new FilmJob(coats, job.air(), job.woodTempC(), job.boardThicknessMm(), job.saturation());
  }
}
