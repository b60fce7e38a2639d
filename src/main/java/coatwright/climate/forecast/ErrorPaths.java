package coatwright.climate.forecast;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * Forecasts issued over the last nine weeks, and the paths their errors took: temperature and
 * vapour of one forecast together and in the order of time, so that what goes together in this room
 * goes together in the ensemble.
 */
final class ErrorPaths {
  private static final int LEADS = SeriesModel.LEADS;
  private static final int YOUNGEST_H = 4 * 24;
  private static final int OLDEST_H = 63 * 24;
  private static final int DAY = 24;
  private static final int MOST_UNKNOWN = 10;
  private static final int MEMBERS = 100;
  private static final long SEED = 20_261_125L;

  /** Below this many paths none are told. */
  private static final int FEWEST = 24;

  /**
   * Errors of the past understate those to come, the more so the farther ahead: with this factor
   * nominal 80 % covered 77 to 84 % of a year in four rooms.
   */
  private static final double WIDER = 0.1;

  /** A path is widened by no more than this; what stands apart would else stand absurdly far. */
  private static final double MOST_WIDER = 4;

  /** Errors of temperature, K, and of ln vapour, lead by lead. */
  @SuppressWarnings("ArrayRecordComponent") // thousands of numbers, made and read in this package
  record Path(double[] temp, double[] lnVapour) {}

  private final float[][] temp = new float[2048][];
  private final float[][] lnVapour = new float[2048][];
  private final long[] issued = new long[2048];
  private final Hours hours;

  ErrorPaths(Hours hours) {
    this.hours = hours;
    Arrays.fill(issued, Long.MIN_VALUE);
  }

  void issue(long hour, double[] tempC, double[] lnPa) {
    int slot = Hours.slot(hour);
    issued[slot] = hour;
    temp[slot] = floats(temp[slot], tempC);
    lnVapour[slot] = floats(lnVapour[slot], lnPa);
  }

  private static float[] floats(float @org.jspecify.annotations.Nullable [] old, double[] from) {
    float[] to = old == null ? new float[LEADS + 1] : old;
    for (int i = 1; i <= LEADS; i++) {
      to[i] = (float) from[i];
    }
    return to;
  }

  /**
   * Paths of forecasts issued at this hour of the day, an hour about it, 4 to 63 days ago, thinned
   * by a fixed stride.
   *
   * @param changedAt an hour the room's heating changed; a forecast that could not foresee it tells
   *     nothing of today's
   */
  List<Path> of(long now, SeriesModel tempC, SeriesModel lnPa, long changedAt) {
    List<Path> all = new ArrayList<>();
    for (long hour = now - OLDEST_H; hour <= now - YOUNGEST_H; hour++) {
      long apart = Math.floorMod(now - hour, (long) DAY);
      boolean sameTime = apart <= 1 || apart == DAY - 1;
      boolean straddles = hour < changedAt && hour + LEADS >= changedAt;
      if (sameTime && !straddles && issued[Hours.slot(hour)] == hour && hours.known(hour)) {
        path(hour, tempC, lnPa).ifPresent(all::add);
      }
    }
    if (all.size() < FEWEST) {
      return List.of();
    }
    int n = Math.min(MEMBERS, all.size());
    List<Path> thinned = new ArrayList<>(n);
    for (int i = 0; i < n; i++) {
      thinned.add(all.get((int) ((long) i * all.size() / n)));
    }
    return thinned;
  }

