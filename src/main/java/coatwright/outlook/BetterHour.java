package coatwright.outlook;

import coatwright.air.MoistAir;
import coatwright.climate.AirPoint;
import coatwright.climate.AirSeries;
import coatwright.climate.Climate;
import coatwright.film.AirCourse;
import coatwright.film.CoatOutcome;
import coatwright.film.FilmSimulation;
import coatwright.film.Finish;
import coatwright.film.SimulationOptions;
import coatwright.outlook.Outlook.CloudingLevel;
import coatwright.wood.Board;
import coatwright.wood.BoardLag;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The next hour in which this coat is not expected to cloud, by what is expected of the room's air,
 * the wood lagging behind it, and in how many of the courses that air may take.
 */
final class BetterHour {
  private static final Duration AHEAD = Duration.ofHours(24);
  private static final Duration BEFORE = Duration.ofHours(12);
  private static final double EVEN_SHARE = 0.5;

  private final Climate climate;
  private final String room;
  private final double draughtMPerS;
  private final double boardMm;
  private final Question question;

  BetterHour(Climate climate, String room, double draughtMPerS, double boardMm, Question question) {
    this.climate = climate;
    this.room = room;
    this.draughtMPerS = draughtMPerS;
    this.boardMm = boardMm;
    this.question = question;
  }

  /** What an hour to come is like for the coat. */
  interface Question {
    /**
     * How far clouding is then to be expected; {@code LIKELY} also where the finish would be held
     * off for another reason.
     */
    CloudingLevel level(double airTempC, double rhPct, double woodTempC);
  }

  /**
   * The question of a spirit film.
   *
   * @param ninetyOverMedian by how much its water ratio may lie above the middle
   */
  static Question film(Coating coating, double ninetyOverMedian) {
    return (airTempC, rhPct, woodC) -> level(coating, airTempC, rhPct, woodC, ninetyOverMedian);
  }

  /**
   * When it starts, and what is then expected of clouding.
   *
   * @param share of the courses the air may take in which none is expected, where they are known
   */
  record Found(Instant from, CloudingLevel level, OptionalDouble share) {}

  /**
   * The next hour with no clouding expected in half of the courses or more, else the next that by
   * the middle course has none or is better than now.
   *
   * @param hours the coming hours with their shares; empty where none can be told
   * @return empty when none is expected within a day or none can be told
   */
  Optional<Found> after(Instant now, CloudingLevel level, List<BrushingWindows.Hour> hours) {
    for (BrushingWindows.Hour hour : hours) {
      if (!hour.usual() && hour.share() >= EVEN_SHARE) {
        return Optional.of(
            new Found(hour.from(), CloudingLevel.NONE_EXPECTED, OptionalDouble.of(hour.share())));
      }
    }
    return byTheMiddle(now, level).map(found -> withShare(found, hours));
  }

  private static Found withShare(Found found, List<BrushingWindows.Hour> hours) {
    OptionalDouble share =
        hours.stream()
            .filter(hour -> hour.from().equals(found.from()))
            .mapToDouble(BrushingWindows.Hour::share)
            .findFirst();
    return new Found(found.from(), found.level(), share);
  }

  private Optional<Found> byTheMiddle(Instant now, CloudingLevel level) {
    Optional<AirSeries> expected = climate.expected(room, now, now.plus(AHEAD));
    if (expected.isEmpty() || expected.get().points().isEmpty()) {
      return Optional.empty();
    }
    AirRecord.Knots knots = new AirRecord.Knots(now);
    climate.series(room, now.minus(BEFORE), now.plusMillis(1)).points().forEach(knots::add);
    expected.get().points().forEach(knots::add);
    if (knots.size() < 2) {
      return Optional.empty();
    }
    AirCourse air = knots.course(draughtMPerS);
    List<Double> hours = hours(expected.get().points(), now);
    double[] wood = wood(air, hours);
    Optional<Found> better = Optional.empty();
    for (int i = 0; i < hours.size(); i++) {
      CloudingLevel then =
          question.level(
              air.airTempCAt(hours.get(i)), 100 * air.rhFractionAt(hours.get(i)), wood[i]);
      Found found =
          new Found(now.plusSeconds(Math.round(hours.get(i))), then, OptionalDouble.empty());
      if (then == CloudingLevel.NONE_EXPECTED) {
        return Optional.of(found);
      }
      if (better.isEmpty() && then.compareTo(level) > 0) {
        better = Optional.of(found);
      }
    }
    return better;
  }

  private static List<Double> hours(List<AirPoint> expected, Instant now) {
    double lastS = AirRecord.seconds(now, expected.get(expected.size() - 1).at());
    double toFullHour = 3600 - now.getEpochSecond() % 3600;
    List<Double> hours = new ArrayList<>();
    for (double s = toFullHour; s <= lastS; s += 3600) {
      hours.add(s);
    }
    return hours;
  }

  /** Surface of the board at each of those hours. */
  private double[] wood(AirCourse air, List<Double> hours) {
    AirCourse thin = air.size() > 2 ? air.thinned(0.2, 0.05) : air;
    AirRecord.Knots all = new AirRecord.Knots(Instant.EPOCH);
    int next = 0;
    double[] timeS = thin.timeS();
    List<Integer> at = new ArrayList<>();
    for (int i = 0; i <= timeS.length; i++) {
      while (next < hours.size() && (i == timeS.length || hours.get(next) <= timeS[i])) {
        all.add(hours.get(next), thin.airTempCAt(hours.get(next)), 0.5);
        at.add(all.size() - 1);
        next++;
      }
      if (i < timeS.length) {
        all.add(timeS[i], thin.airTempCAt(timeS[i]), 0.5);
      }
    }
    AirCourse course = all.course(0);
    Board board = Board.ofWood(boardMm, Board.Faces.ONE, 0.55, 9);
    double[] surface =
        BoardLag.surfaceTempsC(
            board, course.timeS(), course.airTempC(), course.airTempCAt(course.timeS()[0]));
    double[] found = new double[hours.size()];
    for (int i = 0; i < found.length; i++) {
      found[i] = surface[at.get(i)];
    }
    return found;
  }

  private static CloudingLevel level(
      Coating coating, double tempC, double rhPct, double woodC, double ninetyOverMedian) {
    Finish f = coating.finish();
    double spread = woodC - new MoistAir(tempC, rhPct, coating.air().pressurePa()).dewPointC();
    boolean inLimits =
        Math.min(tempC, woodC) >= f.lowestTempC() && Math.max(tempC, woodC) <= f.highestTempC();
    if (!inLimits || spread < 1) {
      return CloudingLevel.LIKELY;
    }
    AirCourse steady =
        AirCourse.steady(tempC, rhPct / 100, coating.alone().job().air().draughtMPerS());
    CoatOutcome o =
        new FilmSimulation(coating.alone().parameters(), SimulationOptions.CLOUDING)
            .run(
                Described.job(
                    List.of(coating.coat()),
                    steady,
                    woodC,
                    coating.alone().job().boardThicknessMm()),
                3600)
            .lastCoat();
    double s90 = o.peakS() * ninetyOverMedian;
    return CloudingRule.level(spread, o.peakS(), s90, o.marginK());
  }
}
