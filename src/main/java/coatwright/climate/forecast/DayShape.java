package coatwright.climate.forecast;

import java.util.Arrays;

/**
 * The usual day of one quantity: its level, its course by the hour, and how workdays and days of
 * rest differ from that. A course seen on few days is drawn towards the level, because one odd day
 * is no habit.
 */
final class DayShape {
  static final int HOURS = 24;
  private static final int DAYS = 14;
  private static final int WORKDAYS = 10;
  private static final int REST_DAYS = 4;

  /** Days of doubt against which the days seen are weighed. */
  private static final double DOUBT_DAYS = 4;

  /** The last values at one hour of the day, the oldest overwritten. */
  private static final class Last {
    private final double[] values;
    private int held;
    private int next;

    Last(int most) {
      values = new double[most];
    }

    void add(double value) {
      values[next] = value;
      next = (next + 1) % values.length;
      held = Math.min(values.length, held + 1);
    }

    void clear() {
      held = 0;
      next = 0;
    }

    double mean() {
      double sum = 0;
      for (int i = 0; i < held; i++) {
        sum += values[i];
      }
      return sum / held;
    }

    double trust() {
      return held / (held + DOUBT_DAYS);
    }
  }

  private final Last[] everyDay = new Last[HOURS];
  private final Last[] workdays = new Last[HOURS];
  private final Last[] restDays = new Last[HOURS];
  private final double[] cycle = new double[HOURS];
  private double level;

  DayShape() {
    Arrays.setAll(everyDay, hour -> new Last(DAYS));
    Arrays.setAll(workdays, hour -> new Last(WORKDAYS));
    Arrays.setAll(restDays, hour -> new Last(REST_DAYS));
  }

  /** Takes the mean of an hour that was measured. */
  void add(int hourOfDay, boolean restDay, double value) {
    everyDay[hourOfDay].add(value);
    (restDay ? restDays : workdays)[hourOfDay].add(value);
    double sum = 0;
    int hours = 0;
    for (Last last : everyDay) {
      if (last.held > 0) {
        sum += last.mean();
        hours++;
      }
    }
    level = sum / hours;
    for (int hour = 0; hour < HOURS; hour++) {
      Last last = everyDay[hour];
      cycle[hour] = last.held > 0 ? (last.mean() - level) * last.trust() : 0;
    }
  }

  /** Forgets every day; the next value begins a new habit. */
  void restart() {
    for (Last[] lasts : new Last[][] {everyDay, workdays, restDays}) {
      for (Last last : lasts) {
        last.clear();
      }
    }
    Arrays.fill(cycle, 0);
  }

  /** Mean over the usual day. */
  double level() {
    return level;
  }

  /** How far the hour usually lies above the level. */
  double cycle(int hourOfDay) {
    return cycle[hourOfDay];
  }

  /** How far the hour lies above level and cycle on days of that kind. */
  double ofDayType(int hourOfDay, boolean restDay) {
    Last last = (restDay ? restDays : workdays)[hourOfDay];
    return last.held > 0 ? (last.mean() - level - cycle[hourOfDay]) * last.trust() : 0;
  }
}
