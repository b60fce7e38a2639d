package coatwright.climate.forecast;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;

/** The last 85 days by the hour, measured or filled in, and which hour of which day each is. */
final class Hours {
  /** More than the 67 days the error paths reach back; a power of two. */
  private static final int HELD = 2048;

  private static final long NONE = Long.MIN_VALUE;

  private final ZoneId zone;
  private final boolean[] known = new boolean[HELD];
  private final long[] dated = new long[HELD];
  private final int[] hourOfDay = new int[HELD];
  private final boolean[] restDay = new boolean[HELD];
  private long first = NONE;
  private long last = NONE;
  private int knownInAll;

  Hours(ZoneId zone) {
    this.zone = zone;
    java.util.Arrays.fill(dated, NONE);
  }

  static int slot(long hour) {
    return (int) (hour & (HELD - 1));
  }

  static double[] ring() {
    return new double[HELD];
  }

  void open(long hour, boolean isKnown) {
    if (first == NONE) {
      first = hour;
    }
    last = hour;
    known[slot(hour)] = isKnown;
    knownInAll += isKnown ? 1 : 0;
  }

  boolean isEmpty() {
    return last == NONE;
  }

  long last() {
    return last;
  }

  /** Hours measured in all. */
  int knownInAll() {
    return knownInAll;
  }

  boolean held(long hour) {
    return !isEmpty() && hour <= last && hour >= Math.max(first, last - HELD + 1);
  }

  boolean known(long hour) {
    return held(hour) && known[slot(hour)];
  }

  /** Hour of the day in the shop's zone, 0 to 23. */
  int hourOfDay(long hour) {
    date(hour);
    return hourOfDay[slot(hour)];
  }

  /** Saturday or Sunday in the shop's zone. */
  boolean restDay(long hour) {
    date(hour);
    return restDay[slot(hour)];
  }

  private void date(long hour) {
    int slot = slot(hour);
    if (dated[slot] != hour) {
      ZonedDateTime local = Instant.ofEpochSecond(hour * 3600).atZone(zone);
      dated[slot] = hour;
      hourOfDay[slot] = local.getHour();
      restDay[slot] = local.getDayOfWeek().getValue() >= 6;
    }
  }
}
