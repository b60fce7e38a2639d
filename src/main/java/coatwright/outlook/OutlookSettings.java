package coatwright.outlook;

import coatwright.quantity.OutOfRange;
import java.time.ZoneId;
import java.util.Map;

/**
 * What an outlook takes for granted about the shop where nothing better is known.
 *
 * @param pressurePa air pressure, Pa
 * @param usualFinish name of the finish spoken of while no session is open
 * @param boardThicknessMm board under a film where the part's is not told, mm
 * @param draughtMPerS air along the surface, m/s
 * @param zone the shop's time zone, for the hours in sentences
 * @param roomVolumeM3 volumes of the rooms that are known, m³
 */
public record OutlookSettings(
    double pressurePa,
    String usualFinish,
    double boardThicknessMm,
    double draughtMPerS,
    ZoneId zone,
    Map<String, Double> roomVolumeM3) {
  public OutlookSettings {
    OutOfRange.check("air pressure", pressurePa, "Pa", 50_000, 110_000);
    OutOfRange.check("board thickness", boardThicknessMm, "mm", 2, 200);
    OutOfRange.check("draught", draughtMPerS, "m/s", 0, 3);
    roomVolumeM3 = Map.copyOf(roomVolumeM3);
  }

  /** Sea level, an 18 mm board, still air. */
  public static OutlookSettings usual(String usualFinish, ZoneId zone) {
    return new OutlookSettings(101_325, usualFinish, 18, 0.1, zone, Map.of());
  }
}
