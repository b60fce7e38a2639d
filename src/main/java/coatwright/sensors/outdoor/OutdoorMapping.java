package coatwright.sensors.outdoor;

import java.time.ZoneId;
import java.util.Optional;

/**
 * How an outdoor forecast is read.
 *
 * @param json JSON, else columns separated by commas under a header
 * @param rows JSON pointer to what holds the hours: a list of objects, or one object of lists;
 *     empty for the whole document; not used of columns
 * @param time word of the hour's time
 * @param temperature word of the temperature
 * @param dewPoint word of the dew point, in the temperature's unit
 * @param humidity word of the relative humidity, per cent; one of the two is given
 * @param fahrenheit whether temperatures are in °F
 * @param zone of times written without an offset; empty: such times are refused
 */
public record OutdoorMapping(
    boolean json,
    String rows,
    String time,
    String temperature,
    Optional<String> dewPoint,
    Optional<String> humidity,
    boolean fahrenheit,
    Optional<ZoneId> zone) {
  public OutdoorMapping {
    if (dewPoint.isPresent() == humidity.isPresent()) {
      throw new IllegalArgumentException("one of dew point and humidity is mapped, not both");
    }
  }
}
