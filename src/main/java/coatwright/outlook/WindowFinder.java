package coatwright.outlook;

import coatwright.air.SaturationPressure;
import coatwright.climate.AirForecast;
import coatwright.climate.forecast.HourAir;
import coatwright.climate.forecast.HourlyForecast;
import coatwright.outlook.BrushingWindows.Hour;
import coatwright.outlook.BrushingWindows.Window;
import coatwright.wood.BoardLag;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/**
 * Counts, hour by hour, the courses of a forecast in which a coat may be brushed; the wood of each
 * course lags behind its own air.
 *
 * <p>The share is drawn towards how often that hour of the day was fine in the last 30 days, the
 * farther ahead the more.
 */
final class WindowFinder {
  /** From this share on an hour is offered. */
  static final double LEAST_SHARE = 0.8;

  private static final int FREQUENCY_DAYS = 30;
  private static final Duration HOUR = Duration.ofHours(1);
  private static final int FEWEST_DAYS = 3;

  private final AirForecast forecast;
  private final Fitness fitness;
  private final double woodNowC;
  private final double lagPerHour;
  private final ZoneId zone;

  /** Whether a coat may be brushed in such air on such wood. */
  interface Fitness {
    boolean mayBrush(double airTempC, double rhPct, double woodTempC);
  }

  /**
   * @param woodNowC of the board now, °C
   * @param wood the board, for how far it lags
   */
  WindowFinder(AirForecast forecast, Fitness fitness, double woodNowC, PartWood wood, ZoneId zone) {
    this.forecast = forecast;
    this.fitness = fitness;
    this.woodNowC = woodNowC;
    this.zone = zone;
    lagPerHour = Math.exp(-3600 / BoardLag.timeConstantS(wood.board()));
  }

  /** Every whole hour to come. */
  List<Hour> hours() {
    int knots = forecast.knots();
    int[] fine = new int[knots];
    for (int member = 0; member < forecast.members(); member++) {
      boolean before = false;
      double woodC = woodNowC;
      for (int k = 1; k < knots; k++) {
        double airC = forecast.airTempC(member, k);
        woodC = lagging(woodC, airC, hoursBetween(forecast.at(k - 1), forecast.at(k)));
        boolean now = fitness.mayBrush(airC, forecast.rhPct(member, k), woodC);
        fine[k - 1] += before && now ? 1 : 0;
        before = now;
      }
    }
    double[] usual = usual();
    List<Hour> hours = new ArrayList<>();
    for (int k = 1; k < knots - 1; k++) {
      Instant from = forecast.at(k).minus(HOUR.dividedBy(2));
      double aheadH = hoursBetween(forecast.now(), from);
      if (aheadH < 0 || aheadH >= AirForecast.AHEAD.toHours()) {
        continue;
      }
      double share = fine[k] / (double) forecast.members();
      double frequency = usual[from.atZone(zone).getHour()];
      double drawn = frequency < 0 ? 0 : HourlyForecast.towardsUsual(aheadH);
      hours.add(
          new Hour(
              from, (1 - drawn) * share + drawn * frequency, !from.isBefore(forecast.usualFrom())));
    }
    return hours;
  }

  private double lagging(double woodC, double airC, double hours) {
    return airC + (woodC - airC) * Math.pow(lagPerHour, hours);
  }

  private static double hoursBetween(Instant from, Instant to) {
    return Duration.between(from, to).toMillis() / 3.6e6;
  }

  /** By hour of the day, how often it was fine; below 0 where too few days are known. */
  private double[] usual() {
    int[] fine = new int[24];
    int[] days = new int[24];
    boolean before = false;
    long last = Long.MIN_VALUE;
    double woodC = 0;
    long since = forecast.now().getEpochSecond() / 3600 - FREQUENCY_DAYS * 24L;
    for (HourAir hour : forecast.past()) {
      boolean follows = hour.hour() == last + 1;
      woodC = follows ? lagging(woodC, hour.tempC(), 1) : hour.tempC();
      double rhPct =
          Math.min(100, 100 * hour.vapourPa() / SaturationPressure.overWaterPa(hour.tempC()));
      boolean now = fitness.mayBrush(hour.tempC(), rhPct, woodC);
      if (follows && hour.hour() > since) {
        int of = Instant.ofEpochSecond(last * 3600).atZone(zone).getHour();
        fine[of] += before && now ? 1 : 0;
        days[of]++;
      }
      before = now;
      last = hour.hour();
    }
    double[] usual = new double[24];
    for (int hour = 0; hour < 24; hour++) {
      usual[hour] = days[hour] < FEWEST_DAYS ? -1 : fine[hour] / (double) days[hour];
    }
    return usual;
  }

  /** Hours that follow on each other, of the least share or more; none reaches over 24 h ahead. */
  static List<Window> windows(List<Hour> hours) {
    List<Window> windows = new ArrayList<>();
    Window open = null;
    for (Hour hour : hours) {
      boolean goes = hour.share() >= LEAST_SHARE;
      boolean joins =
          open != null && open.until().equals(hour.from()) && open.usual() == hour.usual();
      if (open != null && !(goes && joins)) {
        windows.add(open);
        open = null;
      }
      if (goes) {
        open =
            new Window(
                open == null ? hour.from() : open.from(),
                hour.from().plus(HOUR),
                open == null ? hour.share() : Math.min(open.share(), hour.share()),
                hour.usual());
      }
    }
    if (open != null) {
      windows.add(open);
    }
    return windows;
  }
}
