package coatwright.air;

import static coatwright.quantity.Conversions.ZERO_CELSIUS_K;

import coatwright.quantity.OutOfRange;

/**
 * What it takes to dry a room: water to draw out of its air, or the warming that does the same.
 *
 * <p>Both count the air alone. Wood, walls and draughts give water back, so a dehumidifier must
 * take more than this before the reading holds.
 */
public final class RoomWater {
  private static final double LARGEST_ROOM_M3 = 1e6;

  private RoomWater() {}

  /**
   * Water to take out of a room's air at its present temperature to reach a lower relative
   * humidity, kg; one kilogram is one litre in the bucket.
   *
   * @param roomVolumeM3 m³
   * @param from the room's air now
   * @param toRhPct relative humidity wanted, %, at most the present one
   */
  public static double waterToRemoveKg(double roomVolumeM3, MoistAir from, double toRhPct) {
    OutOfRange.check("room volume", roomVolumeM3, "m³", 0, LARGEST_ROOM_M3);
    OutOfRange.check("relative humidity wanted", toRhPct, "%", 0, from.rhPct());
    double fallPa =
        (from.rhPct() - toRhPct) / 100 * SaturationPressure.overWaterPa(from.airTempC());
    double kelvin = from.airTempC() + ZERO_CELSIUS_K;
    return roomVolumeM3 * fallPa / (MoistAir.GAS_CONSTANT_VAPOUR * kelvin);
  }

  /**
   * The relative humidity, %, left when so much water has been taken out at constant temperature.
   *
   * @param roomVolumeM3 m³, above 0
   * @param waterKg at most what the air holds
   */
  public static double rhAfterRemovingPct(double roomVolumeM3, MoistAir from, double waterKg) {
    OutOfRange.check("room volume", roomVolumeM3, "m³", Double.MIN_VALUE, LARGEST_ROOM_M3);
    double heldKg = waterToRemoveKg(roomVolumeM3, from, 0);
    OutOfRange.check("water taken out", waterKg, "kg", 0, heldKg);
    return from.rhPct() * (1 - waterKg / heldKg);
  }

  /**
   * By how many kelvin the air must be warmed, with no water added, to reach the same lower
   * relative humidity.
   *
   * @param toRhPct %, above 0 and at most the present one
   * @throws OutOfRange also if that would take air above 60 °C
   */
  public static double warmingInsteadK(MoistAir from, double toRhPct) {
    OutOfRange.check("relative humidity wanted", toRhPct, "%", Double.MIN_VALUE, from.rhPct());
    double saturationPa = from.vapourPressurePa() / (toRhPct / 100);
    double hottestPa = SaturationPressure.overWaterPa(MoistAir.WARMEST_C);
    if (saturationPa > hottestPa) {
      throw new OutOfRange(
          "warming alone to %s %% would need air above %s °C; take water out instead"
              .formatted(toRhPct, MoistAir.WARMEST_C));
    }
    return SaturationPressure.dewPointC(saturationPa) - from.airTempC();
  }
}
