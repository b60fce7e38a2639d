package coatwright.climate;

import coatwright.air.MoistAir;
import coatwright.air.SaturationPressure;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What a room's own last days say of the coming hours: the mean of the same hour on the last seven
 * days, in temperature and in vapour pressure, plus the present departure from it, which fades.
 *
 * <p>The departure fades by a factor e in 24 h; for the first hours the air as it stands is mixed
 * in, because it knows more of them than a habit does. A cycle seen on few days is drawn towards
 * the overall mean, because one odd day is no habit. Beyond about a day this is what is usual for
 * the hour rather than a forecast, and the errors say so.
 */
final class DailyCycle {
  static final int DAYS = 7;

  private static final int HOURS = 24;
  private static final double FADING_H = 24;

  /**
   * How long the air as it stands is the better guide: its weight falls by a factor e in this time.
   * Both figures were the best of those tried on a year of hourly outdoor air, where they bring the
   * mean error at 1 to 12 h from 1.25 to 0.59 (temperature) and 1.9 to 1.1 (vapour) times that of
   * "it stays as it is" down to 0.98 to 0.59 and 1.02 to 1.03.
   */
  private static final double TEMP_STAYS_H = 2;

  private static final double VAPOUR_STAYS_H = 12;

  /**
   * Days of doubt against which the days seen are weighed. Vapour keeps a daily habit less well
   * than temperature; both figures were the better of 1 and 4 on a year of hourly outdoor air.
   */
  private static final double TEMP_DOUBT_DAYS = 1;

  private static final double VAPOUR_DOUBT_DAYS = 4;

  /**
   * The days' spread about their own mean is less than that of the day to come: the mean of seven
   * days is uncertain itself, and weather drifts. With this, ranges of 80 % held 80 to 89 % of a
   * year of outdoor air up to 24 h ahead, and 71 to 76 % beyond.
   */
  private static final double DRIFT = 1.35;

  /** Spread of an unknown room about its cycle, K; our own estimate, it gives way to the room's. */
  private static final double UNKNOWN_SPREAD_K = 2.5;

  /** The same for vapour, share of the mean. */
  private static final double UNKNOWN_SPREAD_VAPOUR = 0.2;

  private static final double DRIEST_RH_PCT = 3;

  /** One quantity's cycle by hour of the UTC day, and its spread from day to day. */
  private static final class Cycle {
    private final double[] byHour;
    private final double spread;

    Cycle(double[] byHour, double spread) {
      this.byHour = byHour;
      this.spread = spread;
    }

    double spread() {
      return spread;
    }

    double at(Instant instant) {
      double hour = Math.floorMod(instant.getEpochSecond(), 86_400L) / 3600.0 - 0.5;
      int below = Math.floorMod((int) Math.floor(hour), HOURS);
      double share = hour - Math.floor(hour);
      return byHour[below] * (1 - share) + byHour[(below + 1) % HOURS] * share;
    }
  }

  private final Cycle tempC;
  private final Cycle vapourPa;
  private final AirPoint last;

  private DailyCycle(Cycle tempC, Cycle vapourPa, AirPoint last) {
    this.tempC = tempC;
    this.vapourPa = vapourPa;
    this.last = last;
  }

  /**
   * Reads the cycle off what is known.
   *
   * @param points the room's air over the last {@link #DAYS} days, oldest first
   * @return empty while fewer than 24 hours of them are known
   */
  static Optional<DailyCycle> of(List<AirPoint> points) {
    Hours hours = new Hours(points);
    if (hours.known() < HOURS) {
      return Optional.empty();
    }
    double meanPa = hours.mean(hours.vapourPa);
    return Optional.of(
        new DailyCycle(
            hours.cycle(hours.tempC, UNKNOWN_SPREAD_K, TEMP_DOUBT_DAYS),
            hours.cycle(hours.vapourPa, UNKNOWN_SPREAD_VAPOUR * meanPa, VAPOUR_DOUBT_DAYS),
            points.get(points.size() - 1)));
  }

  /** The air expected over [from, to): every 15 min up to a day, every 30 min beyond. */
  List<AirPoint> expected(Instant from, Instant to) {
    Duration step =
        Duration.between(from, to).compareTo(Duration.ofHours(24)) <= 0
            ? Duration.ofMinutes(15)
            : Duration.ofMinutes(30);
    List<AirPoint> points = new ArrayList<>();
    for (Instant at = from; at.isBefore(to); at = at.plus(step)) {
      points.add(expectedAt(at));
    }
    return points;
  }

