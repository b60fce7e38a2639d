package coatwright.climate.forecast;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Outdoor forecasts as they came: what the newest said of an hour shortly before it is kept as the
 * outdoors of that hour, and makes the usual outdoor day the forecast is compared with.
 */
final class OutsideMemory {
  private static final long NONE = Long.MIN_VALUE;

  /** Days the outdoors must be known before a departure from its usual day means anything. */
  private static final int KNOWN_FIRST_H = 72;

  /** What a forecast adds to the inputs. */
  record Inputs(OutsideInputs temp, OutsideInputs vapour, boolean spoke) {
    static final Inputs NONE = new Inputs(OutsideInputs.NONE, OutsideInputs.NONE, false);
  }

  private final Hours hours;
  private final double[] temp = Hours.ring();
  private final double[] lnVapour = Hours.ring();
  private final long[] said = new long[temp.length];
  private final DayShape tempShape = new DayShape();
  private final DayShape vapourShape = new DayShape();
  private @Nullable OutsideCourse newest;
  private long shapedTo = NONE;
  private int shaped;

  OutsideMemory(Hours hours) {
    this.hours = hours;
    Arrays.fill(said, NONE);
  }

  void take(OutsideCourse course) {
    newest = course;
    for (int i = 0; i < course.tempC().length; i++) {
      long hour = course.firstHour() + i;
      if (hour >= course.issuedHour() && (hours.isEmpty() || hour > shapedTo)) {
        int slot = Hours.slot(hour);
        said[slot] = hour;
        temp[slot] = course.tempC()[i];
        lnVapour[slot] = Math.log(course.vapourPa()[i]);
      }
    }
  }

  /** The inputs of a forecast that stands at that hour. */
  Inputs at(long hour) {
    OutsideCourse course = newest;
    if (course == null) {
      return Inputs.NONE;
    }
    learnUpTo(hour);
    boolean stale = hour - course.issuedHour() > OutsideCourse.STALE_H;
    if (stale || course.issuedHour() > hour + 1 || shaped < KNOWN_FIRST_H) {
      return Inputs.NONE;
    }
    return new Inputs(inputs(hour, temp, tempShape), inputs(hour, lnVapour, vapourShape), true);
  }

  private void learnUpTo(long hour) {
    long from = shapedTo == NONE ? hour : Math.max(shapedTo + 1, hour - 30 * 24);
    for (long h = from; h <= hour; h++) {
      if (said[Hours.slot(h)] == h) {
        tempShape.add(hours.hourOfDay(h), hours.restDay(h), temp[Hours.slot(h)]);
        vapourShape.add(hours.hourOfDay(h), hours.restDay(h), lnVapour[Hours.slot(h)]);
        shaped++;
      }
    }
    shapedTo = Math.max(shapedTo, hour);
  }

  private OutsideInputs inputs(long hour, double[] values, DayShape shape) {
    double[] departures = new double[SeriesModel.LEADS + 1];
    double last = 0;
    for (int lead = 1; lead <= SeriesModel.LEADS; lead++) {
      int slot = Hours.slot(hour + lead);
      if (said[slot] == hour + lead) {
        last = values[slot] - shape.level() - shape.cycle(hours.hourOfDay(hour + lead));
      }
      departures[lead] = last;
    }
    return OutsideInputs.of(departures);
  }
}
