package coatwright.climate.forecast;

import coatwright.air.SaturationPressure;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.LongFunction;

/**
 * Runs the forecaster through a room's hours and scores it beside "it stays as it is" and the means
 * of the last 7 and 14 days at that hour, all in the same run.
 */
final class BackTest {
  static final int[] LEADS = {1, 3, 6, 12, 24, 48, 72};
  static final String[] QUANTITIES = {"T", "e", "RH"};
  private static final int WAYS = 4;
  private static final double LIMIT_S = 0.85;
  private static final int FREQUENCY_DAYS = 30;

  private final List<HourAir> air;
  private final RoomForecaster forecaster;
  private final double[][] actual;
  private final boolean[] fine;

  final double[][][] absolute = new double[3][LEADS.length][WAYS];
  final double[][] inside = new double[3][LEADS.length];
  final double[][] width = new double[3][LEADS.length];
  final double[] brier = new double[LEADS.length];
  final double[] brierStays = new double[LEADS.length];
  final double[] brierFrequency = new double[LEADS.length];
  final int[] said = new int[LEADS.length];
  final int[] saidWrong = new int[LEADS.length];
  final int[] wereFine = new int[LEADS.length];
  final int[] offered = new int[LEADS.length];
  final double[] binSaid = new double[10];
  final double[] binSeen = new double[10];
  final int[] binCount = new int[10];
  int origins;
  private boolean judgesRanges = true;
  private Optional<LongFunction<OutsideCourse>> outside = Optional.empty();

  BackTest(List<HourAir> air, ZoneId zone) {
    this.air = air;
    this.forecaster = new RoomForecaster(zone);
    actual = new double[3][air.size()];
    for (int i = 0; i < air.size(); i++) {
      HourAir a = air.get(i);
      actual[0][i] = a.tempC();
      actual[1][i] = a.vapourPa();
      actual[2][i] = rh(a.tempC(), a.vapourPa());
    }
    fine = new boolean[air.size()];
    for (int i = 0; i + 1 < air.size(); i++) {
      fine[i] = fine(actual[0][i], actual[2][i]) && fine(actual[0][i + 1], actual[2][i + 1]);
    }
  }

  /** Only the middles are scored: ten times quicker. */
  BackTest middlesOnly() {
    judgesRanges = false;
    return this;
  }

  RoomForecaster forecaster() {
    return forecaster;
  }

  /** The outdoor forecast there is at an hour. */
  void outside(LongFunction<OutsideCourse> at) {
    outside = Optional.of(at);
  }

  static double rh(double tempC, double vapourPa) {
    return Math.min(100, 100 * vapourPa / SaturationPressure.overWaterPa(tempC));
  }

  /**
   * The water of a usual coat over what its resin bears, wood as warm as the air: a fit to our own
   * film model (75 µm of a 1.5 lb cut, 12 to 36 °C, 30 to 95 %).
   */
  static double usualS(double tempC, double rhPct) {
    double r = rhPct / 100;
    double t = (tempC - 20) / 10;
    return 0.213 + 0.5534 * r + 1.0302 * r * r + 0.1534 * r * t - 0.0288 * t;
  }

  private static boolean fine(double tempC, double rhPct) {
    return usualS(tempC, rhPct) < LIMIT_S;
  }

  /** Scores every hour from one on to before another as an origin. */
  BackTest score(int from, int to) {
    for (int i = 0; i < Math.min(to, air.size() - 74); i++) {
      HourAir hour = air.get(i);
      outside.ifPresent(at -> forecaster.outside(at.apply(hour.hour())));
      forecaster.add(hour);
      if (i >= from) {
        origin(i);
      }
    }
    return this;
  }

