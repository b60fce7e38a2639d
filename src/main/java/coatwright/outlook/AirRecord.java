package coatwright.outlook;

import coatwright.climate.AirPoint;
import coatwright.climate.AirSeries;
import coatwright.climate.Climate;
import coatwright.climate.Gap;
import coatwright.film.AirCourse;
import coatwright.film.AirCourses;
import coatwright.film.FilmParameters;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The air a film met and will meet: readings up to now, thinned; what is expected of the room's air
 * for three days; then the steady temperature that would age a film as fast.
 *
 * @param course on the clock whose zero was given
 * @param gaps stretches without readings
 * @param halfRangeK half of the difference between the warmest and the coldest reading, K
 * @param comingFrom what is expected of the air to come, in words
 * @param comingErrorK how far its mean may lie off, K
 * @param meanErrorK mean of the readings' own temperature error, K
 * @param meanRhErrorPct the same for humidity
 */
record AirRecord(
    AirCourse course,
    List<Gap> gaps,
    double halfRangeK,
    String comingFrom,
    double comingErrorK,
    double meanErrorK,
    double meanRhErrorPct) {

  private static final Duration AHEAD = Duration.ofDays(3);

  /** A thousandth of a day. */
  private static final double DATE_SHIFT_S = 86.4;

  private static final double COLDEST_C = -5;
  private static final double HOTTEST_C = 45;
  private static final double DRIEST_PCT = 3;

  /** A forecast that calls itself surer of the days to come is not believed; assumed. */
  private static final double LEAST_ERROR_K = 0.3;

  private static final double MOST_ERROR_K = 10;

  /** Where the last day's mean stands for the days to come; assumed. */
  private static final double STEADY_ERROR_K = 2.5;

  /** A stretch of the part's life in one room. */
  record Stay(String room, Instant from, Instant to) {}

  /**
   * The air over those stays, and what is expected after them.
   *
   * @param stays where the part stood, oldest first; the last one's end is the end of the readings,
   *     and what follows is expected of its room
   * @param set whose clock says what of the record may be left out, and what steady air would age a
   *     film as fast
   * @return empty when nothing was read
   */
  static Optional<AirRecord> of(
      Climate climate, List<Stay> stays, Instant zero, double draught, FilmParameters set) {
    Stay last = stays.get(stays.size() - 1);
    Instant now = last.to();
    String room = last.room();
    List<AirPoint> points = new ArrayList<>();
    List<Gap> gaps = new ArrayList<>();
    for (Stay stay : stays) {
      AirSeries series = climate.series(stay.room(), stay.from(), stay.to().plusMillis(1));
      points.addAll(series.points());
      gaps.addAll(series.gaps());
    }
    AirSeries past = new AirSeries(room, stays.get(0).from(), now, points, gaps);
    Knots knots = new Knots(zero);
    past.points().forEach(knots::add);
    if (knots.size() == 0) {
      return Optional.empty();
    }
    int read = knots.size();
    AirCourse readings = knots.course(draught);
    String coming = addComing(climate, room, now, zero, readings, knots, set);
    AirCourse whole = knots.course(draught);
    boolean cycle = knots.size() > read + 1;
    return Optional.of(
        new AirRecord(
            whole.size() > 2
                ? whole.thinnedByClock(set.diffusion().glassEnergyJPerMol(), DATE_SHIFT_S)
                : whole,
            past.gaps(),
            halfRange(past.points()),
            coming,
            cycle ? forecastErrorK(climate, room) : STEADY_ERROR_K,
            past.points().stream().mapToDouble(AirPoint::temperatureErrorK).average().orElse(0),
            past.points().stream().mapToDouble(AirPoint::rhErrorPct).average().orElse(0)));
  }

  /** How far the mean of the coming days may lie off, by the courses the air may take. */
  private static double forecastErrorK(Climate climate, String room) {
    return climate
        .forecast(room)
        .map(forecast -> Math.min(MOST_ERROR_K, Math.max(LEAST_ERROR_K, forecast.meanErrorK())))
        .orElse(STEADY_ERROR_K);
  }

  private static String addComing(
      Climate climate,
      String room,
      Instant now,
      Instant zero,
      AirCourse readings,
      Knots knots,
      FilmParameters set) {
    double nowS = seconds(zero, now);
    Optional<AirSeries> expected = climate.expected(room, now, now.plus(AHEAD));
    if (expected.isPresent()) {
      int before = knots.size();
      expected.get().points().forEach(knots::add);
      if (knots.size() > before) {
        double endS = knots.lastS();
        AirCourse all = knots.course(readings.draughtMPerS());
        steadyTail(all, endS, Math.max(nowS, endS - 86_400), knots, set);
        return "what the room's own past lets expect for three days, then steady";
      }
    }
    double lastS = knots.lastS();
    double fromS = Math.max(readings.timeS()[0], lastS - 86_400);
    if (lastS - fromS >= 6 * 3600) {
      steadyTail(readings, lastS, fromS, knots, set);
      return "the mean of the last day, as a film feels it";
    }
    return "the air staying as it is now";
  }

  private static void steadyTail(
      AirCourse air, double endS, double fromS, Knots knots, FilmParameters set) {
    if (!(endS > fromS)) {
      return;
    }
    double steadyC = AirCourses.steadyTempC(air, set, fromS, endS);
    double rh = 0;
    int samples = 48;
    for (int i = 0; i < samples; i++) {
      rh += air.rhFractionAt(fromS + (endS - fromS) * (i + 0.5) / samples) / samples;
    }
    knots.add(endS + 1800, steadyC, rh);
  }

  private static double halfRange(List<AirPoint> points) {
    double low = points.stream().mapToDouble(AirPoint::airTempC).min().orElse(0);
    double high = points.stream().mapToDouble(AirPoint::airTempC).max().orElse(0);
    return 0.5 * (high - low);
  }

  static double seconds(Instant zero, Instant at) {
    return Duration.between(zero, at).toMillis() / 1000.0;
  }

  /** Knots of an air course as they come; what the film model does not hold for is left a gap. */
  static final class Knots {
    private final Instant zero;
    private final List<double[]> rows = new ArrayList<>();

    Knots(Instant zero) {
      this.zero = zero;
    }

    void add(AirPoint p) {
      add(seconds(zero, p.at()), p.airTempC(), p.rhPct() / 100);
    }

    void add(double atS, double tempC, double rh) {
      boolean rises = rows.isEmpty() || atS > lastS();
      boolean holds = tempC >= COLDEST_C && tempC <= HOTTEST_C && rh >= DRIEST_PCT / 100 && rh <= 1;
      if (rises && holds) {
        rows.add(new double[] {atS, tempC, rh});
      }
    }

    int size() {
      return rows.size();
    }

    double lastS() {
      return rows.get(rows.size() - 1)[0];
    }

    AirCourse course(double draught) {
      return new AirCourse(column(0), column(1), column(2), draught);
    }

    private double[] column(int c) {
      return rows.stream().mapToDouble(r -> r[c]).toArray();
    }
  }
}
