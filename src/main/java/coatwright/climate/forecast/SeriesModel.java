package coatwright.climate.forecast;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * One quantity's forecaster: level, usual day, and for each hour ahead one {@link Ridge} on where
 * the quantity stands, how it came there, what the day usually does and what that hour was a week
 * ago (a heated shop's Monday follows a cold Sunday).
 *
 * <p>Coefficients are drawn towards "the departure from the usual day fades over 48 h", the more so
 * the farther ahead: without that a young room's 72 h were three times worse than "it stays".
 */
final class SeriesModel {
  /** Hours ahead: 72, the hour that runs, and one more to draw a line to. */
  static final int LEADS = 74;

  private static final int DAY = 24;
  private static final int OWN_INPUTS = 10;
  private static final int INPUTS = 12;
  private static final int ORIGINS = 128;
  private static final double FADING_H = 48;
  private static final double DAY_TYPE_SHARE = 0.3;

  /** λ is this many times lead times variance. */
  private static final double PULL = 6;

  private static final int RECENT_H = 14 * DAY;
  private static final double FIRST_SPREAD_H = 72;
  private static final double ANOMALY_FADES_H = 24;

  /** What was known at one hour, as the inputs of all leads need it. */
  private static final class Origin {
    long hour = Long.MIN_VALUE;
    boolean known;
    double level;
    double departure;
    double cycleNow;
    double dayMean;
    double rise;
    double yesterday;
    double lastMinutes;
    final double[] cycle = new double[LEADS + 1];
    final double[] dayBefore = new double[LEADS + 1];
    final double[] weekBefore = new double[LEADS + 1];
    final double[] dayType = new double[LEADS + 1];
    final double[] outsideThen = new double[LEADS + 1];
    final double[] outsideUntil = new double[LEADS + 1];

    void inputs(int lead, double[] u) {
      u[0] = departure;
      u[1] = cycle[lead];
      u[2] = cycleNow;
      u[3] = dayMean;
      u[4] = rise;
      u[5] = dayBefore[lead];
      u[6] = yesterday;
      u[7] = dayType[lead];
      u[8] = lastMinutes;
      u[9] = weekBefore[lead];
      u[10] = outsideThen[lead];
      u[11] = outsideUntil[lead];
    }
  }

  private final Hours hours;
  private final double firstSpread;
  private final double leastSpread;
  private final double[] value = Hours.ring();
  private final DayShape shape = new DayShape();
  private final Ridge[] ridges = new Ridge[LEADS + 1];
  private final Origin[] origins = new Origin[ORIGINS];
  private final double[] input = new double[INPUTS];
  private final double[] factor = new double[INPUTS * (INPUTS + 1) / 2];
  private final double[] solution = new double[INPUTS];
  private long shapedFrom = Long.MIN_VALUE;
  private double spread;
  private double low;
  private double high;

  /**
   * @param firstSpread standard deviation to begin with
   * @param leastSpread below which none is believed
   */
  SeriesModel(Hours hours, double firstSpread, double leastSpread) {
    this.hours = hours;
    this.firstSpread = firstSpread;
    this.leastSpread = leastSpread;
    Arrays.setAll(ridges, lead -> new Ridge(INPUTS, OWN_INPUTS));
    Arrays.setAll(origins, i -> new Origin());
  }

  double value(long hour) {
    return value[Hours.slot(hour)];
  }

  DayShape shape() {
    return shape;
  }

  /** The usual day begins anew with the hour that was opened last. */
  void restart(long hour) {
    shape.restart();
    shapedFrom = hour;
  }

  /** Takes the hour that was opened last, as measured. */
  void measured(long hour, double mean) {
    value[Hours.slot(hour)] = mean;
    for (int lead = 1; lead <= LEADS; lead++) {
      Origin from = origin(hour - lead);
      if (from != null && from.known) {
        from.inputs(lead, input);
        ridges[lead].learn(input, mean - from.level - drawnTo(lead, input));
      }
    }
    shape.add(hours.hourOfDay(hour), hours.restDay(hour), mean);
  }

  /** Fills the hour that was opened last from the usual day; it is never learned from. */
  void fill(long hour) {
    long known = hour - 1;
    while (hours.held(known) && !hours.known(known)) {
      known--;
    }
    double usual = shape.level() + shape.cycle(hours.hourOfDay(hour));
    double anomaly =
        hours.held(known) ? value(known) - shape.level() - shape.cycle(hours.hourOfDay(known)) : 0;
    value[Hours.slot(hour)] = usual + anomaly * Math.exp(-(hour - known) / ANOMALY_FADES_H);
  }

  private @Nullable Origin origin(long hour) {
    Origin origin = origins[(int) (hour & (ORIGINS - 1))];
    return origin.hour == hour ? origin : null;
  }

  /**
   * Stands at the hour opened last and looks ahead.
   *
   * @param lastMinutes the quantity over the hour's last minutes, less its mean
   * @param outside what an outdoor forecast says, if there is one
   */
  void stand(long hour, double lastMinutes, OutsideInputs outside) {
    Origin at = origins[(int) (hour & (ORIGINS - 1))];
    double z = value(hour);
    double level = shape.level();
    at.hour = hour;
    at.known = hours.known(hour);
    at.level = level;
    at.departure = z - level;
    at.cycleNow = shape.cycle(hours.hourOfDay(hour));
    at.dayMean = dayMean(hour) - level;
    at.rise = hours.held(hour - 3) ? z - value(hour - 3) : 0;
    at.yesterday = hours.held(hour - DAY) ? value(hour - DAY) - level - at.cycleNow : at.departure;
    at.lastMinutes = lastMinutes;
    for (int lead = 1; lead <= LEADS; lead++) {
      int then = hours.hourOfDay(hour + lead);
      long before = hour + lead - DAY * ((lead + DAY - 1L) / DAY);
      at.cycle[lead] = shape.cycle(then);
      at.dayBefore[lead] =
          hours.held(before) ? value(before) - level - at.cycle[lead] : at.departure;
      long week = hour + lead - 7L * DAY;
      at.weekBefore[lead] = hours.held(week) ? value(week) - level - at.cycle[lead] : 0;
      at.dayType[lead] = shape.ofDayType(then, hours.restDay(hour + lead));
      at.outsideThen[lead] = outside.then(lead);
      at.outsideUntil[lead] = outside.until(lead);
    }
    lookBack(hour);
  }

  private double dayMean(long hour) {
    double sum = 0;
    int n = 0;
    for (long h = hour; h > hour - DAY && hours.held(h); h--) {
      sum += value(h);
      n++;
    }
    return sum / n;
  }

  /** Spread and range of the last fortnight. */
  private void lookBack(long hour) {
    double sum = 0;
    double squares = 0;
    int n = 0;
    low = Double.POSITIVE_INFINITY;
    high = Double.NEGATIVE_INFINITY;
    for (long h = hour; h > hour - RECENT_H && h >= shapedFrom && hours.held(h); h--) {
      if (hours.known(h)) {
        double z = value(h) - value(hour);
        sum += z;
        squares += z * z;
        n++;
        low = Math.min(low, value(h));
        high = Math.max(high, value(h));
      }
    }
    double variance = n > 1 ? Math.max(0, (squares - sum * sum / n) / n) : 0;
    double unknown = Math.exp(-n / FIRST_SPREAD_H);
    double own = Math.max(leastSpread * leastSpread, variance);
    spread = Math.sqrt(unknown * firstSpread * firstSpread + (1 - unknown) * own);
    if (n < DAY) {
      low = Double.NEGATIVE_INFINITY;
      high = Double.POSITIVE_INFINITY;
    } else {
      double wider = 0.5 * Math.max(high - low, spread);
      low -= wider;
      high += wider;
    }
  }

  /** The regression's answer for a lead, from where {@link #stand} stood. */
  double regression(long hour, int lead) {
    Origin at = origins[(int) (hour & (ORIGINS - 1))];
    at.inputs(lead, input);
    double departs =
        drawnTo(lead, input)
            + ridges[lead].value(input, PULL * lead * spread * spread, factor, solution);
    return Math.min(high, Math.max(low, at.level + departs));
  }

  /** The last day's mean with the usual day on it, and what departs from that fading. */
  double fading(long hour, int lead) {
    Origin at = origins[(int) (hour & (ORIGINS - 1))];
    double departs = at.departure - at.dayMean - at.cycleNow;
    return at.level + at.dayMean + at.cycle[lead] + Math.exp(-lead / ANOMALY_FADES_H) * departs;
  }

  /** The usual day, whatever departs from it now. */
  double usual(long hour, int lead) {
    Origin at = origins[(int) (hour & (ORIGINS - 1))];
    return at.level + at.cycle[lead];
  }

  /** What the coefficients are drawn to. */
  private static double drawnTo(int lead, double[] u) {
    double fade = Math.exp(-lead / FADING_H);
    return fade * u[0] + u[1] - fade * u[2] + DAY_TYPE_SHARE * u[7];
  }
}
