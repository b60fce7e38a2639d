package coatwright.climate.forecast;

import coatwright.air.SaturationPressure;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Forecasts one room's air from its own past, an hour at a time.
 *
 * <p>Temperature, ln vapour pressure and ln relative humidity are forecast each by itself. Vapour
 * follows on two ways, by its own forecast and by those of temperature and humidity (walls that
 * hold moisture keep humidity the steadier of the two), weighted by how well each did. What comes
 * out is mixed with "it stays" and "the usual day, the departure fading", so that no room is worse
 * off than with those by more than a little. An hour that is filled in, because nobody measured it,
 * is an input and never a lesson.
 *
 * <p>Not safe for several threads.
 */
public final class RoomForecaster {
  private static final int LEADS = SeriesModel.LEADS;
  private static final int ISSUES = 128;
  private static final int DAY = 24;
  private static final int KNOWN_FOR_PATHS_H = 21 * DAY;
  private static final int KNOWN_FOR_PATHS_ALONE_H = 63 * DAY;
  private static final double FIRST_SPREAD_K = 2;
  private static final double FIRST_SPREAD_LN = 0.2;
  private static final double LEAST_SPREAD_K = 0.3;
  private static final double LEAST_SPREAD_LN = 0.03;

  /** Long-range spread of the temperature of a room nothing is known of, K; own estimate. */
  private static final double UNKNOWN_ROOM_K = 5;

  /** The same for the natural logarithm of the vapour pressure. */
  private static final double UNKNOWN_ROOM_LN = 0.5;

  /** On the first day nobody knows how far the room swings from night to noon. */
  private static final double FIRST_DAY_SCALE = 1.5;

  private static final double MEMORY_OF_ROUTES_H = 45 * DAY;
  private static final double MEMORY_OF_GUARD_H = 30 * DAY;

  /** A longer silence ends what was known: the room begins anew. */
  private static final long LONGEST_SILENCE_H = 60 * DAY;

  /** What was said at one hour, way by way. */
  private static final class Issue {
    long hour = Long.MIN_VALUE;
    final double[][] temp = new double[4][LEADS + 1];
    final double[][] routes = new double[2][LEADS + 1];
    final double[][] vapour = new double[4][LEADS + 1];
    final double[] tempC = new double[LEADS + 1];
    final double[] lnVapour = new double[LEADS + 1];
  }

  private final Hours hours;
  private final SeriesModel temp;
  private final SeriesModel vapour;
  private final SeriesModel humidity;
  private final Contest tempGuard = new Contest(LEADS + 1, 10, MEMORY_OF_GUARD_H, 1.5, 1.5, 1, 2);
  private final Contest routes = new Contest(LEADS + 1, 2, MEMORY_OF_ROUTES_H, 1, 1);
  private final Contest vapourGuard = new Contest(LEADS + 1, 10, MEMORY_OF_GUARD_H, 1.5, 1.5, 1, 2);
  private final FirstSpread tempSpread = new FirstSpread(UNKNOWN_ROOM_K);
  private final FirstSpread vapourSpread = new FirstSpread(UNKNOWN_ROOM_LN);
  private final ErrorPaths paths;
  private final Issue[] issues = new Issue[ISSUES];
  private final OutsideMemory outside;
  private final double[] ways = new double[4];
  private long changedAt = Long.MIN_VALUE;
  private boolean outsideUsed;

  /**
   * @param zone the shop's, for the hour of the day and the days of rest
   */
  public RoomForecaster(ZoneId zone) {
    hours = new Hours(zone);
    temp = new SeriesModel(hours, FIRST_SPREAD_K, LEAST_SPREAD_K);
    vapour = new SeriesModel(hours, FIRST_SPREAD_LN, LEAST_SPREAD_LN);
    humidity = new SeriesModel(hours, FIRST_SPREAD_LN, LEAST_SPREAD_LN);
    paths = new ErrorPaths(hours);
    outside = new OutsideMemory(hours);
    Arrays.setAll(issues, i -> new Issue());
  }

  /** The last hour taken or filled; empty before the first. */
  public Optional<Long> lastHour() {
    return hours.isEmpty() ? Optional.empty() : Optional.of(hours.last());
  }

  /** Takes an hour later than all before; the hours between are filled in. */
  public void add(HourAir air) {
    if (!hours.isEmpty() && air.hour() <= hours.last()) {
      throw new IllegalArgumentException(
          "hour %d comes after hour %d".formatted(air.hour(), hours.last()));
    }
    fillTo(air.hour() - 1);
    hours.open(air.hour(), true);
    double lnPa = Math.log(air.vapourPa());
    double lnRh = lnPa - lnSaturation(air.tempC());
    judge(air.hour(), air.tempC(), lnPa);
    temp.measured(air.hour(), air.tempC());
    vapour.measured(air.hour(), lnPa);
    humidity.measured(air.hour(), lnRh);
    double lastLnPa = Math.log(air.lastVapourPa());
    stand(
        air.hour(),
        air.lastTempC() - air.tempC(),
        lastLnPa - lnPa,
        lastLnPa - lnSaturation(air.lastTempC()) - lnRh);
  }

  /** Fills in hours up to and with that one; nothing before the first measured hour. */
  public void fillTo(long hour) {
    if (hours.isEmpty() || hour - hours.last() > LONGEST_SILENCE_H) {
      return;
    }
    while (hours.last() < hour) {
      long next = hours.last() + 1;
      hours.open(next, false);
      temp.fill(next);
      vapour.fill(next);
      humidity.fill(next);
      stand(next, 0, 0, 0);
    }
  }