  private void origin(int i) {
    HourlyForecast f = forecaster.forecast().orElseThrow();
    origins++;
    for (int l = 0; l < LEADS.length; l++) {
      int lead = LEADS[l];
      double[] middle = {f.tempC(lead), f.vapourPa(lead), rh(f.tempC(lead), f.vapourPa(lead))};
      for (int q = 0; q < 3; q++) {
        double was = actual[q][i + lead];
        absolute[q][l][0] += Math.abs(middle[q] - was);
        absolute[q][l][1] += Math.abs(actual[q][i] - was);
        absolute[q][l][2] += Math.abs(sameHour(q, i, lead, 7) - was);
        absolute[q][l][3] += Math.abs(sameHour(q, i, lead, 14) - was);
      }
      if (judgesRanges) {
        ranges(f, i, l);
        window(f, i, l);
      }
    }
  }

  private double sameHour(int q, int i, int lead, int days) {
    double sum = 0;
    int n = 0;
    for (int d = (lead + 23) / 24; n < days && i + lead - 24 * d >= 0; d++) {
      sum += actual[q][i + lead - 24 * d];
      n++;
    }
    return n > 0 ? sum / n : actual[q][i];
  }

  private void ranges(HourlyForecast f, int i, int l) {
    int lead = LEADS[l];
    double[][] values = new double[3][f.members()];
    for (int m = 0; m < f.members(); m++) {
      values[0][m] = f.tempC(m, lead);
      values[1][m] = f.vapourPa(m, lead);
      values[2][m] = rh(values[0][m], values[1][m]);
    }
    for (int q = 0; q < 3; q++) {
      double low = HourlyForecast.quantile(values[q], 0.1);
      double high = HourlyForecast.quantile(values[q], 0.9);
      double was = actual[q][i + lead];
      inside[q][l] += was >= low && was <= high ? 1 : 0;
      width[q][l] += high - low;
    }
  }

  private void window(HourlyForecast f, int i, int l) {
    int lead = LEADS[l];
    double share = 0;
    for (int m = 0; m < f.members(); m++) {
      boolean both = true;
      for (int h = lead; h <= lead + 1; h++) {
        both &= fine(f.tempC(m, h), rh(f.tempC(m, h), f.vapourPa(m, h)));
      }
      share += both ? 1.0 / f.members() : 0;
    }
    double usual = frequency(i, lead);
    double weight = HourlyForecast.towardsUsual(lead);
    double p = weight * usual + (1 - weight) * share;
    double was = fine[i + lead] ? 1 : 0;
    double stays = fine(actual[0][i], actual[2][i]) ? 1 : 0;
    brier[l] += (p - was) * (p - was);
    brierStays[l] += (stays - was) * (stays - was);
    brierFrequency[l] += (usual - was) * (usual - was);
    wereFine[l] += (int) was;
    if (p >= 0.8) {
      said[l]++;
      saidWrong[l] += was == 0 ? 1 : 0;
      offered[l] += was == 1 ? 1 : 0;
    }
    int bin = Math.min(9, (int) (10 * p));
    binSaid[bin] += p;
    binSeen[bin] += was;
    binCount[bin]++;
  }

  private double frequency(int i, int lead) {
    double sum = 0;
    int n = 0;
    for (int d = (lead + 1 + 23) / 24; n < FREQUENCY_DAYS && i + lead - 24 * d >= 0; d++) {
      sum += fine[i + lead - 24 * d] ? 1 : 0;
      n++;
    }
    return n > 0 ? sum / n : 0.5;
  }

  double ratioToStaying(int q, int l) {
    return absolute[q][l][0] / absolute[q][l][1];
  }

  double ratioToBetterMean(int q, int l) {
    return absolute[q][l][0] / Math.min(absolute[q][l][2], absolute[q][l][3]);
  }

  double mean(int q, int l, int way) {
    return absolute[q][l][way] / origins;
  }

  double coveragePct(int q, int l) {
    return 100 * inside[q][l] / origins;
  }

  double skill(int l) {
    return 1 - brier[l] / brierFrequency[l];
  }
}
