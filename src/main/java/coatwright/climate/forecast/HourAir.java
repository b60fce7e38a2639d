package coatwright.climate.forecast;

import coatwright.quantity.OutOfRange;

/**
 * The air of one whole hour.
 *
 * @param hour hours since 1970-01-01T00Z; the hour begins then
 * @param tempC mean temperature, °C
 * @param vapourPa mean water vapour pressure, Pa
 * @param lastTempC temperature over the hour's last minutes, °C; the mean again where not known
 * @param lastVapourPa vapour pressure over the hour's last minutes, Pa; likewise
 */
public record HourAir(
    long hour, double tempC, double vapourPa, double lastTempC, double lastVapourPa) {
  public HourAir {
    OutOfRange.check("air temperature", tempC, "°C", -60, 80);
    OutOfRange.check("vapour pressure", vapourPa, "Pa", 0.1, 50_000);
    OutOfRange.check("air temperature at the hour's end", lastTempC, "°C", -60, 80);
    OutOfRange.check("vapour pressure at the hour's end", lastVapourPa, "Pa", 0.1, 50_000);
  }

  /** An hour of which only the mean is known. */
  public static HourAir mean(long hour, double tempC, double vapourPa) {
    return new HourAir(hour, tempC, vapourPa, tempC, vapourPa);
  }
}