  /**
   * The room's heating, or how it is used, changed for good: levels and usual days begin anew with
   * the next hour that is measured, and forecasts that could not foresee it no longer count.
   */
  public void heatingChanged() {
    if (!hours.isEmpty()) {
      changedAt = hours.last() + 1;
      temp.restart(changedAt);
      vapour.restart(changedAt);
      humidity.restart(changedAt);
    }
  }

  /** What an outdoor forecast says from now on; the newest one holds. */
  public void outside(OutsideCourse course) {
    outside.take(course);
  }

  /** Whether an outdoor forecast went into what is said of the hours ahead. */
  public boolean outsideUsed() {
    return outsideUsed;
  }

  private static double lnSaturation(double tempC) {
    return Math.log(SaturationPressure.overWaterPa(Math.min(60, Math.max(-40, tempC))));
  }

  /** Every forecast of this hour is told how far it was off. */
  private void judge(long hour, double tempC, double lnPa) {
    for (int lead = 1; lead <= LEADS; lead++) {
      Issue issue = issues[(int) ((hour - lead) & (ISSUES - 1))];
      if (issue.hour == hour - lead && hours.known(hour - lead)) {
        tempGuard.verdict(lead, errors(issue.temp, lead, tempC));
        routes.verdict(lead, errors(issue.routes, lead, lnPa));
        vapourGuard.verdict(lead, errors(issue.vapour, lead, lnPa));
        tempSpread.verdict(lead, issue.tempC[lead] - tempC);
        vapourSpread.verdict(lead, issue.lnVapour[lead] - lnPa);
      }
    }
  }

  private double[] errors(double[][] said, int lead, double was) {
    for (int way = 0; way < said.length; way++) {
      ways[way] = said[way][lead] - was;
    }
    return ways;
  }

  private void stand(long hour, double lastTemp, double lastVapour, double lastHumidity) {
    OutsideMemory.Inputs out = outside.at(hour);
    outsideUsed = out.spoke();
    temp.stand(hour, lastTemp, out.temp());
    vapour.stand(hour, lastVapour, out.vapour());
    humidity.stand(hour, lastHumidity, out.vapour());
    Issue issue = issues[(int) (hour & (ISSUES - 1))];
    issue.hour = hour;
    boolean stays = hours.knownInAll() < DAY;
    for (int lead = 1; lead <= LEADS; lead++) {
      say(issue, hour, lead, stays);
    }
    paths.issue(hour, issue.tempC, issue.lnVapour);
  }

  private void say(Issue issue, long hour, int lead, boolean stays) {
    double tempR = temp.regression(hour, lead);
    issue.temp[0][lead] = tempR;
    issue.temp[1][lead] = temp.fading(hour, lead);
    issue.temp[2][lead] = temp.value(hour);
    issue.temp[3][lead] = temp.usual(hour, lead);
    issue.routes[0][lead] = vapour.regression(hour, lead);
    issue.routes[1][lead] = humidity.regression(hour, lead) + lnSaturation(tempR);
    issue.vapour[0][lead] = routes.mixed(lead, at(issue.routes, lead));
    issue.vapour[1][lead] = vapour.fading(hour, lead);
    issue.vapour[2][lead] = vapour.value(hour);
    issue.vapour[3][lead] = vapour.usual(hour, lead);
    issue.tempC[lead] = stays ? temp.value(hour) : tempGuard.mixed(lead, at(issue.temp, lead));
    issue.lnVapour[lead] =
        stays ? vapour.value(hour) : vapourGuard.mixed(lead, at(issue.vapour, lead));
  }

  private double[] at(double[][] said, int lead) {
    for (int way = 0; way < said.length; way++) {
      ways[way] = said[way][lead];
    }
    return ways;
  }

  /** The hours after the last one taken or filled; empty before the first. */
  public Optional<HourlyForecast> forecast() {
    if (hours.isEmpty()) {
      return Optional.empty();
    }
    long hour = hours.last();
    Issue issue = issues[(int) (hour & (ISSUES - 1))];
    return Optional.of(
        new HourlyForecast(hour, basis(), issue.tempC, issue.lnVapour, errorsToExpect(hour)));
  }

  private HourlyForecast.Basis basis() {
    int known = hours.knownInAll();
    return known < DAY
        ? HourlyForecast.Basis.STAYS
        : known < KNOWN_FOR_PATHS_ALONE_H
            ? HourlyForecast.Basis.LEARNING
            : HourlyForecast.Basis.OWN_ERRORS;
  }

  private List<ErrorPaths.Path> errorsToExpect(long hour) {
    int known = hours.knownInAll();
    List<ErrorPaths.Path> own =
        known < KNOWN_FOR_PATHS_H ? List.of() : paths.of(hour, temp, vapour, changedAt);
    if (!own.isEmpty() && known >= KNOWN_FOR_PATHS_ALONE_H) {
      return own;
    }
    double leastScale = known < DAY ? FIRST_DAY_SCALE : known < 2 * DAY ? 1 : 0;
    double[] tempSds = tempSpread.sds(leastScale);
    double[] vapourSds = vapourSpread.sds(leastScale);
    return own.isEmpty()
        ? ErrorPaths.invented(tempSds, vapourSds)
        : ErrorPaths.atLeast(own, tempSds, vapourSds);
  }

  /** Whether an hour of the last 80 days was measured. */
  public boolean known(long hour) {
    return hours.known(hour);
  }

  /** Mean temperature of an hour of the last 80 days, measured or filled, °C. */
  public double tempC(long hour) {
    return temp.value(hour);
  }

  /** Mean vapour pressure of an hour of the last 80 days, measured or filled, Pa. */
  public double vapourPa(long hour) {
    return Math.exp(vapour.value(hour));
  }
}