  private Optional<Path> path(long hour, SeriesModel tempC, SeriesModel lnPa) {
    int slot = Hours.slot(hour);
    double[] ofTemp = new double[LEADS + 1];
    double[] ofVapour = new double[LEADS + 1];
    int unknown = 0;
    int last = 0;
    for (int lead = 1; lead <= LEADS; lead++) {
      if (!hours.known(hour + lead)) {
        unknown++;
        continue;
      }
      double wider = 1 + WIDER * Math.min(1, lead / (double) DAY);
      ofTemp[lead] = wider * (tempC.value(hour + lead) - temp[slot][lead]);
      ofVapour[lead] = wider * (lnPa.value(hour + lead) - lnVapour[slot][lead]);
      bridge(ofTemp, last, lead);
      bridge(ofVapour, last, lead);
      last = lead;
    }
    for (int lead = last + 1; lead <= LEADS; lead++) {
      ofTemp[lead] = ofTemp[last];
      ofVapour[lead] = ofVapour[last];
    }
    return unknown <= MOST_UNKNOWN ? Optional.of(new Path(ofTemp, ofVapour)) : Optional.empty();
  }

  /** A straight line over hours nobody measured. */
  private static void bridge(double[] errors, int from, int to) {
    for (int lead = from + 1; lead < to; lead++) {
      errors[lead] = errors[from] + (errors[to] - errors[from]) * (lead - from) / (to - from);
    }
  }

  /**
   * Invented paths of such spreads, that wander and forget; in mirrored pairs, from a fixed seed.
   */
  static List<Path> invented(double[] tempSds, double[] lnVapourSds) {
    SplittableRandom random = new SplittableRandom(SEED);
    double keeps = Math.exp(-1 / FirstSpread.FORGETS_H);
    double fresh = Math.sqrt(1 - keeps * keeps);
    List<Path> paths = new ArrayList<>();
    for (int i = 0; i < MEMBERS / 2; i++) {
      double[][] z = new double[2][LEADS + 1];
      for (double[] one : z) {
        for (int lead = 1; lead <= LEADS; lead++) {
          one[lead] = keeps * one[lead - 1] + fresh * random.nextGaussian();
        }
      }
      for (int sign = -1; sign <= 1; sign += 2) {
        paths.add(new Path(scaled(z[0], tempSds, sign), scaled(z[1], lnVapourSds, sign)));
      }
    }
    return paths;
  }

  /** Its own spread at a lead is that of the wandering up to there; the sds hold that already. */
  private static double[] scaled(double[] z, double[] sds, int sign) {
    double[] path = new double[LEADS + 1];
    for (int lead = 1; lead <= LEADS; lead++) {
      double own = Math.sqrt(1 - Math.exp(-2 * lead / FirstSpread.FORGETS_H));
      path[lead] = sign * z[lead] / own * sds[lead];
    }
    return path;
  }

  /** Those paths, widened where they hold less than the spreads say. */
  static List<Path> atLeast(List<Path> paths, double[] tempSds, double[] lnVapourSds) {
    List<Path> wider = new ArrayList<>();
    double[] tempFactors = factors(paths.stream().map(Path::temp).toList(), tempSds);
    double[] vapourFactors = factors(paths.stream().map(Path::lnVapour).toList(), lnVapourSds);
    for (Path path : paths) {
      wider.add(new Path(times(path.temp(), tempFactors), times(path.lnVapour(), vapourFactors)));
    }
    return wider;
  }

  private static double[] factors(List<double[]> paths, double[] sds) {
    double[] factors = new double[LEADS + 1];
    double[] at = new double[paths.size()];
    for (int lead = 1; lead <= LEADS; lead++) {
      for (int i = 0; i < at.length; i++) {
        at[i] = paths.get(i)[lead];
      }
      double half = 0.5 * (HourlyForecast.quantile(at, 0.9) - HourlyForecast.quantile(at, 0.1));
      double wanted = half > 0 ? HourlyForecast.NINETY_SDS * sds[lead] / half : 1;
      factors[lead] = Math.min(MOST_WIDER, Math.max(1, wanted));
    }
    return factors;
  }

  private static double[] times(double[] path, double[] factors) {
    double[] product = new double[LEADS + 1];
    for (int lead = 1; lead <= LEADS; lead++) {
      product[lead] = path[lead] * factors[lead];
    }
    return product;
  }
}
