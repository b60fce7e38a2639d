package coatwright.climate.forecast;

import coatwright.quantity.OutOfRange;

/**
 * The air outdoors as somebody forecasts it, hour by hour.
 *
 * @param issuedHour the hour it was made or fetched, hours since 1970
 * @param firstHour of the courses
 * @param tempC hourly temperature, °C
 * @param vapourPa hourly vapour pressure, Pa; as many
 */
@SuppressWarnings("ArrayRecordComponent") // read once into memory and kept nowhere else
public record OutsideCourse(long issuedHour, long firstHour, double[] tempC, double[] vapourPa) {
  /** Older than this it is of no use. */
  public static final int STALE_H = 24;

  public OutsideCourse {
    if (tempC.length == 0 || tempC.length != vapourPa.length) {
      throw new IllegalArgumentException(
          "an outdoor forecast has as many of both, and one or more");
    }
    tempC = tempC.clone();
    vapourPa = vapourPa.clone();
    for (int i = 0; i < tempC.length; i++) {
      OutOfRange.check("outdoor temperature", tempC[i], "°C", -60, 60);
      OutOfRange.check("outdoor vapour pressure", vapourPa[i], "Pa", 0.1, 20_000);
    }
  }
}