  private AirPoint expectedAt(Instant at) {
    double leadH = Math.max(0, Duration.between(last.at(), at).toSeconds() / 3600.0);
    double fade = Math.exp(-leadH / FADING_H);
    double grown = Math.sqrt(1 - fade * fade);
    double expectedC = expected(tempC, at, last.airTempC(), leadH, TEMP_STAYS_H);
    double airTempC = Math.max(MoistAir.COLDEST_C, Math.min(MoistAir.WARMEST_C, expectedC));
    double saturatedPa = SaturationPressure.overWaterPa(airTempC);
    double expectedPa = expected(vapourPa, at, last.vapourPressurePa(), leadH, VAPOUR_STAYS_H);
    double heldPa = Math.max(DRIEST_RH_PCT / 100 * saturatedPa, Math.min(saturatedPa, expectedPa));
    double spreadK = grown * tempC.spread();
    double rhPct = 100 * heldPa / saturatedPa;
    double spreadPct =
        rhPct
            * Math.hypot(
                grown * vapourPa.spread() / heldPa,
                SensorAir.saturationGrowthPerK(airTempC) * spreadK);
    return SensorAir.point(
        at,
        airTempC,
        heldPa,
        Math.hypot(last.temperatureErrorK(), spreadK),
        Math.hypot(last.rhErrorPct(), spreadPct));
  }

  private double expected(Cycle cycle, Instant at, double lastValue, double leadH, double staysH) {
    double departure = lastValue - cycle.at(last.at());
    double usual = cycle.at(at) + Math.exp(-leadH / FADING_H) * departure;
    double stays = Math.exp(-leadH / staysH);
    return stays * lastValue + (1 - stays) * usual;
  }

  /** Hourly means, by the hour since the epoch. */
  private static final class Hours {
    private final long firstHour;
    private final int[] counts;
    final double[] tempC;
    final double[] vapourPa;

    Hours(List<AirPoint> points) {
      long lastHour = points.isEmpty() ? 0 : hourOf(points.get(points.size() - 1));
      this.firstHour = lastHour - DAYS * HOURS;
      this.counts = new int[DAYS * HOURS + 1];
      this.tempC = new double[counts.length];
      this.vapourPa = new double[counts.length];
      for (AirPoint point : points) {
        int row = (int) (hourOf(point) - firstHour);
        if (row >= 0) {
          counts[row]++;
          tempC[row] += (point.airTempC() - tempC[row]) / counts[row];
          vapourPa[row] += (point.vapourPressurePa() - vapourPa[row]) / counts[row];
        }
      }
    }

    private static long hourOf(AirPoint point) {
      return Math.floorDiv(point.at().getEpochSecond(), 3600L);
    }

    long known() {
      return Arrays.stream(counts).filter(count -> count > 0).count();
    }

    double mean(double[] values) {
      double sum = 0;
      for (int row = 0; row < counts.length; row++) {
        sum += counts[row] > 0 ? values[row] : 0;
      }
      return sum / known();
    }

    Cycle cycle(double[] values, double unknownSpread, double doubtDays) {
      double mean = mean(values);
      double[] byHour = new double[HOURS];
      int[] days = new int[HOURS];
      for (int row = 0; row < counts.length; row++) {
        if (counts[row] > 0) {
          int hour = (int) Math.floorMod(firstHour + row, (long) HOURS);
          days[hour]++;
          byHour[hour] += values[row];
        }
      }
      for (int hour = 0; hour < HOURS; hour++) {
        double own = days[hour] > 0 ? byHour[hour] / days[hour] - mean : 0;
        byHour[hour] = mean + own * days[hour] / (days[hour] + doubtDays);
      }
      return new Cycle(byHour, spread(values, byHour, unknownSpread));
    }

    private double spread(double[] values, double[] byHour, double unknownSpread) {
      double squares = 0;
      for (int row = 0; row < counts.length; row++) {
        if (counts[row] > 0) {
          double rest = values[row] - byHour[(int) Math.floorMod(firstHour + row, (long) HOURS)];
          squares += rest * rest;
        }
      }
      double days = known() / (double) HOURS;
      double own = squares / known();
      double weighed = (own * days + unknownSpread * unknownSpread) / (days + 1);
      return DRIFT * Math.sqrt(weighed);
    }
  }
}
